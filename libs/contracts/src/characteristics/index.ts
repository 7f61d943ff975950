export * from './characteristic.dto.js';
