import { createHash, timingSafeEqual } from 'node:crypto';
import type { Caller } from '@endfloat/workshop';
import { HttpProblem } from '../problems/http-problem.js';
import type { CredentialLookup } from './credential-lookup.port.js';

const bearer = /^Bearer ([A-Za-z0-9_-]{4,64})\.([A-Za-z0-9_-]{32,128})$/i;
/** Compared against when no key has the prefix, so that both cases take the same steps. */
const nobody = createHash('sha256').update('no such key').digest();

/**
 * Who holds the key in `Authorization: Bearer <prefix>.<secret>`.
 *
 * @param header  value of the Authorization header
 * @param lookup  where keys are stored
 * @param now  milliseconds since 1970
 * @throws HttpProblem `missing-credential` without a header, `invalid-token` for every other reason alike
 */
export async function authenticate(
  header: string | undefined,
  lookup: CredentialLookup,
  now: number,
): Promise<Caller> {
  if (header === undefined) {
    throw new HttpProblem('missing-credential', {
      headers: { 'www-authenticate': 'Bearer realm="endfloat"' },
    });
  }
  const [, prefix, secret] = bearer.exec(header) ?? [];
  if (prefix === undefined || secret === undefined) throw invalidToken();
  const stored = await lookup.find(prefix);
  const given = createHash('sha256').update(secret).digest();
  const expected = stored?.secretHash.byteLength === given.length ? stored.secretHash : nobody;
  const isSame = timingSafeEqual(given, expected);
  if (stored === undefined || !isSame) throw invalidToken();
  if (stored.expiresAt !== null && Date.parse(stored.expiresAt) <= now) throw invalidToken();
  return stored.caller;
}

function invalidToken(): HttpProblem {
  return new HttpProblem('invalid-token', {
    headers: { 'www-authenticate': 'Bearer realm="endfloat", error="invalid_token"' },
  });
}
