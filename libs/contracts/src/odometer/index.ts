export * from './odometer.dto.js';
