import type { LimitCriterion, OutsideTable, TabulatedRow } from '@endfloat/metrology';
import { printed, quantity } from '../define-limit.js';
import type { PublishedLimit } from './published-limit.js';
import { definePublishedLimit, oneOf } from './published-limit.js';

type Steering = 'manual' | 'power';

/** Wheel diameter in mm and in, and the permitted lash in mm and in for manual and power steering, as printed. */
const listed = [
  { mm: '406', inches: '16', match: 'upTo', manual: ['51', '2', '2'], power: ['108', '4.25', '4 1/4'] },
  {
    mm: '457',
    inches: '18',
    match: 'equals',
    manual: ['57', '2.25', '2 1/4'],
    power: ['121', '4.75', '4 3/4'],
  },
  { mm: '483', inches: '19', match: 'equals', manual: ['60', '2.375', '2 3/8'], power: ['127', '5', '5'] },
  {
    mm: '508',
    inches: '20',
    match: 'equals',
    manual: ['64', '2.5', '2 1/2'],
    power: ['133', '5.25', '5 1/4'],
  },
  {
    mm: '533',
    inches: '21',
    match: 'equals',
    manual: ['67', '2.625', '2 5/8'],
    power: ['140', '5.5', '5 1/2'],
  },
  {
    mm: '559',
    inches: '22',
    match: 'equals',
    manual: ['70', '2.75', '2 3/4'],
    power: ['146', '5.75', '5 3/4'],
  },
] as const;

const rowOf = (entry: (typeof listed)[number], steering: Steering): TabulatedRow => ({
  match: entry.match,
  key: printed(entry.mm, 'mm', quantity(entry.inches, '[in_i]')),
  value: printed(entry[steering][0], 'mm', quantity(entry[steering][1], '[in_i]')),
});

const table = (rows: readonly TabulatedRow[], outside: OutsideTable): LimitCriterion => ({
  kind: 'tabulated',
  by: 'wheelDiameter',
  byKind: 'length',
  side: 'maximum',
  comparator: 'atMost',
  rows,
  outside,
});

const lash = (
  id: string,
  steering: Steering,
  asWritten: string,
  cite: string,
  quantityName: string,
  note: string,
  criterion: LimitCriterion,
) =>
  definePublishedLimit({
    id,
    item: 'steering wheel',
    quantity: quantityName,
    component: 'steering',
    characteristic: 'steering-wheel-lash',
    kind: 'length',
    jurisdiction: 'us-federal',
    unit: quantityName === 'lash at the rim' ? 'mm (in)' : 'degree',
    asWritten,
    cite,
    origin: 'published',
    edition: { text: '53 FR 49402, 7 Dec 1988, as amended at 70 FR 48055, 15 Aug 2005' },
    where: { scope: oneOf('commercialMotorVehicle'), steeringType: oneOf(steering) },
    conditions: { wheels: oneOf('straightAhead') },
    conditionsAsWritten: 'wheels straight ahead',
    conflictGroup: 'steering-lash',
    note,
    parts: [{ criterion }],
  });

const listedLimits = listed.flatMap((entry) =>
  (['manual', 'power'] as const).map((steering) =>
    lash(
      `lash-us-cmv-${entry.inches}in-${steering}`,
      steering,
      `${entry[steering][0]} mm (${entry[steering][2]} inches)`,
      '49 CFR 393.209(b)(1)',
      'lash at the rim',
      'Millimetre and inch figures are both printed and differ by rounding; compare in the unit the reading was taken in.',
      table([rowOf(entry, steering)], { kind: 'none' }),
    ),
  ),
);

const angleLimits = (
  [
    ['manual', '14'],
    ['power', '30'],
  ] as const
).map(([steering, degrees]) =>
  lash(
    `lash-us-cmv-angle-${steering}`,
    steering,
    `${degrees} degrees angular rotation`,
    '49 CFR 393.209(b)(1) and (2)',
    'lash, angular rotation',
    "The '406 mm or less' row covers every smaller wheel, so the angle rule applies only between and above the listed diameters; this limit holds the listed rows too.",
    table(
      listed.map((entry) => rowOf(entry, steering)),
      { kind: 'angleAtRim', angle: quantity(degrees, 'deg') },
    ),
  ),
);

/** Steering wheel lash, 49 CFR 393.209(b): one limit for each listed row, and one for each kind of steering with all rows and the angle rule. */
export const steeringLashFederalLimits: readonly PublishedLimit[] = [...listedLimits, ...angleLimits];
