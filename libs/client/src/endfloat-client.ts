import { operationTable } from './document/operation-table.js';
import type * as Schemas from './document/schemas.js';
import { ProblemError, UnexpectedAnswerError } from './client-errors.js';
import type { Fetch, HttpAnswer, HttpRequest } from './http-exchange.js';
import type {
  AnswerOf,
  ArgumentsOf,
  CallOptions,
  CsvOperationId,
  ItemOf,
  OperationId,
  PagedOperationId,
} from './operation-input.js';
import { requestAddress } from './request-address.js';
import { asksToWait, retryAfterSeconds, retryRules, usualWaitMs, type RetryRules } from './retrying.js';

export interface ClientSettings {
  /** where the service is, e.g. `http://127.0.0.1:3000` */
  readonly baseUrl: string;
  /** a key of the shop, `<prefix>.<secret>` */
  readonly apiKey: string;
  /** sends a request; the platform's `fetch` where none is given */
  readonly fetch?: Fetch;
  /** makes an Idempotency-Key; a random UUID where none is given */
  readonly newKey?: () => string;
  /** waits between two attempts */
  readonly wait?: (milliseconds: number, signal: AbortSignal | undefined) => Promise<void>;
  readonly retries?: Partial<RetryRules>;
}

export interface Answer<Data> {
  readonly status: number;
  readonly data: Data;
  /** tag of the version, to be sent as `ifMatch` with a change */
  readonly etag: string | null;
  /** where what was made is found */
  readonly location: string | null;
  /** whether this is the kept answer to an earlier request with the same key */
  readonly isReplayed: boolean;
}

/** What every input is made of, whatever its operation. */
interface AnyInput extends CallOptions {
  readonly path?: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, string | undefined>>;
  readonly body?: unknown;
  readonly ifMatch?: string;
}

/**
 * The interface as typed calls: `client.call('createVehicle', { body })`.
 *
 * A creating call carries an Idempotency-Key, so that it is sent again after a lost answer with one effect. Answers that
 * ask to wait (429, 503, 409 while the first is running) are waited for and sent again. A refusal is a `ProblemError`.
 */
export class EndfloatClient {
  readonly #settings: ClientSettings;
  readonly #fetch: Fetch;
  readonly #wait: NonNullable<ClientSettings['wait']>;
  readonly #rules: RetryRules;

  /** @throws RangeError where the rules for retries are out of range */
  constructor(settings: ClientSettings) {
    this.#settings = settings;
    this.#fetch = settings.fetch ?? ((url, request) => fetch(url, request));
    this.#wait = settings.wait ?? waitFor;
    this.#rules = retryRules(settings.retries);
  }

  /** Calls an operation and reads its answer. @throws ProblemError UnexpectedAnswerError */
  async call<Id extends OperationId>(id: Id, ...[input]: ArgumentsOf<Id>): Promise<Answer<AnswerOf<Id>>> {
    const answer = await this.#send(id, input, { accept: 'application/json' });
    return told(answer, await json(answer));
  }

  /** Calls a changing operation and asks for no body, only for the tag and the place. */
  async callForTag<Id extends OperationId>(id: Id, ...[input]: ArgumentsOf<Id>): Promise<Answer<undefined>> {
    const answer = await this.#send(id, input, {
      accept: 'application/json',
      prefer: 'return=minimal',
    });
    return told(answer, undefined);
  }

  /** Reads what has changed since the version with this tag; undefined where nothing has. */
  async callIfChanged<Id extends OperationId>(
    id: Id,
    etag: string,
    ...[input]: ArgumentsOf<Id>
  ): Promise<Answer<AnswerOf<Id>> | undefined> {
    const answer = await this.#send(id, input, {
      accept: 'application/json',
      'if-none-match': etag,
    });
    return answer.status === 304 ? undefined : told(answer, await json(answer));
  }

  /** Reads an answer as CSV text (RFC 4180). */
  async csv<Id extends CsvOperationId>(id: Id, ...[input]: ArgumentsOf<Id>): Promise<Answer<string>> {
    const answer = await this.#send(id, input, { accept: 'text/csv' });
    return told(answer, await answer.text());
  }

  /** The pages of a list, one after the other, from the given cursor or the beginning. */
  async *pages<Id extends PagedOperationId>(
    id: Id,
    ...[input]: ArgumentsOf<Id>
  ): AsyncGenerator<AnswerOf<Id>> {
    let next: AnyInput = input ?? {};
    for (;;) {
      const { data } = await this.call(id, ...([next] as unknown as ArgumentsOf<Id>));
      yield data;
      const { nextCursor } = data as { readonly nextCursor: string | null };
      if (nextCursor === null) return;
      next = { ...next, query: { ...next.query, cursor: nextCursor } };
    }
  }

  /** The items of a list, over all its pages. */
  async *items<Id extends PagedOperationId>(id: Id, ...args: ArgumentsOf<Id>): AsyncGenerator<ItemOf<Id>> {
    for await (const page of this.pages(id, ...args))
      yield* (page as unknown as { readonly items: readonly ItemOf<Id>[] }).items;
  }

  async #send(
    id: OperationId,
    input: AnyInput = {},
    fields: Readonly<Record<string, string>>,
  ): Promise<HttpAnswer> {
    const { method, path, isKeyed, media } = operationTable[id];
    const url = requestAddress(this.#settings.baseUrl, path, input.path, input.query);
    const key = isKeyed ? (input.idempotencyKey ?? this.#newKey()) : undefined;
    const request: HttpRequest = {
      method,
      headers: {
        ...fields,
        authorization: `Bearer ${this.#settings.apiKey}`,
        ...(key === undefined ? {} : { 'idempotency-key': key }),
        ...(input.ifMatch === undefined ? {} : { 'if-match': input.ifMatch }),
        ...(input.body === undefined || media === null ? {} : { 'content-type': media }),
      },
      ...(input.body === undefined ? {} : { body: JSON.stringify(input.body) }),
      ...(input.signal === undefined ? {} : { signal: input.signal }),
      redirect: 'error',
    };
    const answer = await this.#insist(url, request, method === 'GET' || key !== undefined);
    if (answer.status >= 400) throw await refusal(answer);
    return answer;
  }

  /** Sends until there is an answer that does not ask to wait, or the attempts are used up. */
  async #insist(url: string, request: HttpRequest, isRepeatable: boolean): Promise<HttpAnswer> {
    for (let attempt = 1; ; attempt += 1) {
      const isLast = attempt >= this.#rules.attempts;
      const answer = await this.#attempt(url, request, isRepeatable && !isLast);
      if (answer !== undefined && (isLast || !asksToWait(answer))) return answer;
      const asked = answer === undefined ? null : retryAfterSeconds(answer, Date.now());
      const milliseconds = asked === null ? usualWaitMs(attempt) : asked * 1000;
      if (answer !== undefined && milliseconds > this.#rules.longestWaitMs) return answer;
      await this.#wait(Math.min(milliseconds, this.#rules.longestWaitMs), request.signal);
    }
  }

  /** One attempt; undefined where no answer came and the request may be sent again. */
  async #attempt(url: string, request: HttpRequest, mayBeLost: boolean): Promise<HttpAnswer | undefined> {
    try {
      return await this.#fetch(url, request);
    } catch (error) {
      if (!mayBeLost || request.signal?.aborted === true) throw error;
      return undefined;
    }
  }

  #newKey(): string {
    return this.#settings.newKey?.() ?? crypto.randomUUID();
  }
}

function told<Data>(answer: HttpAnswer, data: Data): Answer<Data> {
  return {
    status: answer.status,
    data,
    etag: answer.headers.get('etag'),
    location: answer.headers.get('location'),
    isReplayed: answer.headers.get('idempotency-replayed') !== null,
  };
}

/** The body is what the document says for the operation; the interface checks its own answers against it. */
async function json<Data>(answer: HttpAnswer): Promise<Data> {
  const text = await answer.text();
  if (answer.status === 204 || text === '') return undefined as Data;
  if (!isJson(answer, 'application/json')) throw new UnexpectedAnswerError(answer.status, text.slice(0, 200));
  return JSON.parse(text) as Data;
}

async function refusal(answer: HttpAnswer): Promise<Error> {
  const text = await answer.text();
  if (!isJson(answer, 'application/problem+json'))
    return new UnexpectedAnswerError(answer.status, text.slice(0, 200));
  return new ProblemError(JSON.parse(text) as Schemas.Problem, retryAfterSeconds(answer, Date.now()));
}

function isJson(answer: HttpAnswer, media: string): boolean {
  return answer.headers.get('content-type')?.split(';')[0]?.trim().toLowerCase() === media;
}

function waitFor(milliseconds: number, signal: AbortSignal | undefined): Promise<void> {
  return new Promise((resolve, reject) => {
    const stop = (): void => {
      clearTimeout(timer);
      reject(signal?.reason as Error);
    };
    const timer = setTimeout(() => {
      signal?.removeEventListener('abort', stop);
      resolve();
    }, milliseconds);
    if (signal?.aborted === true) stop();
    else signal?.addEventListener('abort', stop, { once: true });
  });
}
