export * from './fields/index.js';
export * from './paging/index.js';
export * from './problem/index.js';
export * from './quantity/index.js';
export * from './recording/index.js';
export * from './vehicles/index.js';
