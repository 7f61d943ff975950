import type {
  Limit,
  LimitBound,
  LimitCriterion,
  LimitOrigin,
  PrintedValue,
  Quantity,
  UnitCode,
} from '@endfloat/metrology';
import { defaultThresholds } from '@endfloat/metrology';

type Given = Pick<Limit, 'id' | 'characteristic' | 'quantityKind' | 'criterion' | 'asWritten'> &
  Partial<Limit>;

/** A limit with the usual entries filled in: no place, no conditions, no exclusions, default thresholds, allowed to judge. */
export function defineLimit(given: Given): Limit {
  return {
    advisory: null,
    severity: 'notClassed',
    jurisdiction: null,
    applicability: {},
    conditions: {},
    exclusions: [],
    correction: null,
    edition: { validFrom: null, validTo: null, source: 'shipped with the catalogue', citation: 'no source' },
    origin: 'judgement',
    judging: 'allowed',
    thresholds: defaultThresholds,
    note: null,
    ...given,
  };
}

/** Edition of a limit that has no published text behind it. */
export const unsourced = (
  origin: Extract<LimitOrigin, 'judgement' | 'commonPractice'>,
): Limit['edition'] => ({
  validFrom: null,
  validTo: null,
  source: 'shipped with the catalogue',
  citation: origin === 'judgement' ? 'judgement, no source' : 'common practice, no source',
});

export const quantity = (value: string, unit: UnitCode): Quantity => ({ value, unit });

export const printed = (value: string, unit: UnitCode, ...alsoPrinted: readonly Quantity[]): PrintedValue =>
  alsoPrinted.length === 0 ? { value, unit } : { value, unit, alsoPrinted };

export const maximum = (
  value: PrintedValue,
  comparator: LimitBound['comparator'] = 'atMost',
): LimitCriterion => ({
  kind: 'maximum',
  bound: { comparator, value },
});

export const minimum = (
  value: PrintedValue,
  comparator: LimitBound['comparator'] = 'atLeast',
): LimitCriterion => ({
  kind: 'minimum',
  bound: { comparator, value },
});

/** Both edges inclusive. */
export const band = (lower: PrintedValue, upper: PrintedValue): LimitCriterion => ({
  kind: 'band',
  lower: { comparator: 'atLeast', value: lower },
  upper: { comparator: 'atMost', value: upper },
});
