export * from './webhook.dto.js';
