export * from './expected-cost/option-cost-terms.js';
export * from './expected-cost/expected-cost-of-option.js';
export * from './expected-cost/compare-options.js';
export * from './expected-cost/break-even-probability.js';
