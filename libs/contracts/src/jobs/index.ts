export * from './job.dto.js';
export * from './work.dto.js';
export * from './proof.dto.js';
