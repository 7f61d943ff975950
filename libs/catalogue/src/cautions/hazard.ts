import type { Evidence } from '../evidence/evidence-tag.js';

/** What can hurt somebody, or the van, during a check. */
export const hazards = [
  'petrolVapour',
  'solventOnRunningEngine',
  'fuelVapourLines',
  'exhaustGas',
  'runningEngine',
  'hotParts',
  'hotPressureCap',
  'ignitionHighVoltage',
  'springLoadedPlate',
  'vehicleMovement',
  'vehicleRaised',
  'cranking',
  'batteryGas',
  'brakeDust',
  'wheelOff',
  'roadTest',
  'chemicals',
] as const;
export type Hazard = (typeof hazards)[number];

/** A warning that travels with the step it belongs to. */
export interface Caution {
  readonly id: string;
  readonly hazard: Hazard;
  readonly text: string;
  readonly source: Evidence;
}
