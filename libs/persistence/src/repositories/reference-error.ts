import { DomainError } from '@endfloat/workshop/ports';

interface DatabaseFault {
  readonly code?: unknown;
  readonly constraint?: unknown;
}

/** reading_revision_shop_id_inspection_id_fkey -> inspectionId */
function referencedMember(constraint: string): string {
  const column = /shop_id_(.+)_fkey$/.exec(constraint)?.[1] ?? constraint;
  return column.replace(/_([a-z])/g, (_, letter: string) => letter.toUpperCase());
}

/** A foreign key that does not hold is the caller's mistake; everything else is passed on. */
export function referenceError(error: unknown): never {
  const { code, constraint } = (typeof error === 'object' && error !== null ? error : {}) as DatabaseFault;
  if (code === '23503' && typeof constraint === 'string') {
    const member = referencedMember(constraint);
    throw new DomainError(
      'record.unknownReference',
      `The record named by ${member} does not exist in this shop.`,
      [{ pointer: `/${member}`, rule: 'reference', detail: 'no such record' }],
    );
  }
  throw error;
}
