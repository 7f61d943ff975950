export * from './distance/index.js';
export * from './trend/index.js';
