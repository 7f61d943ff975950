export * from './count-data.js';
export * from './life-data.js';
export * from './line-data.js';
export * from './recurrence-data.js';
export type { ExpectedFigure, FigureTolerance, StatisticsPublishedCase } from './published-case.js';
export { statisticsPublishedCases } from './statistics-published-cases.js';
