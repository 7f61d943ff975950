export * from './audit.dto.js';
