/** Codes that say that the database, or a connection to it, cannot be had now; asking again later may succeed. */
const codes = new Set([
  ...['ECONNREFUSED', 'ECONNRESET', 'ETIMEDOUT', 'EPIPE', 'ENOENT', 'EHOSTUNREACH'], // sockets
  ...['P1001', 'P1002', 'P1008', 'P1017', 'P2024', 'P2034'], // Prisma
  // PostgreSQL: connection lost, shutting down or starting, out of connections or room, read-only, cancelled, retried in vain
  ...[
    '08000',
    '08001',
    '08003',
    '08004',
    '08006',
    '57P01',
    '57P02',
    '57P03',
    '53100',
    '53200',
    '53300',
    '25006',
    '57014',
    '55P03',
    '40001',
    '40P01',
  ],
]);

const messages = [
  'timeout exceeded when trying to connect',
  'connection terminated',
  'the database system is',
  "can't reach database server",
  'cannot use a pool after calling end',
];

/** Whether an error, or one of its causes, means that the database is away. ENOENT counts for sockets only. */
export function isDatabaseAway(error: unknown, depth = 0): boolean {
  if (typeof error !== 'object' || error === null || depth > 5) return false;
  const { code, originalCode, message, cause, meta, syscall, errors } = error as Record<string, unknown>;
  if ([code, originalCode].some((each) => isAwayCode(each, syscall))) return true;
  if (typeof message === 'string' && messages.some((text) => message.toLowerCase().includes(text)))
    return true;
  const inner = [cause, adapterError(meta), ...(Array.isArray(errors) ? (errors as unknown[]) : [])];
  return inner.some((each) => isDatabaseAway(each, depth + 1));
}

function isAwayCode(code: unknown, syscall: unknown): boolean {
  return typeof code === 'string' && codes.has(code) && (code !== 'ENOENT' || syscall === 'connect');
}

/** Where Prisma keeps what its database adapter said. */
function adapterError(meta: unknown): unknown {
  return typeof meta === 'object' && meta !== null
    ? (meta as Record<string, unknown>)['driverAdapterError']
    : undefined;
}
