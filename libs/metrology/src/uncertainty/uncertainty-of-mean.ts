import { instrumentUncertainty } from '../instruments/instrument-uncertainty.js';
import type { DegreesOfFreedom, InstrumentProperties } from '../instruments/instrument.js';
import { canonicalNumber, canonicalStep } from '../quantities/canonical-number.js';
import type { Quantity } from '../quantities/quantity.js';
import type { QuantityKind } from '../quantities/quantity-kind.js';
import { quantityKindTable } from '../quantities/quantity-kind.js';
import { combineUncertainty } from './combine-uncertainty.js';
import type { Repeatability } from './pool-standard-deviations.js';
import { poolStandardDeviations } from './pool-standard-deviations.js';
import { resolutionUncertainty } from './standard-uncertainty.js';
import type {
  MissingUncertaintyInput,
  UncertaintyBudget,
  UncertaintyComponent,
} from './uncertainty-budget.js';

/** A standard uncertainty with a unit. */
export interface StatedUncertainty {
  readonly standardUncertainty: Quantity;
  readonly degreesOfFreedom: DegreesOfFreedom;
}

/** What the doubt about the mean of an inspection's readings is made of. */
export interface UncertaintyOfMeanInput {
  /** The repeats of one characteristic, one phase, one instrument; at least one. */
  readonly readings: readonly Quantity[];
  readonly quantityKind: QuantityKind;
  readonly instrument: InstrumentProperties;
  /** Mounting, angle, zero: does not average out. A sheet that needs none states zero; null means not known. */
  readonly setUp: StatedUncertainty | null;
  /** Standard deviation of single readings known beforehand (gauge study or sheet); null if none. */
  readonly priorRepeatability: StatedUncertainty | null;
  /** Further independent components that do not average out. */
  readonly others?: readonly StatedUncertainty[];
}

/**
 * Uncertainty budget of the mean of n readings: u^2 = u_instrument^2 + resolution^2 / 12 + u_setUp^2 + s^2 / n,
 * with s the standard deviation (divisor n - 1) of the n readings pooled with the one known beforehand by degrees of
 * freedom. Of the instrument's errors at the readings the largest counts. Equal readings have s = 0.
 *
 * Instrument and set-up have infinite degrees of freedom unless a number is given, because they are stated and not
 * estimated here; the effective ones are by Welch and Satterthwaite. Nothing is assumed for a missing input.
 *
 * @param input  readings and what is known about instrument, set-up and repeatability
 * @returns `known` in the canonical unit of the kind, or `unknown` with the inputs that are missing: `instrument` (error
 *   model unknown), `resolution`, `setUp`, `repeatability` (one reading and nothing known beforehand), `linearScale`
 *   (readings in distance per volume)
 * @throws RangeError on no readings, on a quantity that is none of the kind, or when everything known is zero
 * @source JCGM 100:2008, 5.1.2, F.2.2.1, G.4.1, H.3.6
 * @oracle libs/metrology/src/published-cases
 * @example uncertaintyOfMean({
 *   readings: [{ value: '0.18', unit: 'mm' }], quantityKind: 'length',
 *   instrument: { errorModel: { kind: 'unknown' }, resolution: { value: '0.01', unit: 'mm' } },
 *   setUp: null, priorRepeatability: null,
 * }) // => { kind: 'unknown', missing: ['instrument', 'setUp', 'repeatability'] }
 */
export function uncertaintyOfMean(input: UncertaintyOfMeanInput): UncertaintyBudget {
  const missing = new Set<MissingUncertaintyInput>();
  const fixed = [...instrumentComponents(input, missing), ...statedComponents(input, missing)];
  const repeatability = repeatabilityOf(input, missing);
  if (missing.size > 0 || repeatability === null) return { kind: 'unknown', missing: [...missing] };
  const count = input.readings.length;
  const combined = combineUncertainty([
    ...fixed,
    {
      source: 'repeatability',
      standardUncertainty: repeatability.standardDeviation / Math.sqrt(count),
      degreesOfFreedom: repeatability.degreesOfFreedom,
    },
  ]);
  return {
    kind: 'known',
    unit: quantityKindTable[input.quantityKind].canonical,
    ...combined,
    repeatability: { ...repeatability, count },
    method: 'JCGM 100 root sum of squares, Welch-Satterthwaite',
  };
}

function instrumentComponents(
  { readings, quantityKind, instrument }: UncertaintyOfMeanInput,
  missing: Set<MissingUncertaintyInput>,
): UncertaintyComponent[] {
  const components: UncertaintyComponent[] = [];
  const errors = readings.map((reading) =>
    instrumentUncertainty(instrument.errorModel, reading, quantityKind),
  );
  let largest: UncertaintyComponent | null = null;
  for (const error of errors) {
    if (error.kind === 'unknown') {
      missing.add(error.why === 'scaleNotLinear' ? 'linearScale' : 'instrument');
    } else if (largest === null || error.standardUncertainty > largest.standardUncertainty) {
      largest = {
        source: 'instrument',
        standardUncertainty: error.standardUncertainty,
        degreesOfFreedom: error.degreesOfFreedom,
      };
    }
  }
  if (largest !== null) components.push(largest);
  if (instrument.resolution === null) {
    missing.add('resolution');
    return components;
  }
  const step = canonicalStep(instrument.resolution, quantityKind);
  if (step.kind === 'step') {
    const standardUncertainty = resolutionUncertainty(step.value);
    components.push({ source: 'resolution', standardUncertainty, degreesOfFreedom: 'infinite' });
  } else {
    missing.add('linearScale');
  }
  return components;
}

function statedComponents(
  { setUp, others = [], quantityKind }: UncertaintyOfMeanInput,
  missing: Set<MissingUncertaintyInput>,
): UncertaintyComponent[] {
  if (setUp === null) missing.add('setUp');
  const stated = [
    ...(setUp === null ? [] : [{ source: 'setUp' as const, ...setUp }]),
    ...others.map((other) => ({ source: 'other' as const, ...other })),
  ];
  return stated.flatMap(({ source, standardUncertainty, degreesOfFreedom }) => {
    const step = canonicalStep(standardUncertainty, quantityKind);
    if (step.kind !== 'step') {
      missing.add('linearScale');
      return [];
    }
    return [{ source, standardUncertainty: step.value, degreesOfFreedom }];
  });
}

function repeatabilityOf(
  { readings, quantityKind, priorRepeatability }: UncertaintyOfMeanInput,
  missing: Set<MissingUncertaintyInput>,
): Repeatability | null {
  if (readings.length === 0) throw new RangeError('a mean needs at least one reading');
  const estimates: Repeatability[] = [];
  if (priorRepeatability !== null) {
    const step = canonicalStep(priorRepeatability.standardUncertainty, quantityKind);
    if (step.kind === 'step') {
      estimates.push({
        standardDeviation: step.value,
        degreesOfFreedom: priorRepeatability.degreesOfFreedom,
      });
    } else {
      missing.add('linearScale');
    }
  }
  if (readings.length > 1) {
    // Sorted, so that rounding does not depend on the order in which the readings were taken.
    const values = readings.map((reading) => canonicalNumber(reading, quantityKind)).sort((a, b) => a - b);
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    estimates.push({
      standardDeviation: Math.sqrt(squares / (values.length - 1)),
      degreesOfFreedom: values.length - 1,
    });
  }
  if (estimates.length > 0) return poolStandardDeviations(estimates);
  missing.add('repeatability');
  return null;
}
