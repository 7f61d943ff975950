export * from './verdict.dto.js';
export * from './reading.dto.js';
export * from './evaluation.dto.js';
export * from './instrument-verdict.dto.js';
