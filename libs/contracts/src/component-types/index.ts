export * from './component-type.dto.js';
