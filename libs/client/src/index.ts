export { EndfloatClient, type Answer, type ClientSettings } from './endfloat-client.js';
export { ProblemError, UnexpectedAnswerError } from './client-errors.js';
export type { Fetch, HttpAnswer, HttpRequest } from './http-exchange.js';
export type {
  AnswerOf,
  CallOptions,
  CsvOperationId,
  InputOf,
  ItemOf,
  OperationId,
  PagedOperationId,
} from './operation-input.js';
export type { RetryRules } from './retrying.js';
export type { Events, Operations } from './document/operations.js';
export { operationTable } from './document/operation-table.js';
export type * as Schemas from './document/schemas.js';
