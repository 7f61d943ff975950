import type { Hazard } from './hazard.js';

/** Hazards that follow from the state the van must be in, whatever the author of the sheet remembered. */
const byState: Readonly<Record<string, readonly Hazard[]>> = {
  idling: ['exhaustGas', 'runningEngine', 'vehicleMovement'],
  raisedIdle: ['exhaustGas', 'runningEngine', 'vehicleMovement'],
  engineHot: ['hotParts'],
  vehicleRaised: ['vehicleRaised'],
  wheelOff: ['wheelOff'],
  cranking: ['cranking', 'ignitionHighVoltage', 'vehicleMovement'],
  coolingSystemOpen: ['hotPressureCap'],
  driving: ['roadTest'],
};

const byInstrument: Readonly<Record<string, readonly Hazard[]>> = {
  smokeGenerator: ['fuelVapourLines'],
  liningGauge: ['brakeDust'],
  strobeLamp: ['ignitionHighVoltage', 'runningEngine'],
  brakeTester: ['vehicleMovement'],
};

/**
 * Hazards of a check: those its author named, and those that follow from its states and its instrument.
 *
 * @param check  named hazards, required states and instrument kind; unknown words imply nothing
 * @returns each hazard once, named ones first
 * @example impliedHazards({ hazards: [], requiredStates: ['driving'], instrumentKind: 'none' }) // => ['roadTest']
 */
export function impliedHazards(check: {
  readonly hazards: readonly Hazard[];
  readonly requiredStates: readonly string[];
  readonly instrumentKind: string;
}): readonly Hazard[] {
  const implied = [
    ...check.requiredStates.flatMap((state) => byState[state] ?? []),
    ...(byInstrument[check.instrumentKind] ?? []),
  ];
  return [...new Set([...check.hazards, ...implied])];
}
