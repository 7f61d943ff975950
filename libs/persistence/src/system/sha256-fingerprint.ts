import { createHash } from 'node:crypto';
import { Fingerprint } from '@endfloat/workshop/ports';

/** SHA-256 (FIPS 180-4). */
export class Sha256Fingerprint extends Fingerprint {
  of(text: string): string {
    return createHash('sha256').update(text, 'utf8').digest('hex');
  }
}
