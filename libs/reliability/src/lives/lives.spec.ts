import fc from 'fast-check';
import { compareLives } from './compare-lives.js';
import { componentLives } from './component-lives.js';
import { partLife, type PartFacts, type PartLife } from './part-life.js';

const part: PartFacts = {
  fitted: 100,
  removed: null,
  watched: [{ from: 0, until: 1000 }],
  inspections: [],
};
const life = (lower: number, upper: number, entry = 0): PartLife => ({ kind: 'life', lower, upper, entry });
const many = (count: number, each: PartLife): PartLife[] => Array.from({ length: count }, () => each);

describe('the life of one part', () => {
  it('is exact when its removal was watched, and lasts still at the end of watching when it was not removed', () => {
    expect(partLife({ ...part, removed: 350 }, 'replaced')).toEqual(life(250, 250));
    expect(partLife(part, 'replaced')).toEqual(life(900, Infinity));
    expect(partLife({ ...part, removed: 100 }, 'replaced')).toEqual(life(0, 0));
  });

  it('enters late where the part was fitted before its vehicle was watched', () => {
    const late = { ...part, watched: [{ from: 300, until: 1000 }] };
    expect(partLife({ ...late, removed: 700 }, 'replaced')).toEqual(life(600, 600, 200));
    expect(partLife(late, 'replaced')).toEqual(life(900, Infinity, 200));
    // Fitted and removed before anybody watched: parts that lasted longer than this one would have been seen, it was not.
    expect(partLife({ ...late, removed: 250 }, 'replaced')).toEqual({
      kind: 'leftOut',
      why: 'endedUnwatched',
    });
  });

  it('ends in the dark where the vehicle went unseen: lasting still when last watched, whatever came off later', () => {
    const gap = {
      ...part,
      watched: [
        { from: 0, until: 400 },
        { from: 700, until: 1000 },
      ],
    };
    expect(partLife(gap, 'replaced')).toEqual(life(300, Infinity));
    expect(partLife({ ...gap, removed: 800 }, 'replaced')).toEqual(life(300, Infinity));
    expect(partLife({ ...part, watched: [] }, 'replaced')).toEqual({ kind: 'leftOut', why: 'neverWatched' });
  });

  it('lies between the last inspection that found it good and the first that found it worn', () => {
    const inspected = {
      ...part,
      inspections: [
        { at: 600, isWorn: true },
        { at: 200, isWorn: false },
        { at: 450, isWorn: false },
        { at: 50, isWorn: true },
      ],
    };
    // The inspection on day 50 was of the part before.
    expect(partLife(inspected, 'worn')).toEqual(life(350, 500));
    expect(partLife({ ...inspected, removed: 500 }, 'worn')).toEqual(life(350, Infinity));
    expect(partLife({ ...part, inspections: [{ at: 200, isWorn: true }] }, 'worn')).toEqual(life(0, 100));
    expect(partLife(part, 'worn')).toEqual({ kind: 'leftOut', why: 'neverInspected' });
  });

  it('is unknown for a part fitted nobody knows when, and for one removed before it was fitted', () => {
    expect(partLife({ ...part, fitted: null }, 'worn')).toEqual({ kind: 'leftOut', why: 'fittedUnknown' });
    expect(partLife({ ...part, removed: 40 }, 'replaced')).toEqual({
      kind: 'leftOut',
      why: 'removedBeforeFitted',
    });
    expect(() => partLife({ ...part, fitted: Number.NaN }, 'worn')).toThrow(RangeError);
    expect(() => partLife({ ...part, watched: [{ from: 0, until: Infinity }] }, 'replaced')).toThrow(
      RangeError,
    );
  });

  it('never ends before it has entered, and its interval is never turned round', () => {
    const day = fc.integer({ min: 0, max: 300 });
    fc.assert(
      fc.property(
        fc.record({
          fitted: fc.option(day),
          removed: fc.option(day),
          watched: fc
            .tuple(day, fc.nat(100), fc.integer({ min: 1, max: 50 }), fc.nat(100))
            .map(([from, length, gap, more]) => [
              { from, until: from + length },
              { from: from + length + gap, until: from + length + gap + more },
            ]),
          inspections: fc.array(fc.record({ at: day, isWorn: fc.boolean() }), { maxLength: 5 }),
        }),
        fc.constantFrom('replaced', 'worn'),
        (facts, end) => {
          const found = partLife(facts, end);
          if (found.kind === 'leftOut') return;
          expect(found.upper).toBeGreaterThanOrEqual(found.lower);
          expect(found.entry === 0 || found.upper > found.entry).toBe(true);
        },
      ),
      { seed: 30, numRuns: 500 },
    );
  });
});

describe('lives of a kind of part', () => {
  /**
   * Cracked tubes of heat exchangers found at yearly inspections: Meeker & Escobar (1998), Statistical Methods for
   * Reliability Data, example 1.5: 300 tubes, of which 4 cracked in the first year, 5 in the second, 2 in the third; 99, 95
   * and 95 were sound when last seen after one, two and three years.
   */
  const tubes = [
    ...many(4, life(0, 1)),
    ...many(5, life(1, 2)),
    ...many(2, life(2, 3)),
    ...many(99, life(1, Infinity)),
    ...many(95, life(2, Infinity)),
    ...many(95, life(3, Infinity)),
  ];

  it('found at inspections are the published ones: .0133, .0384, .0582 cracked after one, two, three years', () => {
    const { counts, curve, weibull } = componentLives(tubes);
    expect(counts).toEqual({
      parts: 300,
      exact: 0,
      betweenInspections: 11,
      lastingStill: 289,
      lateEntries: 0,
      leftOut: [],
    });
    if (curve.kind !== 'estimated') throw new Error(curve.kind);
    expect(curve.method).toBe('turnbull');
    expect(curve.points.map(({ surviving }) => (1 - surviving).toFixed(4))).toEqual([
      '0.0133',
      '0.0384',
      '0.0582',
    ]);
    // Weibull by maximum likelihood: shape 1.345515, scale 23.61992, B10 4.435301 (2.400439 to 8.195122).
    if (weibull.kind !== 'estimated') throw new Error(weibull.kind);
    expect(weibull.shape?.estimate).toBeCloseTo(1.345515028, 6);
    expect(weibull.scale.estimate).toBeCloseTo(23.6199239, 4);
    const [b10] = weibull.bLives;
    expect([b10?.estimate, b10?.lower, b10?.upper].map((each) => each?.toFixed(4))).toEqual([
      '4.4353',
      '2.4004',
      '8.1951',
    ]);
    expect(weibull.isBeyondData).toBe(true);
  });

  it('by hand: of four parts removed at 2, 4, 4 and one lasting at 5, survive 3/4 past 2 and 1/4 past 4', () => {
    const { curve, greatestAge } = componentLives([life(2, 2), life(4, 4), life(4, 4), life(5, Infinity)]);
    if (curve.kind !== 'estimated') throw new Error(curve.kind);
    expect(curve.points.map(({ age, surviving, atRisk }) => [age, surviving, atRisk])).toEqual([
      [2, 0.75, 4],
      [4, 0.25, 3],
    ]);
    expect(greatestAge).toBe(5);
  });

  it('say what is missing: too few that ended, none at all, or intervals together with late entries', () => {
    const few = componentLives([life(5, 5), life(9, Infinity)]);
    expect(few.weibull).toEqual(expect.objectContaining({ kind: 'insufficientData', needed: 2, got: 1 }));
    expect(few.closer).toBeNull();
    expect(componentLives([life(9, Infinity)]).curve).toEqual({ kind: 'noEvents' });
    const mixed = componentLives([life(2, 5), life(7, 7, 3), life(9, Infinity)]);
    expect([mixed.curve.kind, mixed.weibull.kind]).toEqual(['intervalsWithLateEntry', 'estimated']);
    expect(() => componentLives([], { grain: 0 })).toThrow(RangeError);
    expect(() => componentLives([], { shares: [0.1, 1] })).toThrow(RangeError);
  });

  it('of 0, two replacements on one day, are taken as lives of at most the grain of the scale', () => {
    const { weibull, counts } = componentLives([life(0, 0), life(8, 8), life(20, Infinity)]);
    expect([weibull.kind, counts.exact]).toEqual(['estimated', 2]);
  });

  it('compare alike with themselves, and differ where one kind lasts ten times as long', () => {
    const short = [3, 4, 5, 6, 7, 8].map((age) => life(age, age));
    const long = short.map((each) => (each.kind === 'life' ? life(10 * each.lower, 10 * each.upper) : each));
    const same = compareLives(short, short);
    if (same.likelihoodRatio.kind !== 'tested' || same.logRank?.kind !== 'tested') throw new Error('no test');
    expect(same.likelihoodRatio.chiSquare).toBeCloseTo(0, 6);
    expect(same.logRank.chiSquare).toBeCloseTo(0, 12);
    const other = compareLives(long, short);
    if (other.likelihoodRatio.kind !== 'tested' || other.logRank?.kind !== 'tested')
      throw new Error('no test');
    // Lives multiplied by 10 have 10 times the characteristic life.
    expect(other.likelihoodRatio.scaleRatio).toBeCloseTo(10, 6);
    expect(other.likelihoodRatio.pValue).toBeLessThan(0.001);
    expect(other.logRank.pValue).toBeLessThan(0.01);
    expect(compareLives(tubes, short).logRank).toBeNull();
    expect(compareLives(many(3, life(9, Infinity)), short).likelihoodRatio).toEqual({
      kind: 'insufficientData',
      needed: 2,
      got: 0,
    });
  });
});
