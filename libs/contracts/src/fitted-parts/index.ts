export * from './fitted-part.dto.js';
