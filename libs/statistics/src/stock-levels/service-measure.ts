/**
 * What a stock level promises. 'cycleService': chance that the demand of one lead time does not exceed the stock,
 * P(D ≤ S). 'readyRate': chance that at least one piece is on the shelf at a moment, P(D ≤ S − 1), which for
 * one-for-one replenishment of Poisson demand is also the share of demands met at once (fill rate).
 */
export const serviceMeasures = ['cycleService', 'readyRate'] as const;
export type ServiceMeasure = (typeof serviceMeasures)[number];
