export * from './comparison.dto.js';
export * from './course.dto.js';
export * from './rate-query.dto.js';
export * from './rate.dto.js';
