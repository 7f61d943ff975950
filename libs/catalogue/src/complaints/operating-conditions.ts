import type { QuantityKind } from '@endfloat/metrology';

/** How a condition is recorded. */
export const conditionKinds = ['choice', 'quantity', 'flag', 'text'] as const;
export type ConditionKind = (typeof conditionKinds)[number];

/** One circumstance in which a complaint shows. */
export interface OperatingCondition {
  readonly id: string;
  readonly label: string;
  readonly kind: ConditionKind;
  /** for a choice */
  readonly choices: readonly string[];
  /** for a quantity */
  readonly quantityKind: QuantityKind | null;
}

const choice = (id: string, label: string, ...choices: readonly string[]): OperatingCondition => ({
  id,
  label,
  kind: 'choice',
  choices,
  quantityKind: null,
});
const amount = (id: string, label: string, quantityKind: QuantityKind): OperatingCondition => ({
  id,
  label,
  kind: 'quantity',
  choices: [],
  quantityKind,
});
const flag = (id: string, label: string): OperatingCondition => ({
  id,
  label,
  kind: 'flag',
  choices: [],
  quantityKind: null,
});
const text = (id: string, label: string): OperatingCondition => ({
  id,
  label,
  kind: 'text',
  choices: [],
  quantityKind: null,
});

/** Fields of the intake, common practice. Every one may stay empty: not asked is not an answer. */
export const operatingConditions: readonly OperatingCondition[] = [
  choice('engineState', 'engine state', 'coldStart', 'warmUp', 'hot', 'hotRestart'),
  amount('ambientTemperature', 'outside temperature', 'temperature'),
  amount('timeSinceStart', 'time since the start', 'duration'),
  amount('idleSpeedSeen', 'idle speed seen', 'rotationalSpeed'),
  choice('airConditioning', 'air-conditioning', 'off', 'on', 'notFitted'),
  choice('electricalLoads', 'other electrical loads', 'off', 'on'),
  choice('powerSteering', 'power steering', 'straight', 'onLock', 'notFitted'),
  text('gearOrSelector', 'gear or selector position'),
  amount('roadSpeed', 'road speed', 'speed'),
  choice('pedal', 'pedal', 'closed', 'justOff', 'lightSteady', 'heavy'),
  amount('fuelLevel', 'fuel level', 'ratio'),
  amount('timeSinceRefuelling', 'time since refuelling', 'duration'),
  amount('altitude', 'altitude', 'length'),
  choice('howOften', 'how often', 'once', 'sometimes', 'often', 'always'),
  choice('onset', 'onset', 'sudden', 'gradual', 'unknown'),
  text('sinceWhichEvent', 'since which event or repair'),
  text('warningLamp', 'warning lamp'),
  text('repairsByOthers', 'repairs by others'),
  choice('stopScrewMovedByOthers', 'has anybody moved the stop screw', 'yes', 'no', 'unknown'),
  flag('canShowNow', 'customer can show it now'),
];
