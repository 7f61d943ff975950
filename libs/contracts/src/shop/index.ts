export * from './shop.dto.js';
