export * from './comebacks/index.js';
export * from './lives/index.js';
export * from './observation/index.js';
export * from './planning/index.js';
export * from './recurrence/index.js';
export * from './charts/index.js';
export * from './rates/index.js';
