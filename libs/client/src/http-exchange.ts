/** One request, as `fetch` takes it. */
export interface HttpRequest {
  readonly method: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body?: string;
  readonly signal?: AbortSignal;
  /** Never followed: a key of the shop is not sent to another place. */
  readonly redirect: 'error';
}

/** What the client needs of an answer; `Response` of `fetch` has it. */
export interface HttpAnswer {
  readonly status: number;
  readonly headers: { get(name: string): string | null };
  text(): Promise<string>;
}

/** Sends one request; the `fetch` of the platform is one. Rejects when no answer came. */
export type Fetch = (url: string, request: HttpRequest) => Promise<HttpAnswer>;
