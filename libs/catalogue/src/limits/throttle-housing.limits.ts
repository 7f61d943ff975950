import type { Limit, LimitCriterion, Severity } from '@endfloat/metrology';
import { band, defineLimit, maximum, printed, quantity, unsourced } from './define-limit.js';

const oneOf = (...values: readonly string[]) => ({ kind: 'oneOf', values }) as const;

const answer = (
  id: string,
  characteristic: string,
  accepted: 'yes' | 'no',
  severity: Severity,
  asWritten: string,
): Limit =>
  defineLimit({
    id,
    characteristic,
    quantityKind: null,
    criterion: { kind: 'yesNo', accepted },
    severity,
    origin: 'commonPractice',
    edition: unsourced('commonPractice'),
    asWritten,
  });

const radialPlay = (
  end: 'lower' | 'upper',
  which: 'advisory' | 'wear',
  value: string,
  severity: Severity,
): Limit =>
  defineLimit({
    id: `shaft-radial-play-${end}-${which}`,
    characteristic: `shaft-radial-play-${end}`,
    quantityKind: 'length',
    criterion: maximum(printed(value, 'mm')),
    severity,
    edition: unsourced('judgement'),
    asWritten: which === 'advisory' ? 'advisory above 0.10 mm' : 're-bush or replace above 0.20 mm',
    note: 'No published number is known; the functional criterion decides, a number is the shop’s own.',
  });

const measuredLimit = (
  id: string,
  characteristic: string,
  quantityKind: NonNullable<Limit['quantityKind']>,
  criterion: LimitCriterion,
  rest: Pick<Limit, 'asWritten'> & Partial<Limit>,
): Limit => defineLimit({ id, characteristic, quantityKind, criterion, ...rest });

/** Default limits of the throttle-housing sheet by id of the limit; any vehicle type may replace any of them. */
export const throttleHousingLimits = {
  linkageReturns: answer(
    'linkage-returns-every-time',
    'linkage-returns',
    'yes',
    'dangerous',
    'returns to the stop every time',
  ),
  linkageFreePlay: answer(
    'linkage-free-play-at-rest',
    'linkage-free-play',
    'yes',
    'minor',
    'cable has free play at rest',
  ),
  shaftMovesSwitch: answer(
    'shaft-must-not-move-switch',
    'shaft-moves-switch',
    'no',
    'major',
    'moving the shaft by hand must not open and close the idle switch',
  ),
  radialLowerAdvisory: radialPlay('lower', 'advisory', '0.10', 'advisory'),
  radialLowerWear: radialPlay('lower', 'wear', '0.20', 'major'),
  radialUpperAdvisory: radialPlay('upper', 'advisory', '0.10', 'advisory'),
  radialUpperWear: radialPlay('upper', 'wear', '0.20', 'major'),
  axial: measuredLimit(
    'shaft-axial-play-band',
    'shaft-axial-play',
    'length',
    band(printed('0.05', 'mm'), printed('0.30', 'mm')),
    {
      severity: 'advisory',
      edition: unsourced('judgement'),
      asWritten: '0.05 to 0.30 mm, advisory only',
    },
  ),
  purgePortIdle: measuredLimit(
    'purge-port-vacuum-idle-max',
    'purge-port-vacuum-idle',
    'vacuum',
    maximum(printed('1', "[in_i'Hg]")),
    {
      severity: 'minor',
      origin: 'commonPractice',
      edition: unsourced('commonPractice'),
      conditions: {
        engineState: oneOf('hotIdling'),
        airConditioning: oneOf('off'),
        electricalLoads: oneOf('off'),
        radiatorFan: oneOf('hasCycled'),
        purgeHose: oneOf('offAndPlugged'),
      },
      asWritten: 'nominal 0, accepted at most 1 inHg',
    },
  ),
  purgePortOffIdle: answer(
    'purge-port-vacuum-appears',
    'purge-port-vacuum-off-idle',
    'yes',
    'minor',
    'vacuum must appear just off idle',
  ),
  stopScrewPaper: answer(
    'stop-screw-grips-paper',
    'stop-screw-grips-paper',
    'yes',
    'minor',
    'just grips a strip of paper',
  ),
  switchClosingPoint: measuredLimit(
    'idle-switch-closing-point-window',
    'idle-switch-closing-point',
    'length',
    { kind: 'pair', lower: quantity('0.05', 'mm'), upper: quantity('0.10', 'mm') },
    {
      severity: 'minor',
      origin: 'commonPractice',
      edition: unsourced('commonPractice'),
      conditions: { engineState: oneOf('off'), bladePlace: oneOf('betweenStopAndLever') },
      asWritten: 'between 0.05 mm and 0.10 mm, set with a 0.07 mm blade',
      note: 'Windows of several tenths of a millimetre, or measured at the plate edge, exist on other applications.',
    },
  ),
  switchResistanceClosed: measuredLimit(
    'idle-switch-resistance-closed-max',
    'idle-switch-resistance-closed',
    'resistance',
    maximum(printed('2', 'Ohm')),
    {
      severity: 'minor',
      edition: unsourced('judgement'),
      asWritten: 'suspect above 2 ohm after subtracting the leads',
    },
  ),
  switchOpenOverRange: answer(
    'idle-switch-open-over-range',
    'idle-switch-open-over-range',
    'yes',
    'minor',
    'over-range on the 200 ohm range',
  ),
  switchClicks: answer(
    'idle-switch-clicks-every-time',
    'idle-switch-clicks',
    'yes',
    'minor',
    'clicks open just off idle and closes again, every time',
  ),
  fullLoadContact: answer(
    'full-load-contact-closes',
    'full-load-contact',
    'yes',
    'minor',
    'closes near full throttle',
  ),
  hosesAndCodes: answer(
    'hoses-and-codes-in-order',
    'hoses-and-codes-in-order',
    'yes',
    'minor',
    'hoses, wiring and stored codes in order',
  ),
  fuelLeak: answer('no-fuel-leak', 'fuel-leak', 'no', 'dangerous', 'no fuel leak'),
  brakeServoHose: answer(
    'no-brake-servo-hose-leak',
    'brake-servo-hose-leak',
    'no',
    'dangerous',
    'brake servo hose does not leak',
  ),
  intakeLeak: answer('no-intake-leak', 'intake-leak', 'no', 'minor', 'no tracer seen outside'),
  purgePinch: answer(
    'purge-pinch-no-change',
    'purge-pinch-changes-idle',
    'no',
    'minor',
    'no clear change of idle',
  ),
  idleAirValve: answer(
    'idle-air-valve-reacts',
    'idle-air-valve-reacts',
    'yes',
    'minor',
    'speed changes when unplugged and comes back',
  ),
  coolantSensor: measuredLimit(
    'coolant-sensor-difference-band',
    'coolant-sensor-difference',
    'temperatureDifference',
    band(printed('-5', 'K'), printed('5', 'K')),
    {
      severity: 'minor',
      edition: unsourced('judgement'),
      asWritten: 'within 5 degrees of the thermometer, cold and hot',
    },
  ),
} as const satisfies Readonly<Record<string, Limit>>;
