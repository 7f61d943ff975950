import type { Caller } from '@endfloat/workshop';

/** Reads tokens that others have issued (RFC 9068). */
export abstract class BearerTokens {
  /**
   * Whom a token speaks for; undefined where it is not to be believed, for whatever reason.
   *
   * @throws HttpProblem `unavailable` where the keys of its issuer cannot be had
   */
  abstract identify(token: string): Promise<Caller | undefined>;
}

/** Where no issuer is set: no token is believed. */
export class NoBearerTokens extends BearerTokens {
  override identify(): Promise<undefined> {
    return Promise.resolve(undefined);
  }
}
