export * from './customer.dto.js';
