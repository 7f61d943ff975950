export * from './comebacks/index.js';
