export const migrationFaults = [
  'unreadable',
  'unusableFile',
  'edited',
  'unknown',
  'failedBefore',
  'failed',
  'locked',
  'notFailed',
] as const;
export type MigrationFault = (typeof migrationFaults)[number];

/** Why the database was not brought up to date; `migration` is the file it is about, where it is about one. */
export class MigrationError extends Error {
  override readonly name = 'MigrationError';

  constructor(
    readonly fault: MigrationFault,
    message: string,
    readonly migration: string | undefined,
    options?: { readonly cause?: unknown },
  ) {
    super(message, options);
  }
}
