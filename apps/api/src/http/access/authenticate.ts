import { createHash, timingSafeEqual } from 'node:crypto';
import type { Caller } from '@endfloat/workshop';
import { HttpProblem } from '../problems/http-problem.js';
import type { BearerTokens } from './bearer-tokens.port.js';
import type { CredentialLookup } from './credential-lookup.port.js';

const bearerKey = /^Bearer ([A-Za-z0-9_-]{4,64})\.([A-Za-z0-9_-]{32,128})$/i;
const bearerToken = /^Bearer ([A-Za-z0-9_-]+\.[A-Za-z0-9_-]+\.[A-Za-z0-9_-]*)$/i;
const longestHeader = 8 * 1024;

/** What says whom a credential speaks for. */
export interface Credentials {
  /** where keys are stored */
  readonly keys: CredentialLookup;
  /** tokens of other issuers */
  readonly tokens: BearerTokens;
}

/** Compared against when no key has the prefix, so that both cases take the same steps. */
const nobody = createHash('sha256').update('no such key').digest();

/**
 * Who holds the key in `Authorization: Bearer <prefix>.<secret>`, or whom the token in `Authorization: Bearer
 * <header>.<claims>.<signature>` speaks for.
 *
 * @param header  value of the Authorization header
 * @param now  milliseconds since 1970
 * @throws HttpProblem `missing-credential` without a header, `invalid-token` for every other reason alike
 */
export async function authenticate(
  header: string | undefined,
  { keys, tokens }: Credentials,
  now: number,
): Promise<Caller> {
  if (header === undefined) {
    throw new HttpProblem('missing-credential', {
      headers: { 'www-authenticate': 'Bearer realm="endfloat"' },
    });
  }
  const [, token] = header.length > longestHeader ? [] : (bearerToken.exec(header) ?? []);
  const caller = await (token === undefined ? holderOf(header, keys, now) : tokens.identify(token));
  if (caller === undefined) throw invalidToken();
  return caller;
}

/** The caller a stored key speaks for; undefined where no such key has this secret. */
async function holderOf(header: string, keys: CredentialLookup, now: number): Promise<Caller | undefined> {
  const [, prefix, secret] = bearerKey.exec(header) ?? [];
  if (prefix === undefined || secret === undefined) return undefined;
  const stored = await keys.find(prefix);
  const given = createHash('sha256').update(secret).digest();
  const expected = stored?.secretHash.byteLength === given.length ? stored.secretHash : nobody;
  const isSame = timingSafeEqual(given, expected);
  if (stored === undefined || !isSame) return undefined;
  if (stored.expiresAt !== null && Date.parse(stored.expiresAt) <= now) return undefined;
  // That a key was used is worth knowing, and not worth refusing anybody.
  await stored.noteUse?.().catch(() => undefined);
  return stored.caller;
}

function invalidToken(): HttpProblem {
  return new HttpProblem('invalid-token', {
    headers: { 'www-authenticate': 'Bearer realm="endfloat", error="invalid_token"' },
  });
}
