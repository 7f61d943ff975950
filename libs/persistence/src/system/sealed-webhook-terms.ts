import { randomBytes } from 'node:crypto';
import { WebhookTerms, type Sealer } from '@endfloat/workshop/ports';

const secretBytes = 32;
const purposeOf = (endpointId: string): string => `webhook/${endpointId}`;

/** Secrets as the Standard Webhooks write them: `whsec_` and base64 of 24 to 64 bytes of chance. */
export class SealedWebhookTerms extends WebhookTerms {
  constructor(
    private readonly sealer: Sealer,
    readonly allowsLoopback: boolean,
  ) {
    super();
  }

  makeSecret(endpointId: string): { shown: string; sealed: string } {
    const shown = `whsec_${randomBytes(secretBytes).toString('base64')}`;
    return { shown, sealed: this.sealer.seal(shown, purposeOf(endpointId)) };
  }

  openSecret(sealed: string, endpointId: string): string {
    return this.sealer.open(sealed, purposeOf(endpointId));
  }
}
