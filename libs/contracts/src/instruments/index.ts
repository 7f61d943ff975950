export * from './instrument.dto.js';
