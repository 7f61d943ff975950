import type { Caller } from '@endfloat/workshop';

/** A key as it is stored: never the secret itself. */
export interface StoredCredential {
  /** SHA-256 of the secret part */
  readonly secretHash: Uint8Array;
  readonly caller: Caller;
  /** RFC 3339 instant from which the key is void; null for none */
  readonly expiresAt: string | null;
  /** Called once the secret has turned out right; its failure is not the caller's. */
  readonly noteUse?: () => Promise<void>;
}

/** Finds keys by their prefix. A withdrawn key is not found. */
export abstract class CredentialLookup {
  abstract find(prefix: string): Promise<StoredCredential | undefined>;
}
