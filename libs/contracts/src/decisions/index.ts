export * from './decision.dto.js';
