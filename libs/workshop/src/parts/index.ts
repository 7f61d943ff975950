export * from './parts.use-case.js';
export * from './stock-moves.use-case.js';
export type { StockMoveEntry, StockMoveRecord } from './move-stock.js';
export * from './stock-lines.use-case.js';
export * from './cores.use-case.js';
export * from './warranty-claims.use-case.js';
export * from './arrival-inspections.use-case.js';
export * from './part-needs.use-case.js';
export * from './order-proposals.use-case.js';
export { orderReasonCodes, type OrderReason, type OrderReasonCode } from './order-reasons.js';
export {
  horizonOfQuery,
  needSources,
  type NeedHorizon,
  type NeedSource,
  type VanChance,
} from './gather-needs.js';
export type { CountedChance } from './needs-of-kind.js';
export type { Supply } from './gather-supply.js';
export { fewestEndedLives } from './known-lives.js';
export { useSmoothing, type UseForecast } from './use-forecast.js';
export * from './preview-stock-level.js';
