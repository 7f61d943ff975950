export { distanceAt, type DistanceAt } from './distance-at.js';
export { distanceBetween, type DistanceBetween } from './distance-between.js';
export { examineOdometerEntry, type ExaminedOdometerEntry } from './examine-odometer-entry.js';
export * from './odometer-segment.js';
export * from './odometer-thresholds.js';
export {
  informationCodes,
  odometerWarningCodes,
  type OdometerProposal,
  type OdometerWarning,
  type OdometerWarningCode,
} from './odometer-warning.js';
export { proposedSegment, type NewDisplay, type ProposedSegment } from './proposed-segment.js';
