import { findServerAccount } from './server-account.js';

const accounts =
  (...lines: string[]) =>
  () =>
    ['root:x:0:0:root:/root:/bin/sh', ...lines, ''].join('\n');

describe('findServerAccount', () => {
  it('is nobody else for an ordinary user', () => {
    expect(findServerAccount(false, accounts())).toBeUndefined();
  });

  it('is postgres before nobody for root', () => {
    const both = accounts(
      'nobody:x:65534:65533::/nonexistent:/bin/false',
      'postgres:x:101:104::/var/lib/postgresql:/bin/sh',
    );

    expect(findServerAccount(true, both)).toEqual({ name: 'postgres', uid: 101, gid: 104 });
    expect(findServerAccount(true, accounts('nobody:x:65534:65533::/:/bin/false'))).toEqual({
      ...{ name: 'nobody', uid: 65534, gid: 65533 },
    });
  });

  it('is never an account with the rights of root', () => {
    expect(() => findServerAccount(true, accounts('postgres:x:0:0::/:/bin/sh'))).toThrow(
      /no user postgres or nobody/,
    );
  });

  it('is refused where the system has none of them', () => {
    expect(() => findServerAccount(true, accounts())).toThrow(
      expect.objectContaining({ fault: 'accountMissing' }),
    );
  });
});
