export * from './comeback-chain.js';
export * from './comeback-rate.js';
export * from './complaint-likeness.js';
export * from './propose-comebacks.js';
export * from './watch-window.js';
