export * from './learned-tables.dto.js';
export * from './learned-diagnosis.dto.js';
export * from './learned-decision.dto.js';
