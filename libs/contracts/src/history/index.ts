export * from './assessment-in-history.dto.js';
export * from './history-entry.dto.js';
export * from './history-moment.dto.js';
export * from './reading-in-history.dto.js';
export * from './vehicle-history.dto.js';
