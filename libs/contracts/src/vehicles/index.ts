export * from './vehicle.dto.js';
