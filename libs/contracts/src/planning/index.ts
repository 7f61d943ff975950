export * from './service-plan.dto.js';
export * from './service-record.dto.js';
export * from './due-services.dto.js';
export * from './costs.dto.js';
export * from './keeping.dto.js';
