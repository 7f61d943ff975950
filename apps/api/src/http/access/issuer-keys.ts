import {
  createRemoteJWKSet,
  customFetch,
  errors,
  type FetchImplementation,
  type JWTVerifyGetKey,
} from 'jose';

/** The keys of an issuer cannot be had now: nothing is known about the token. */
export class KeysUnavailableError extends Error {}

/** Judgement: how long keys are believed without asking again, how often an unknown key id makes us ask, and patience. */
const freshFor = 10 * 60_000;
const pauseAfterAnswer = 30_000;
const pauseAfterFault = 5_000;
const patience = 2_000;
const mostBytes = 256 * 1024;

/**
 * The public keys of an issuer, asked for at the set address and nowhere else: what a token says about where keys are
 * (`jku`, `x5u`, a path as `kid`) is never followed. Neither is a redirect.
 *
 * @param now  monotonic milliseconds
 */
export function issuerKeys(jwksUrl: string, now: () => number = () => performance.now()): JWTVerifyGetKey {
  let failedAt: number | undefined;
  const load: FetchImplementation = async (url, options) => {
    if (failedAt !== undefined && now() - failedAt < pauseAfterFault)
      throw new KeysUnavailableError('failed lately');
    try {
      const answer = await fetch(url, options);
      const keys = await readAtMost(answer, mostBytes);
      failedAt = undefined;
      return new Response(keys, { status: answer.status === 200 ? 200 : 502 });
    } catch (error) {
      failedAt = now();
      throw new KeysUnavailableError('not loaded', { cause: error });
    }
  };
  const find = createRemoteJWKSet(new URL(jwksUrl), {
    cacheMaxAge: freshFor,
    cooldownDuration: pauseAfterAnswer,
    timeoutDuration: patience,
    [customFetch]: load,
  });
  return async (header, token) => {
    try {
      return await find(header, token);
    } catch (error) {
      const isNoKey =
        error instanceof errors.JWKSNoMatchingKey || error instanceof errors.JWKSMultipleMatchingKeys;
      if (isNoKey || error instanceof KeysUnavailableError) throw error;
      failedAt = now();
      throw new KeysUnavailableError('not usable', { cause: error });
    }
  };
}

async function readAtMost(answer: Response, most: number): Promise<Buffer<ArrayBuffer>> {
  const parts: Uint8Array[] = [];
  let length = 0;
  const body: AsyncIterable<Uint8Array> = answer.body ?? new Blob([]).stream();
  for await (const part of body) {
    length += part.byteLength;
    if (length > most) throw new Error('the answer is too large');
    parts.push(part);
  }
  return Buffer.concat(parts);
}
