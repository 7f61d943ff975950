import type { ApplicabilityRule } from '@endfloat/metrology';
import { maximum, printed, quantity } from '../define-limit.js';
import type { PublishedLimit } from './published-limit.js';
import { definePublishedLimit, noneOf, oneOf } from './published-limit.js';

const pressure = (from: string, upTo: string): ApplicabilityRule => ({
  kind: 'range',
  quantityKind: 'gaugePressure',
  from: quantity(from, '[psi]'),
  upTo: quantity(upTo, '[psi]'),
});

const air = oneOf('airDisc', 'airDrum');
const subject = {
  item: 'pushrod stroke',
  quantity: 'stroke',
  component: 'wheel-brake',
  characteristic: 'pushrod-stroke',
  kind: 'length',
} as const;

const roadside = (type: string, inches: string, fraction: string, millimetres: string): PublishedLimit =>
  definePublishedLimit({
    ...subject,
    id: `stroke-us-type-${type}`,
    jurisdiction: 'north-america-roadside',
    unit: 'in',
    asWritten: `${fraction} in (${millimetres} mm)`,
    cite: 'Commercial Vehicle Safety Alliance, brake safety guidance',
    origin: 'published',
    where: { brakeType: air, actuatorType: oneOf(`clamp-${type}`) },
    conditions: { reservoirPressure: pressure('90', '100'), brakes: oneOf('fullyApplied') },
    conditionsAsWritten: 'reservoir 90-100 psi, brakes fully applied',
    conflictGroup: 'stroke-test-pressure',
    parts: [{ criterion: maximum(printed(inches, '[in_i]', quantity(millimetres, 'mm'))) }],
  });

const federal = (type: string, inches: string, fraction: string, note?: string): PublishedLimit =>
  definePublishedLimit({
    ...subject,
    id: `stroke-us-type-${type}`,
    jurisdiction: 'us-federal',
    unit: 'in',
    asWritten: `${fraction} in`,
    cite: '49 CFR 393.47(e)',
    origin: 'memory',
    verify: true,
    where: { brakeType: air, actuatorType: oneOf(`clamp-${type}`) },
    conditions: {
      engine: oneOf('off'),
      reservoirPressure: pressure('80', '90'),
      brakes: oneOf('fullyApplied'),
    },
    conditionsAsWritten: 'engine off, reservoir 80-90 psi, brakes fully applied',
    ...(note === undefined ? {} : { note }),
    parts: [{ criterion: maximum(printed(inches, '[in_i]')) }],
  });

/** Pushrod stroke of clamp-type air brake actuators; the test pressure is part of the limit. */
export const pushrodStrokeLimits: readonly PublishedLimit[] = [
  roadside('6', '1.25', '1 1/4', '32'),
  roadside('9', '1.375', '1 3/8', '35'),
  roadside('20-long', '2', '2', '51'),
  federal('12', '1.375', '1 3/8'),
  federal('16', '1.75', '1 3/4'),
  federal('20', '1.75', '1 3/4'),
  federal('30', '2', '2'),
  federal('30-long', '2.5', '2 1/2'),
  federal('36', '2.25', '2 1/4'),
  federal(
    '24',
    '1.75',
    '1 3/4',
    '1 7/8 in is also remembered for this type; do not judge by it before the table has been read.',
  ),
  definePublishedLimit({
    ...subject,
    id: 'stroke-us-unlisted',
    jurisdiction: 'us-federal-periodic-inspection',
    unit: 'fraction of rated stroke',
    asWritten: '80 percent of the rated stroke marked on the actuator, or the limit marked by its maker',
    cite: 'Appendix A to 49 CFR Part 396, 1.a(5)(b)',
    origin: 'published',
    where: {
      brakeType: air,
      actuatorType: noneOf(
        ...['6', '9', '12', '16', '20', '20-long', '24', '30', '30-long', '36'].map(
          (type) => `clamp-${type}`,
        ),
      ),
    },
    conditions: {
      engine: oneOf('off'),
      reservoirPressure: pressure('80', '90'),
      brakes: oneOf('fullyApplied'),
    },
    conditionsAsWritten: 'engine off, reservoir 80-90 psi, brakes fully applied',
    severityAsWritten: 'does not pass inspection',
    conflictGroup: 'stroke-test-pressure',
    parts: [
      {
        criterion: {
          kind: 'formula',
          form: 'factorTimesMakerValue',
          factor: '0.8',
          makerValueKey: 'ratedStroke',
          isAbsolute: false,
          side: 'maximum',
          comparator: 'atMost',
        },
      },
    ],
  }),
];
