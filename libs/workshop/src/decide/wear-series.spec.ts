import fc from 'fast-check';
import { wearFindings, type MeasuredSet, type ReadingDoubt } from './wear-series.js';

/** Dial of 15 um whole-range error and 10 um steps, 15 um set-up, 20 um repeatability, all in mm. */
const doubt: ReadingDoubt = {
  repeat: 0.02,
  setUp: Math.hypot(0.015, 0.01 / Math.sqrt(12)),
  bias: 0.015 / Math.sqrt(3),
};
const characteristic = {
  characteristicId: 'shaft-radial-play-lower',
  unit: 'mm',
  direction: 'up',
  unwornSize: 0,
  criterionSize: 0.2,
} as const;
const set = (
  km: number | null,
  values: readonly number[],
  change: Partial<MeasuredSet> = {},
): MeasuredSet => ({
  km,
  instrument: 'dial-1',
  values,
  doubt,
  verdict: 'undecided',
  isContradictory: false,
  evidence: [`reading:${String(km)}`],
  ...change,
});
const offer = { count: 3, minutes: 6, usualDoubt: null, wereOffered: false };

describe('wear of one part from its as-found readings', () => {
  it('by hand: three readings have the mean 0.14 and 20/sqrt(3), 15, 2.9 and 8.7 um combine to 21.0 um', () => {
    const { wearNow } = wearFindings([set(1000, [0.12, 0.14, 0.16])], characteristic, null);
    expect(wearNow).toMatchObject({ kind: 'measured', count: 3, verdict: 'undecided' });
    if (wearNow.kind !== 'measured') return;
    expect(wearNow.value).toBeCloseTo(0.14, 12);
    expect(wearNow.standardUncertainty).toBeCloseTo(0.02102, 4);
  });

  it('a further set shares the bias of the instrument with the first, so only repeats and set-up count: 19.2 um', () => {
    const { furtherReadings } = wearFindings([set(1000, [0.14])], characteristic, offer);
    expect(furtherReadings).toMatchObject({ kind: 'available', count: 3, labourHours: 0.1 });
    if (furtherReadings.kind !== 'available') return;
    expect(furtherReadings.standardUncertainty).toBeCloseTo(0.01915, 4);
  });

  it('takes wear now from the latest set and says what a rate still needs', () => {
    const { wearNow, wearRate } = wearFindings([set(1000, [0.1]), set(40_000, [0.15])], characteristic, null);
    expect(wearNow).toMatchObject({ value: 0.15, evidence: ['reading:40000'] });
    expect(wearRate).toEqual({ kind: 'insufficientData', needed: 3, got: 2 });
  });

  it('draws a rate through three distances that lie farther apart than their doubt', () => {
    const history = [
      set(20_000, [0.05, 0.05, 0.05]),
      set(70_000, [0.1, 0.1, 0.1]),
      set(120_000, [0.15, 0.15, 0.15]),
    ];
    const { wearRate, points } = wearFindings(history, characteristic, null);
    expect(points).toBe(3);
    expect(wearRate.kind).toBe('estimated');
    if (wearRate.kind !== 'estimated') return;
    // 0.10 mm in 100,000 km is 0.001 mm per 1000 km.
    expect(Math.abs(wearRate.perThousandKm - 0.001)).toBeLessThan(wearRate.standardError);
    expect(wearRate.evidence).toEqual(['reading:20000', 'reading:70000']);
  });

  it('points that differ by less than their doubt are no rate', () => {
    const history = [20_000, 70_000, 120_000].map((km) => set(km, [0.1, 0.1, 0.1]));
    expect(wearFindings(history, characteristic, null).wearRate).toEqual({
      kind: 'insufficientData',
      needed: 4,
      got: 3,
    });
  });

  it('readings without known uncertainty, or without distance, are left out and never taken for exact', () => {
    const unknown = wearFindings([set(1000, [0.3], { doubt: null })], characteristic, offer);
    expect(unknown.wearNow).toEqual({ kind: 'notMeasured' });
    expect(unknown.leftOut).toBe('uncertaintyUnknown');
    expect(unknown.furtherReadings).toEqual({ kind: 'notAvailable' });
    expect(wearFindings([set(null, [0.3])], characteristic, null)).toMatchObject({
      points: 0,
      wearNow: { kind: 'measured' },
    });
    expect(wearFindings([], characteristic, null)).toMatchObject({
      wearNow: { kind: 'notMeasured' },
      leftOut: 'noReadings',
    });
  });

  it('contradictory readings are told as such', () => {
    const { wearNow } = wearFindings([set(1, [0.1], { isContradictory: true })], characteristic, null);
    expect(wearNow).toEqual({ kind: 'contradictory', evidence: ['reading:1'] });
  });

  it('the order in which repeats were taken changes no digit', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 400 }), { minLength: 1, maxLength: 8 }),
        fc.integer(),
        (hundredths, turn) => {
          const values = hundredths.map((value) => value / 1000);
          const at = Math.abs(turn) % values.length;
          const turned = [...values.slice(at), ...values.slice(0, at)];
          expect(wearFindings([set(1, turned)], characteristic, null)).toEqual(
            wearFindings([set(1, values)], characteristic, null),
          );
        },
      ),
      { seed: 14, numRuns: 100 },
    );
  });
});
