import type { RateLimitSettings } from './access/rate-limits.js';

/** What an operator may set about the interface. */
export interface ApiSettings {
  /** Key of the signatures on cursors: at least 32 characters, the same in every process of the service. */
  readonly cursorKey: string;
  /** Origin whose pages may read answers in a browser; `*` for all. Credentials are never sent by the browser itself. */
  readonly allowedOrigin: string;
  /** Which hops before us are believed about the caller's address; none unless told. */
  readonly trustProxy: false | string | number;
  readonly logLevel: 'silent' | 'fatal' | 'error' | 'warn' | 'info' | 'debug';
  readonly rateLimits: RateLimitSettings;
  /** A member outside the contract in an answer is an error; otherwise it is stripped and logged. */
  readonly strictAnswers: boolean;
  /** Most bytes of an ordinary body. */
  readonly bodyLimit: number;
  /** Milliseconds a request may take to arrive, and a handler to answer. */
  readonly requestTimeout: number;
  /** Milliseconds between "not ready" and the end of accepting, when the process is told to end. */
  readonly drainTime: number;
  /** Milliseconds of delay of the event loop above which new requests are turned away. */
  readonly mostLoopDelay: number;
  /** Requests that may be under way at once; further ones are turned away. */
  readonly mostInFlight: number;
}

/** Everything but the secret. */
export const usualApiSettings: Omit<ApiSettings, 'cursorKey'> = {
  allowedOrigin: '*',
  trustProxy: false,
  logLevel: 'info',
  rateLimits: {
    perAddress: { requests: 6000, seconds: 60 },
    perCaller: { requests: 3000, seconds: 60 },
    wrongCredentials: { requests: 30, seconds: 60 },
  },
  strictAnswers: false,
  bodyLimit: 256 * 1024,
  requestTimeout: 30_000,
  drainTime: 2_000,
  mostLoopDelay: 1_000,
  mostInFlight: 500,
};
