export * from './limit.dto.js';
