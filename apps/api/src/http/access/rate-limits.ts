import type { FastifyReply, FastifyRequest } from 'fastify';
import { HttpProblem } from '../problems/http-problem.js';
import { RateLimiter, type RatePolicy } from './rate-limiter.js';

export interface RateLimitSettings {
  /** All requests of one address, counted before anything else is done. */
  readonly perAddress: Omit<RatePolicy, 'name'>;
  /** Requests of one user. */
  readonly perCaller: Omit<RatePolicy, 'name'>;
  /** Credentials of one address that turned out wrong. */
  readonly wrongCredentials: Omit<RatePolicy, 'name'>;
}

/** Limits per address and per caller, told in the structured form of the IETF draft `RateLimit` header fields. */
export class RateLimits {
  private readonly address: RateLimiter;
  private readonly caller: RateLimiter;
  private readonly wrong: RateLimiter;

  constructor(settings: RateLimitSettings) {
    this.address = new RateLimiter({ name: 'address', ...settings.perAddress });
    this.caller = new RateLimiter({ name: 'caller', ...settings.perCaller });
    this.wrong = new RateLimiter({ name: 'wrong-credentials', ...settings.wrongCredentials });
  }

  takeForAddress({ ip }: FastifyRequest, reply: FastifyReply): void {
    take(this.address, ip, reply);
    if (this.wrong.isSpent(ip)) take(this.wrong, ip, reply);
  }

  takeForCaller(callerKey: string, reply: FastifyReply): void {
    take(this.caller, callerKey, reply);
  }

  countWrongCredential({ ip }: FastifyRequest): void {
    this.wrong.take(ip);
  }
}

function take(limiter: RateLimiter, key: string, reply: FastifyReply): void {
  const { name, requests, seconds } = limiter.policy;
  const { isAdmitted, remaining, reset } = limiter.take(key);
  reply.header('ratelimit-policy', `"${name}";q=${requests};w=${seconds}`);
  reply.header('ratelimit', `"${name}";r=${remaining};t=${reset}`);
  if (!isAdmitted) throw new HttpProblem('rate-limited', { headers: { 'retry-after': String(reset) } });
}
