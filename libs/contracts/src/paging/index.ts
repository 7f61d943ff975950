export * from './page.js';
