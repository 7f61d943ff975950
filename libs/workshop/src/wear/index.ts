export * from './fleet-wear.js';
export * from './list-wear-outlooks.use-case.js';
export * from './show-wear.use-case.js';
export type { WearCase, WearLimit } from './wear-case.js';
export type { WearSeries } from './wear-series.js';
export type { WearChance, WearUntil, WearView } from './wear-view.js';
export type { YearlyDistance } from './yearly-distance.js';
