export * from './comeback.dto.js';
