export * from './distance/index.js';
