export * from './compare-groups.js';
export * from './comeback-probability.js';
export * from './rate-of-counts.js';
export * from './settle-jobs.js';
export * from './time-to-comeback.js';
