export * from './fleet.dto.js';
