export * from './fields/index.js';
export * from './paging/index.js';
export * from './problem/index.js';
export * from './quantity/index.js';
