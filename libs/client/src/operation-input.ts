import type { Operations } from './document/operations.js';

/** Name of an operation, as the interface document has it. */
export type OperationId = keyof Operations;

/** Operations whose answer is one page of a list with a cursor. */
export type PagedOperationId = {
  [Id in OperationId]: Operations[Id]['query'] extends { readonly cursor?: string }
    ? Operations[Id]['answer'] extends {
        readonly items: readonly unknown[];
        readonly nextCursor: string | null;
      }
      ? Id
      : never
    : never;
}[OperationId];

/** Operations that can answer as CSV. */
export type CsvOperationId = {
  [Id in OperationId]: Operations[Id]['isCsv'] extends true ? Id : never;
}[OperationId];

/** What an operation answers with. */
export type AnswerOf<Id extends OperationId> = Operations[Id]['answer'];

/** One item of the list that a paged operation answers with. */
export type ItemOf<Id extends PagedOperationId> =
  AnswerOf<Id> extends { readonly items: readonly (infer Item)[] } ? Item : never;

type PathPart<Path> = Path extends undefined ? object : { readonly path: Path };
/** `query` may be left out where nothing in it is needed. */
type QueryPart<Query> = Query extends undefined
  ? object
  : object extends Query
    ? { readonly query?: Query }
    : { readonly query: Query };
type BodyPart<Body> = [Body] extends [undefined]
  ? object
  : undefined extends Body
    ? { readonly body?: Body }
    : { readonly body: Body };
/** The ETag of the version that the change was made from. */
type ConditionPart<Conditional> = Conditional extends true ? { readonly ifMatch: string } : object;

export interface CallOptions {
  /** Ends waiting, also between attempts. */
  readonly signal?: AbortSignal;
  /** The Idempotency-Key; one is made where the operation takes it and none is given. */
  readonly idempotencyKey?: string;
}

/** What an operation is called with. */
export type InputOf<Id extends OperationId> = PathPart<Operations[Id]['path']> &
  QueryPart<Operations[Id]['query']> &
  BodyPart<Operations[Id]['body']> &
  ConditionPart<Operations[Id]['isConditional']> &
  CallOptions;

/** The input may be left out where nothing in it is needed. */
export type ArgumentsOf<Id extends OperationId> =
  object extends InputOf<Id> ? [input?: InputOf<Id>] : [input: InputOf<Id>];
