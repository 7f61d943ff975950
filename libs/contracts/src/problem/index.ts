export * from './problem.dto.js';
