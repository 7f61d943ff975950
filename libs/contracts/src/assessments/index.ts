export * from './assess.dto.js';
export * from './assessment-option.dto.js';
export * from './assessment-outcome.dto.js';
export * from './assessment.dto.js';
export * from './further-check.dto.js';
export * from './preview.dto.js';
export * from './preview-option.dto.js';
export * from './expected-costs.dto.js';
