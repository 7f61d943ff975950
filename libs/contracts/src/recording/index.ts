export * from './recorded.dto.js';
