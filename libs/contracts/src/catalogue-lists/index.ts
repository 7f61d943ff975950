export * from './catalogue-list.dto.js';
