export * from './compare-recurrences.js';
export * from './fleet-recurrence.js';
export * from './recurrence-trend.js';
export * from './unit-history.js';
export * from './valve-seat.published-case.js';
