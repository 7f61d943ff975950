export * from './computed-quantity.dto.js';
export * from './interval.dto.js';
export * from './money.dto.js';
export * from './rate.dto.js';
