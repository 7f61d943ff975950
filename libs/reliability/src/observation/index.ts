export * from './observed-spans.js';
export * from './distance-at.js';
