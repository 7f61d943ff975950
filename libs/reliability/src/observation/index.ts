export * from './observed-spans.js';
export * from './distance-at.js';
export { millisecondsPerDay } from '../time/instant-of.js';
