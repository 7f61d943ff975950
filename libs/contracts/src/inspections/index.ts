export * from './inspection.dto.js';
export * from './next-check.dto.js';
