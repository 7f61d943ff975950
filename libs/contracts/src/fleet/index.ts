export * from './component-lives.dto.js';
export * from './component-life-comparison.dto.js';
export * from './fleet.dto.js';
export * from './fleet-recurrence.dto.js';
export * from './recurrence-trend.dto.js';
