export * from './character-refusals.js';
export * from './examine-vehicle-number.js';
export * from './model-year-of.js';
export * from './plate-key.js';
export * from './vin-check-digit.js';
