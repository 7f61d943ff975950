export * from './wear-parts.dto.js';
export * from './wear-trend.dto.js';
export * from './wear.dto.js';
