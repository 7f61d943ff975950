import type { ShippedDiagnosisTables } from './diagnosis-tables-shape.js';

/**
 * Invented starting tables of the throttle-housing job. Status: judgement, all of it. One technician's plausible, untested
 * numbers; something to start from, to be overwritten by the counted outcomes of a shop.
 */
const CAUSES = [
  'shaft-worn',
  'plate-stop-too-far-open',
  'idle-switch-misset-or-faulty',
  'linkage-binding',
  'unmetered-air-leak',
  'idle-air-valve-faulty',
  'coolant-sensor-wrong',
  'base-timing-wrong',
  'purge-faulty-or-misrouted',
  'low-voltage-or-bad-ground',
  'deposits-in-bore',
  'other-cause',
] as const;

const row = (...values: readonly number[]): Readonly<Record<string, number>> =>
  Object.fromEntries(CAUSES.map((cause, i) => [cause, values[i] ?? Number.NaN]));

export const shippedDiagnosisTables: ShippedDiagnosisTables = {
  version: 'shipped-1',
  origin: 'judgement',
  causes: [
    { id: 'shaft-worn', prior: 0.12 },
    { id: 'plate-stop-too-far-open', prior: 0.09 },
    { id: 'idle-switch-misset-or-faulty', prior: 0.12 },
    { id: 'linkage-binding', prior: 0.06 },
    { id: 'unmetered-air-leak', prior: 0.18 },
    { id: 'idle-air-valve-faulty', prior: 0.14 },
    { id: 'coolant-sensor-wrong', prior: 0.07 },
    { id: 'base-timing-wrong', prior: 0.04 },
    { id: 'purge-faulty-or-misrouted', prior: 0.05 },
    { id: 'low-voltage-or-bad-ground', prior: 0.03 },
    { id: 'deposits-in-bore', prior: 0.05 },
    { id: 'other-cause', prior: 0.05 },
  ],
  symptoms: [
    {
      id: 'idle-rises-with-ac',
      presentGivenCause: row(0.45, 0.6, 0.4, 0.15, 0.3, 0.35, 0.1, 0.15, 0.25, 0.3, 0.15, 0.2),
    },
    {
      id: 'idle-hunts-warm',
      presentGivenCause: row(0.6, 0.45, 0.45, 0.15, 0.55, 0.5, 0.3, 0.2, 0.45, 0.3, 0.3, 0.35),
    },
    {
      id: 'idle-high-warm',
      presentGivenCause: row(0.45, 0.6, 0.3, 0.55, 0.5, 0.3, 0.25, 0.3, 0.2, 0.1, 0.1, 0.2),
    },
    {
      id: 'idle-low-or-rough-warm',
      presentGivenCause: row(0.25, 0.1, 0.2, 0.05, 0.45, 0.45, 0.3, 0.45, 0.35, 0.45, 0.45, 0.4),
    },
    {
      id: 'stalls-cold',
      presentGivenCause: row(0.3, 0.15, 0.3, 0.05, 0.45, 0.55, 0.65, 0.3, 0.1, 0.3, 0.5, 0.35),
    },
    {
      id: 'stalls-warm-coming-to-rest',
      presentGivenCause: row(0.3, 0.15, 0.3, 0.05, 0.3, 0.55, 0.2, 0.35, 0.3, 0.35, 0.55, 0.35),
    },
    {
      id: 'bucks-at-light-throttle',
      presentGivenCause: row(0.5, 0.4, 0.6, 0.2, 0.25, 0.05, 0.25, 0.3, 0.35, 0.15, 0.25, 0.4),
    },
    {
      id: 'jerks-at-tip-in',
      presentGivenCause: row(0.35, 0.25, 0.55, 0.45, 0.35, 0.1, 0.35, 0.4, 0.25, 0.15, 0.6, 0.4),
    },
    {
      id: 'slow-return-to-idle',
      presentGivenCause: row(0.35, 0.35, 0.35, 0.75, 0.3, 0.25, 0.1, 0.1, 0.1, 0.05, 0.3, 0.15),
    },
    {
      id: 'no-overrun-fuel-cut-off',
      presentGivenCause: row(0.35, 0.55, 0.75, 0.5, 0.15, 0.05, 0.2, 0.05, 0.05, 0.05, 0.15, 0.15),
    },
  ],
  checks: [
    {
      id: 'visual-hoses-and-codes',
      minutes: 8,
      openingMove: true,
      prerequisites: [],
      positiveGivenCause: row(0.15, 0.1, 0.2, 0.25, 0.45, 0.2, 0.25, 0.05, 0.35, 0.2, 0.3, 0.2),
    },
    {
      id: 'battery-and-charging',
      minutes: 5,
      openingMove: true,
      prerequisites: [],
      positiveGivenCause: row(0.04, 0.04, 0.04, 0.04, 0.04, 0.04, 0.04, 0.04, 0.04, 0.9, 0.04, 0.05),
    },
    {
      id: 'manifold-vacuum',
      minutes: 5,
      openingMove: true,
      prerequisites: [],
      positiveGivenCause: row(0.45, 0.3, 0.1, 0.15, 0.75, 0.15, 0.1, 0.7, 0.15, 0.1, 0.2, 0.35),
    },
    {
      id: 'leak-test',
      minutes: 20,
      openingMove: false,
      prerequisites: [],
      positiveGivenCause: row(0.55, 0.05, 0.04, 0.04, 0.92, 0.06, 0.04, 0.04, 0.2, 0.04, 0.04, 0.08),
    },
    {
      id: 'idle-air-valve-function',
      minutes: 8,
      openingMove: false,
      prerequisites: [],
      positiveGivenCause: row(0.1, 0.15, 0.12, 0.08, 0.1, 0.88, 0.06, 0.06, 0.06, 0.15, 0.12, 0.12),
    },
    {
      id: 'coolant-sensor-compare',
      minutes: 6,
      openingMove: false,
      prerequisites: [],
      positiveGivenCause: row(0.03, 0.03, 0.03, 0.03, 0.03, 0.03, 0.93, 0.03, 0.03, 0.06, 0.03, 0.04),
    },
    {
      id: 'base-timing-strobe',
      minutes: 8,
      openingMove: false,
      prerequisites: [],
      positiveGivenCause: row(0.05, 0.08, 0.12, 0.05, 0.05, 0.05, 0.04, 0.92, 0.04, 0.05, 0.04, 0.08),
    },
    {
      id: 'purge-hose-pinch',
      minutes: 4,
      openingMove: false,
      prerequisites: [],
      positiveGivenCause: row(0.2, 0.45, 0.05, 0.1, 0.08, 0.05, 0.03, 0.03, 0.88, 0.04, 0.05, 0.06),
    },
    {
      id: 'linkage-return',
      minutes: 4,
      openingMove: false,
      prerequisites: [],
      positiveGivenCause: row(0.15, 0.06, 0.04, 0.93, 0.03, 0.03, 0.03, 0.03, 0.03, 0.03, 0.25, 0.03),
    },
    {
      id: 'shaft-play',
      minutes: 12,
      openingMove: false,
      prerequisites: ['linkage-return'],
      positiveGivenCause: row(0.88, 0.08, 0.08, 0.08, 0.06, 0.06, 0.06, 0.06, 0.06, 0.06, 0.08, 0.06),
    },
    {
      id: 'purge-port-vacuum',
      minutes: 5,
      openingMove: false,
      prerequisites: ['linkage-return'],
      positiveGivenCause: row(0.4, 0.92, 0.06, 0.55, 0.05, 0.05, 0.05, 0.05, 0.15, 0.04, 0.05, 0.06),
    },
    {
      id: 'idle-switch-closing-point',
      minutes: 8,
      openingMove: false,
      prerequisites: ['linkage-return', 'shaft-play', 'purge-port-vacuum'],
      positiveGivenCause: row(0.3, 0.25, 0.93, 0.35, 0.04, 0.04, 0.04, 0.04, 0.04, 0.08, 0.1, 0.05),
    },
  ],
};
