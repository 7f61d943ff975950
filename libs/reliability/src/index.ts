export * from './comebacks/index.js';
export * from './recurrence/index.js';
