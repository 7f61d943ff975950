/** What the log keeps of an error. */
export interface ToldError {
  readonly type: string;
  readonly message: string;
  readonly stack: string;
  readonly code?: string;
  readonly constraint?: string;
  readonly table?: string;
  readonly cause?: ToldError;
}

const mostCauses = 5;

/**
 * An error as the log keeps it. What a database says of itself may hold values of rows (names, telephone numbers), so of
 * its errors only code, table and constraint are kept, with the places in the code.
 */
export function tellError(error: unknown, depth = 0): ToldError {
  if (!(error instanceof Error)) return { type: typeof error, message: '[not an error]', stack: '' };
  const { code, constraint, table } = error as Partial<Record<'code' | 'constraint' | 'table', unknown>>;
  const mayQuoteRows = isOfDatabase(error);
  const frames = (error.stack ?? '')
    .split('\n')
    .filter((line) => /^\s+at /.test(line))
    .join('\n');
  return {
    type: error.name,
    message: mayQuoteRows ? '[kept out of the log: it may quote a row]' : error.message,
    stack: frames,
    ...(typeof code === 'string' ? { code } : {}),
    ...(typeof constraint === 'string' ? { constraint } : {}),
    ...(typeof table === 'string' ? { table } : {}),
    ...(error.cause === undefined || depth >= mostCauses ? {} : { cause: tellError(error.cause, depth + 1) }),
  };
}

/** Errors of the server carry a five-letter state and a severity; those of the database client a name of their own. */
function isOfDatabase(error: Error): boolean {
  const { code, severity } = error as Partial<Record<'code' | 'severity', unknown>>;
  const hasState = typeof code === 'string' && /^[0-9A-Z]{5}$/.test(code) && severity !== undefined;
  return hasState || /^Prisma|DriverAdapterError/.test(error.name) || /^Prisma/.test(error.constructor.name);
}
