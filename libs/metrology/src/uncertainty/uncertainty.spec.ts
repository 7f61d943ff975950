import fc from 'fast-check';
import type { InstrumentErrorModel } from '../instruments/instrument.js';
import type { Quantity } from '../quantities/quantity.js';
import { combineUncertainty } from './combine-uncertainty.js';
import { expandedUncertainty } from './expanded-uncertainty.js';
import { poolStandardDeviations } from './pool-standard-deviations.js';
import { rectangularUncertainty } from './standard-uncertainty.js';
import type { KnownUncertainty } from './uncertainty-budget.js';
import type { UncertaintyOfMeanInput } from './uncertainty-of-mean.js';
import { uncertaintyOfMean } from './uncertainty-of-mean.js';

const seed = { seed: 20260504, numRuns: 200 };
const mm = (value: string): Quantity => ({ value, unit: 'mm' });
const dial: InstrumentErrorModel = { kind: 'maximumPermissibleError', limit: { value: '15', unit: 'um' } };

/** Shaft play by a 0.01 mm dial on a magnetic base, hand load: 15 um error limit, set-up 15 um, repeatability 20 um. */
const shaftPlay = (readings: readonly string[]): UncertaintyOfMeanInput => ({
  readings: readings.map(mm),
  quantityKind: 'length',
  instrument: { errorModel: dial, resolution: mm('0.01') },
  setUp: { standardUncertainty: mm('0.015'), degreesOfFreedom: 'infinite' },
  priorRepeatability: { standardUncertainty: mm('0.020'), degreesOfFreedom: 'infinite' },
});

function known(input: UncertaintyOfMeanInput): KnownUncertainty {
  const budget = uncertaintyOfMean(input);
  if (budget.kind !== 'known') throw new Error(`missing ${budget.missing.join()}`);
  return budget;
}

describe('budget of a shaft-play reading (worked by hand, factor 2)', () => {
  it('is 26.6 um for one reading, so U = 0.053 mm: sqrt(8.66^2 + 2.89^2 + 15^2 + 20^2)', () => {
    const budget = known(shaftPlay(['0.18']));
    expect(budget.standardUncertainty).toBeCloseTo(0.0266, 4);
    const { expanded } = expandedUncertainty(budget.standardUncertainty, 'infinite', {
      kind: 'factor',
      factor: 2,
    });
    expect(expanded).toBeCloseTo(0.053, 3);
  });

  it('is U = 0.042 mm for the mean of three, because only the repeatability averages out', () => {
    expect(2 * known(shaftPlay(['0.18', '0.18', '0.18'])).standardUncertainty).toBeCloseTo(0.042, 3);
  });

  it('sets clear pass and fail about a limit of 0.10 mm at 0.047 and 0.153 for one, 0.058 and 0.142 for three', () => {
    const one = 2 * known(shaftPlay(['0.10'])).standardUncertainty;
    const three = 2 * known(shaftPlay(['0.10', '0.10', '0.10'])).standardUncertainty;
    expect([0.1 - one, 0.1 + one, 0.1 - three, 0.1 + three].map((edge) => edge.toFixed(3))).toEqual([
      '0.047',
      '0.153',
      '0.058',
      '0.142',
    ]);
  });
});

describe('budget of "no vacuum at the purge port" (worked by hand, factor 2, limit 3.386 kPa)', () => {
  const gauges: readonly [
    classError: string,
    step: string,
    flicker: number,
    expanded: number,
    pass: number,
    fail: number,
  ][] = [
    ['1.0', '1', 0.5, 1.4, 2.0, 4.8],
    ['1.6', '1', 0.5, 2.0, 1.4, 5.4],
    ['2.5', '1', 0.5, 3.0, 0.4, 6.4],
    ['0.25', '0.2', 0.3, 0.5, 2.9, 3.9],
    ['0.08', '0.1', 0.2, 0.3, 3.1, 3.6],
  ];

  it.each(gauges)(
    'class error %s kPa, step %s kPa, flicker %d kPa: U = %d kPa',
    (error, step, flicker, expanded, pass, fail) => {
      const budget = known({
        readings: [{ value: '1', unit: 'kPa' }],
        quantityKind: 'vacuum',
        instrument: {
          errorModel: { kind: 'maximumPermissibleError', limit: { value: error, unit: 'kPa' } },
          resolution: { value: step, unit: 'kPa' },
        },
        setUp: {
          standardUncertainty: { value: rectangularUncertainty(flicker).toFixed(12), unit: 'kPa' },
          degreesOfFreedom: 'infinite',
        },
        priorRepeatability: {
          standardUncertainty: { value: '0', unit: 'kPa' },
          degreesOfFreedom: 'infinite',
        },
      });
      const wide = 2 * budget.standardUncertainty;
      expect(Number(wide.toFixed(1))).toBe(expanded);
      expect(Number((3.386 - wide).toFixed(1))).toBe(pass);
      expect(Number((3.386 + wide).toFixed(1))).toBe(fail);
    },
  );
});

describe('budget of setting a switch with a 0.07 mm blade (worked by hand)', () => {
  it('is U = 0.021 mm: blade 5 um rectangular and seating 10 um', () => {
    const { standardUncertainty } = combineUncertainty([
      {
        source: 'instrument',
        standardUncertainty: rectangularUncertainty(0.005),
        degreesOfFreedom: 'infinite',
      },
      { source: 'setUp', standardUncertainty: 0.01, degreesOfFreedom: 'infinite' },
    ]);
    expect(2 * standardUncertainty).toBeCloseTo(0.021, 3);
  });
});

describe('uncertainty of a mean', () => {
  it('pools its own scatter with the one known before: by hand, 1 um with 2 and 4 um with 6 degrees give 3.5 um with 8', () => {
    const budget = known({
      ...shaftPlay(['0.179', '0.180', '0.181']),
      priorRepeatability: { standardUncertainty: mm('0.004'), degreesOfFreedom: 6 },
    });
    // sqrt((2 x 1 + 6 x 16) / 8) = sqrt(12.25) = 3.5
    expect(budget.repeatability?.standardDeviation).toBeCloseTo(0.0035, 9);
    expect(budget.repeatability).toMatchObject({ degreesOfFreedom: 8, count: 3 });
  });

  it('has few degrees of freedom where its own scatter dominates, and many where it does not', () => {
    const wild = known({ ...shaftPlay(['0.10', '0.20', '0.30']), priorRepeatability: null });
    expect(wild.effectiveDegreesOfFreedom).toBeGreaterThan(2);
    expect(wild.effectiveDegreesOfFreedom).toBeLessThan(3);
    const calm = known({ ...shaftPlay(['0.199', '0.200', '0.201']), priorRepeatability: null });
    expect(calm.effectiveDegreesOfFreedom).toBeGreaterThan(1000);
  });

  it('says what is missing and assumes nothing', () => {
    const input = shaftPlay(['0.18']);
    const missing = (changes: Partial<UncertaintyOfMeanInput>): unknown =>
      uncertaintyOfMean({ ...input, ...changes });
    expect(missing({ priorRepeatability: null })).toEqual({ kind: 'unknown', missing: ['repeatability'] });
    expect(missing({ setUp: null })).toEqual({ kind: 'unknown', missing: ['setUp'] });
    expect(missing({ instrument: { errorModel: { kind: 'unknown' }, resolution: null } })).toEqual({
      kind: 'unknown',
      missing: ['instrument', 'resolution'],
    });
  });

  it('does not depend on the order of the readings, nor on the unit they are written in', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 2, maxLength: 8 }), (microns) => {
        const millimetres = microns.map((value) => (value / 1000).toFixed(3));
        const budget = known(shaftPlay(millimetres));
        const turned = known(shaftPlay([...millimetres].reverse()));
        const inMicrons = known({
          ...shaftPlay(millimetres),
          readings: microns.map((value): Quantity => ({ value: String(value), unit: 'um' })),
        });
        expect(turned).toEqual(budget);
        expect(inMicrons).toEqual(budget);
      }),
      seed,
    );
  });

  it('only ever shrinks with further readings of the same scatter, and never below what does not average', () => {
    const at = (count: number): number =>
      known(shaftPlay(Array.from({ length: count }, () => '0.18'))).standardUncertainty;
    const floor = Math.hypot(0.015 / Math.sqrt(3), 0.01 / Math.sqrt(12), 0.015);
    for (let count = 1; count < 20; count++) {
      expect(at(count + 1)).toBeLessThan(at(count));
      expect(at(count)).toBeGreaterThan(floor);
    }
  });

  it('refuses no readings', () => {
    expect(() => uncertaintyOfMean({ ...shaftPlay([]) })).toThrow(RangeError);
  });
});

describe('combining', () => {
  const component = fc.record({
    source: fc.constant('other' as const),
    standardUncertainty: fc.double({ min: 0.001, max: 100, noNaN: true }),
    degreesOfFreedom: fc.oneof(fc.constant('infinite' as const), fc.integer({ min: 1, max: 100 })),
  });

  it('gives shares that sum to one and degrees of freedom between the least of the parts and their sum', () => {
    fc.assert(
      fc.property(fc.array(component, { minLength: 1, maxLength: 6 }), (components) => {
        const { contributions, effectiveDegreesOfFreedom, standardUncertainty } =
          combineUncertainty(components);
        expect(contributions.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
        expect(standardUncertainty).toBeGreaterThanOrEqual(
          Math.max(...components.map((part) => part.standardUncertainty)) * (1 - 1e-12),
        );
        const finite = components
          .map(({ degreesOfFreedom }) => degreesOfFreedom)
          .filter((degrees) => degrees !== 'infinite');
        if (finite.length === 0) expect(effectiveDegreesOfFreedom).toBe('infinite');
        else expect(effectiveDegreesOfFreedom).toBeGreaterThanOrEqual(Math.min(...finite) * (1 - 1e-9));
      }),
      seed,
    );
  });

  it('refuses nothing but zeros, negative parts and degrees of freedom that are none', () => {
    const part = { source: 'other', standardUncertainty: 1, degreesOfFreedom: 5 } as const;
    expect(() => combineUncertainty([])).toThrow(RangeError);
    expect(() => combineUncertainty([{ ...part, standardUncertainty: 0 }])).toThrow(RangeError);
    expect(() => combineUncertainty([{ ...part, standardUncertainty: -1 }])).toThrow(RangeError);
    expect(() => combineUncertainty([{ ...part, degreesOfFreedom: 0 }])).toThrow(RangeError);
    expect(() => combineUncertainty([{ ...part, sensitivity: Number.NaN }])).toThrow(RangeError);
  });
});

describe('pooling', () => {
  it('takes a known standard deviation alone, and refuses two that differ', () => {
    const knownOne = { standardDeviation: 2, degreesOfFreedom: 'infinite' } as const;
    expect(poolStandardDeviations([knownOne, { standardDeviation: 9, degreesOfFreedom: 3 }])).toEqual(
      knownOne,
    );
    expect(() => poolStandardDeviations([knownOne, { ...knownOne, standardDeviation: 3 }])).toThrow(
      RangeError,
    );
    expect(() => poolStandardDeviations([])).toThrow(RangeError);
  });
});

describe('expanding', () => {
  it('cuts the degrees of freedom to the next lower integer: 4.9 looks up 4, and 0.3 looks up 1', () => {
    const level = { kind: 'level', level: 0.95 } as const;
    expect(expandedUncertainty(1, 4.9, level)).toEqual(expandedUncertainty(1, 4, level));
    // t(0.975; 4) = 2.776 and t(0.975; 1) = 12.706, JCGM 100 table G.2
    expect(expandedUncertainty(1, 4.9, level).coverageFactor).toBeCloseTo(2.776, 3);
    expect(expandedUncertainty(1, 0.3, level).coverageFactor).toBeCloseTo(12.706, 3);
    expect(expandedUncertainty(1, 'infinite', level).coverageFactor).toBeCloseTo(1.96, 3);
  });

  it('refuses a level outside 0 to 1 and an uncertainty of zero', () => {
    expect(() => expandedUncertainty(1, 5, { kind: 'level', level: 1 })).toThrow(RangeError);
    expect(() => expandedUncertainty(0, 5, { kind: 'factor', factor: 2 })).toThrow(RangeError);
    expect(() => expandedUncertainty(1, 5, { kind: 'factor', factor: 0 })).toThrow(RangeError);
    expect(() => expandedUncertainty(1, 0, { kind: 'level', level: 0.95 })).toThrow(RangeError);
  });
});
