import { rolePassword } from './secret.js';

describe('rolePassword', () => {
  it('is the HMAC with SHA-256 of the role under the secret', () => {
    // RFC 4231, test case 2: key "Jefe", data "what do ya want for nothing?".
    const published = '5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843';

    expect(rolePassword('Jefe', 'what do ya want for nothing?')).toBe(
      Buffer.from(published, 'hex').toString('base64url'),
    );
  });

  it('differs from role to role', () => {
    expect(rolePassword('secret', 'endfloat_api')).not.toBe(rolePassword('secret', 'endfloat_worker'));
  });
});
