export { Clock } from './clock.port.js';
export { IdSource } from './id-source.port.js';
export { Computing } from './computing.port.js';
export { Fingerprint } from './fingerprint.port.js';
export { UnitOfWork, type ShopEvent, type ShopTransaction } from './unit-of-work.port.js';
export type * from './record-store.port.js';
export { learnedSubjects } from './plain-stores.port.js';
export type * from './plain-stores.port.js';
export * from './fleet-history.port.js';
export * from './settled-jobs.port.js';
export type * from './learning-history.port.js';
export * from './records/shop.records.js';
export * from './records/vehicles.records.js';
export * from './records/bench.records.js';
export * from './records/jobs.records.js';
export * from './records/decide.records.js';
export * from './records/planning.records.js';
export * from './records/stock.records.js';
export type * from './stock-queries.port.js';
export {
  DomainError,
  errorCodes,
  invalidInput,
  notFound,
  unknownReference,
  type ErrorCode,
  type Fault,
} from '../errors/domain.errors.js';
export { sameContent } from './same-content.js';
export { shopRoles, type Caller, type ShopRole } from './roles.js';
export { SharedTransaction } from './shared-transaction.port.js';
export { Sealer } from './sealer.port.js';
export type * from './stored-answers.port.js';
export type * from './event-feed.port.js';
export * from './webhooks.port.js';
export * from './audit.port.js';
export * from './records/webhooks.records.js';
export * from './event-types.js';
