import { decodeJwt, errors, jwtVerify, type JWTVerifyGetKey } from 'jose';
import type { Caller, Clock } from '@endfloat/workshop';
import { HttpProblem } from '../problems/http-problem.js';
import { BearerTokens } from './bearer-tokens.port.js';
import { issuerKeys, KeysUnavailableError } from './issuer-keys.js';
import { readClaims, type ClaimedCaller } from './token-claims.js';
import type { TokenIssuer } from './token-issuer.js';

/** Seconds by which the clocks of issuer and service may differ. */
const tolerance = 60;

/** Who the person of a shop is, if they may still work there; the roles bound what they may do. */
export type FindPerson = (claimed: ClaimedCaller) => Promise<Caller | undefined>;

/**
 * Access tokens of the issuers that are set, by RFC 9068 and RFC 8725: signature by an allow-listed algorithm with a key
 * of the issuer, `typ` at+jwt, `iss`, `aud`, `exp`, `nbf`, `iat` and `sub`.
 */
export class IssuerTokens extends BearerTokens {
  private readonly issuers: ReadonlyMap<
    string,
    { readonly terms: TokenIssuer; readonly keys: JWTVerifyGetKey }
  >;

  constructor(
    issuers: readonly TokenIssuer[],
    private readonly clock: Clock,
    private readonly findPerson: FindPerson,
  ) {
    super();
    this.issuers = new Map(
      issuers.map((terms) => [terms.issuer, { terms, keys: issuerKeys(terms.jwksUrl) }]),
    );
  }

  override async identify(token: string): Promise<Caller | undefined> {
    const claimed = await this.verify(token);
    return claimed === undefined ? undefined : this.findPerson(claimed);
  }

  private async verify(token: string): Promise<ClaimedCaller | undefined> {
    try {
      // Only to know whose keys to ask; nothing of it is believed before the signature is.
      const known = this.issuers.get(decodeJwt(token).iss ?? '');
      if (known === undefined) return undefined;
      const { terms, keys } = known;
      const { payload } = await jwtVerify(token, keys, {
        issuer: terms.issuer,
        audience: terms.audience,
        algorithms: [...terms.algorithms],
        typ: 'at+jwt',
        clockTolerance: tolerance,
        currentDate: new Date(this.clock.now()),
        requiredClaims: ['exp', 'iat', 'sub'],
      });
      return readClaims(terms, payload);
    } catch (error) {
      if (error instanceof KeysUnavailableError) throw keysUnavailable();
      // A TypeError is a key that is too weak for its algorithm.
      if (error instanceof errors.JOSEError || error instanceof TypeError) return undefined;
      throw error;
    }
  }
}

function keysUnavailable(): HttpProblem {
  return new HttpProblem('unavailable', {
    detail: 'The keys of the issuer of this token cannot be had now. Send the request again later.',
    headers: { 'retry-after': '5' },
  });
}
