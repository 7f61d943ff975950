import { faultOf } from './database-start.error.js';

describe('faultOf', () => {
  it.each([
    ['diskFull', 'ENOSPC: no space left on device, write'],
    ['diskFull', 'could not extend file: No space left on device'],
    ['diskFull', 'EDQUOT: Disk quota exceeded'],
    ['folderUnusable', "EACCES: permission denied, mkdir '/data'"],
    ['folderUnusable', 'could not create directory: Permission denied'],
    ['folderUnusable', 'EROFS: read-only file system'],
    ['startFailed', 'could not bind IPv4 address: Address already in use'],
  ])('finds %s in "%s" and keeps the text', (fault, detail) => {
    const error = faultOf(detail, '/data', 'startFailed');

    expect(error.fault).toBe(fault);
    expect(error.message).toContain(detail);
  });

  it('names the folder where space or rights are the cause', () => {
    expect(faultOf('No space left on device', '/some/folder', 'startFailed').message).toContain(
      '/some/folder',
    );
  });
});
