export * from './service-plan.use-case.js';
export * from './service-records.use-case.js';
export type { DueService } from './gather-due.js';
export { ListDueServicesUseCase, type DueServiceList } from './list-due-services.use-case.js';
export * from './list-vehicle-outlooks.use-case.js';
export * from './show-costs.use-case.js';
export * from './preview-keeping.use-case.js';
export type { DrivenDistance, VehicleCosts, YearOfCosts } from './vehicle-costs.js';
