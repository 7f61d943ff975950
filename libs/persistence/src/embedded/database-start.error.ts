export const databaseStartFaults = [
  'platformPackageMissing',
  'accountMissing',
  'folderUnusable',
  'secretUnusable',
  'diskFull',
  'alreadyRunning',
  'otherMajor',
  'initialisationFailed',
  'startFailed',
  'notUtf8',
  'serverTooOld',
  'rolesUnavailable',
] as const;
export type DatabaseStartFault = (typeof databaseStartFaults)[number];

/** Why no database can be used; the message says what to do about it. */
export class DatabaseStartError extends Error {
  override readonly name = 'DatabaseStartError';

  constructor(
    readonly fault: DatabaseStartFault,
    message: string,
    options?: { readonly cause?: unknown },
  ) {
    super(message, options);
  }
}

const noSpace = /ENOSPC|No space left on device|Disk quota exceeded|EDQUOT/;
const noRight = /EACCES|EPERM|EROFS|Permission denied|Operation not permitted|Read-only file system/;

/**
 * Names the cause that a failed system call or program gave away in its text.
 *
 * @param detail - message of an error, or what a program wrote
 * @param folder - the folder it was about, for the message
 * @param otherwise - fault to report when neither space nor rights are the cause
 */
export function faultOf(
  detail: string,
  folder: string,
  otherwise: DatabaseStartFault,
  cause?: unknown,
): DatabaseStartError {
  const options = { cause };
  if (noSpace.test(detail)) {
    return new DatabaseStartError(
      'diskFull',
      `No space left for the database in ${folder}: ${detail}`,
      options,
    );
  }
  if (noRight.test(detail)) {
    return new DatabaseStartError('folderUnusable', `The database may not use ${folder}: ${detail}`, options);
  }
  return new DatabaseStartError(otherwise, detail, options);
}
