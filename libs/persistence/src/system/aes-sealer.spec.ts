import { AesSealer } from './aes-sealer.js';
import { SealedWebhookTerms } from './sealed-webhook-terms.js';

describe('sealing', () => {
  const sealer = new AesSealer('a secret of the service that only this spec knows');

  it('gives back what was sealed, and hides it meanwhile', () => {
    const sealed = sealer.seal('Wren Halloway, 555 0100', 'answer');
    expect(sealer.open(sealed, 'answer')).toBe('Wren Halloway, 555 0100');
    expect(Buffer.from(sealed, 'base64url').toString('latin1')).not.toContain('Wren');
  });

  it('seals the same text differently each time', () => {
    expect(sealer.seal('same', 'answer')).not.toBe(sealer.seal('same', 'answer'));
  });

  it('opens nothing for another purpose, by another secret, or once it was changed', () => {
    const sealed = sealer.seal('text', 'answer');
    const bytes = Buffer.from(sealed, 'base64url');
    bytes[bytes.length - 1]! ^= 1;
    expect(() => sealer.open(sealed, 'webhook')).toThrow();
    expect(() => new AesSealer('another secret').open(sealed, 'answer')).toThrow();
    expect(() => sealer.open(bytes.toString('base64url'), 'answer')).toThrow();
    expect(() => sealer.open('', 'answer')).toThrow();
  });

  it('makes secrets of webhooks of 32 bytes, each for its endpoint', () => {
    const terms = new SealedWebhookTerms(sealer, false);
    const { shown, sealed } = terms.makeSecret('one');
    expect(shown).toMatch(/^whsec_/);
    expect(Buffer.from(shown.slice(6), 'base64')).toHaveLength(32);
    expect(terms.openSecret(sealed, 'one')).toBe(shown);
    expect(() => terms.openSecret(sealed, 'two')).toThrow();
  });
});
