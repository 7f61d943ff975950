export * from './event.dto.js';
