export * from './gauge-study.dto.js';
