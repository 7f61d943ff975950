export * from './compare-lives.js';
export * from './component-lives.js';
export { type LifeCounts } from './life-rows.js';
export * from './part-life.js';
