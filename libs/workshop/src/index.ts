export * from './ports/index.js';
export type { AddedRecord } from './recording/add-record.js';
export { exactly, type ExpectedRevision } from './recording/correct-record.js';

export * from './shop/open-shop.use-case.js';
export * from './shop/change-settings.use-case.js';
export * from './shop/manage-people.use-case.js';
export * from './shop/manage-customers.use-case.js';
export * from './intake/record-vehicle.use-case.js';
export * from './intake/find-vehicles.use-case.js';
export * from './intake/transfer-vehicle.use-case.js';
export * from './intake/fitted-parts.use-case.js';
export * from './fleet/import-fleet-history.use-case.js';
export * from './fleet/show-fleet-recurrence.use-case.js';

/** Texts for people, made from stable codes at the edge. */
export { renderText } from '@endfloat/catalogue';
export * from './intake/begin-odometer-segment.use-case.js';
export * from './intake/odometer.use-case.js';
export * from './jobs/take-complaint.use-case.js';
export * from './jobs/open-job.use-case.js';
export * from './jobs/work-lines.use-case.js';
export * from './jobs/estimates.use-case.js';
export * from './jobs/record-proof.use-case.js';
export * from './jobs/release-job.use-case.js';
export * from './jobs/required-proof.js';
export * from './comeback/settle-comeback.use-case.js';
export * from './comeback/close-watch-windows.use-case.js';
export { odometerSegmentCauses, odometerUnits } from '@endfloat/wear';
export type { ComebackRecord } from './comeback/propose-comebacks.js';
export * from './decide/offers.use-case.js';
export * from './decide/deliveries.use-case.js';
