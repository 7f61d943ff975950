export * from './complaint.dto.js';
