import { createCipheriv, createDecipheriv, hkdfSync, randomBytes } from 'node:crypto';
import { Sealer } from '@endfloat/workshop/ports';

const algorithm = 'aes-256-gcm';
const [ivBytes, tagBytes, keyBytes] = [12, 16, 32];

/** AES-256-GCM (NIST SP 800-38D) under a key for each purpose (HKDF, RFC 5869) derived from the secret of the service. */
export class AesSealer extends Sealer {
  constructor(private readonly secret: string) {
    super();
  }

  seal(text: string, purpose: string): string {
    const iv = randomBytes(ivBytes);
    const cipher = createCipheriv(algorithm, this.keyFor(purpose), iv);
    const sealed = Buffer.concat([cipher.update(text, 'utf8'), cipher.final()]);
    return Buffer.concat([iv, cipher.getAuthTag(), sealed]).toString('base64url');
  }

  open(sealed: string, purpose: string): string {
    const bytes = Buffer.from(sealed, 'base64url');
    const decipher = createDecipheriv(algorithm, this.keyFor(purpose), bytes.subarray(0, ivBytes), {
      authTagLength: tagBytes,
    });
    decipher.setAuthTag(bytes.subarray(ivBytes, ivBytes + tagBytes));
    const text = Buffer.concat([decipher.update(bytes.subarray(ivBytes + tagBytes)), decipher.final()]);
    return text.toString('utf8');
  }

  private keyFor(purpose: string): Buffer {
    return Buffer.from(hkdfSync('sha256', this.secret, 'endfloat sealing', purpose.slice(0, 1024), keyBytes));
  }
}
