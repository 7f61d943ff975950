export * from './history-entry.js';
export * from './show-vehicle-history.use-case.js';
