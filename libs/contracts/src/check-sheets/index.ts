export * from './check-sheet.dto.js';
