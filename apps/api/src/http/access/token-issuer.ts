import type { ShopRole } from '@endfloat/workshop';

/** Signatures that may be believed (RFC 7518, RFC 8037): asymmetric ones only, so that no public key can sign. */
export const tokenAlgorithms = ['RS256', 'PS256', 'ES256', 'EdDSA'] as const;
export type TokenAlgorithm = (typeof tokenAlgorithms)[number];

/** Ids of shops and people, as claims and the issuers' document give them. */
export const idPattern = /^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

/** A claim and what its values mean here; a value that is not listed means nothing. */
export interface ClaimMeaning<T> {
  readonly claim: string;
  readonly values: Readonly<Record<string, T>>;
}

/** An issuer whose tokens are believed, and what their claims mean. */
export interface TokenIssuer {
  /** exactly what `iss` says */
  readonly issuer: string;
  /** what `aud` must name */
  readonly audience: string;
  /** where its public keys are (RFC 7517) */
  readonly jwksUrl: string;
  readonly algorithms: readonly TokenAlgorithm[];
  /** The issuer speaks for these shops and for no other. */
  readonly shop: ClaimMeaning<string>;
  /** The person; without values the claim holds the id of the person itself. */
  readonly person: { readonly claim: string; readonly values?: Readonly<Record<string, string>> };
  /** What the token may do at most; the person's own roles bound it further. */
  readonly roles: ClaimMeaning<readonly ShopRole[]>;
}
