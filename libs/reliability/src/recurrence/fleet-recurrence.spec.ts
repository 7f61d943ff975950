import fc from 'fast-check';
import type { FleetRecurrence } from './fleet-recurrence.js';
import type { UnitHistory } from './unit-history.js';
import { fleetRecurrence, recurrenceAt } from './fleet-recurrence.js';
import { valveSeatFleet, valveSeatRecurrence } from './valve-seat.published-case.js';

const watched = (until: number, ...eventAges: number[]): UnitHistory => ({
  spans: [{ from: 0, until }],
  eventAges,
});

function estimated(
  histories: readonly UnitHistory[],
  level?: number,
): Extract<FleetRecurrence, { kind: 'estimated' }> {
  const result = fleetRecurrence(histories, level);
  if (result.kind !== 'estimated') throw new Error(result.kind);
  return result;
}

describe('fleetRecurrence on the valve seats of Nelson and Doganaksoy', () => {
  const recurrence = estimated(valveSeatFleet);

  it('has 41 engines and 48 replacements', () => {
    expect(recurrence).toMatchObject({
      units: 41,
      events: 48,
      unobservedEvents: 0,
      firstAge: 0,
      lastAge: 761,
      gaps: [],
    });
    expect(valveSeatFleet).toHaveLength(41);
  });

  it('gives the mean at day 621 to nine digits with its robust standard error', () => {
    const at621 = recurrenceAt(recurrence, 621)!;
    expect(at621.mean).toBeCloseTo(1.118542214, 9);
    expect(at621.standardError).toBeCloseTo(0.207502883, 9);
  });

  it('gives every row of the table: at risk, events, mean, standard error and both forms of limits', () => {
    expect(recurrence.points.map(({ age }) => age)).toEqual(valveSeatRecurrence.map(({ age }) => age));
    for (const [index, row] of valveSeatRecurrence.entries()) {
      const point = recurrence.points[index]!;
      expect(point).toMatchObject({ age: row.age, atRisk: row.atRisk, events: row.events });
      // The table has nine to ten digits.
      expect(point.mean).toBeCloseTo(row.mean, 8);
      expect(point.standardError).toBeCloseTo(row.standardError, 8);
      expect(point.log!.lower).toBeCloseTo(row.log.lower, 8);
      expect(point.log!.upper).toBeCloseTo(row.log.upper, 7);
      expect(point.plain!.lower).toBeCloseTo(row.plain.lower, 8);
      expect(point.plain!.upper).toBeCloseTo(row.plain.upper, 8);
    }
  });
});

describe('fleetRecurrence', () => {
  it('counts a small fleet by hand, with a van that joins late and one unseen in between', () => {
    // Age 2: vans A and B watched (C from 3, D 0-1 and 4-10): 1/2. Age 5: A, C, D watched (B ended at 4): 2/3 more.
    const recurrence = estimated([
      watched(10, 2, 5),
      watched(4),
      { spans: [{ from: 3, until: 8 }], eventAges: [5] },
      {
        spans: [
          { from: 0, until: 1 },
          { from: 4, until: 10 },
        ],
        eventAges: [],
      },
    ]);
    expect(recurrence.points.map(({ age, atRisk, events, mean }) => [age, atRisk, events, mean])).toEqual([
      [2, 2, 1, 0.5],
      [5, 3, 2, expect.closeTo(0.5 + 2 / 3, 12)],
    ]);
    expect(recurrence.observedAge).toBe(10 + 4 + 5 + 7);
    // Variance at age 2 by hand, two vans at risk: A adds (1 - 1/2) / 2, B adds (0 - 1/2) / 2; squares 1/16 + 1/16 = 1/8.
    expect(recurrence.points[0]!.standardError).toBeCloseTo(Math.sqrt(1 / 8), 12);
  });

  it('leaves out an event nobody watched for, and says so', () => {
    const recurrence = estimated([
      { spans: [{ from: 100, until: 200 }], eventAges: [50, 100, 150, 201] },
      { spans: [{ from: 0, until: 300 }], eventAges: [] },
    ]);
    expect(recurrence).toMatchObject({ events: 1, unobservedEvents: 3 });
    expect(recurrence.points.map(({ age }) => age)).toEqual([150]);
  });

  it('watches a vehicle entered twice only once', () => {
    const twice = {
      spans: [
        { from: 0, until: 6 },
        { from: 2, until: 9 },
        { from: 9, until: 10 },
      ],
      eventAges: [9],
    };
    expect(estimated([twice, watched(10)])).toEqual(estimated([watched(10, 9), watched(10)]));
  });

  it('names the ages at which nobody was watched', () => {
    const gap = {
      spans: [
        { from: 0, until: 2 },
        { from: 5, until: 9 },
      ],
      eventAges: [6],
    };
    expect(estimated([gap, watched(1)]).gaps).toEqual([{ from: 2, to: 5 }]);
  });

  it('has no points without events, no answer without vehicles, and no doubt to give for a single vehicle', () => {
    expect(fleetRecurrence([watched(10), watched(5)])).toEqual({
      kind: 'noEvents',
      units: 2,
      firstAge: 0,
      lastAge: 10,
      observedAge: 15,
      unobservedEvents: 0,
    });
    expect(fleetRecurrence([])).toMatchObject({ kind: 'insufficientData', needed: 1, got: 0 });
    expect(fleetRecurrence([{ spans: [], eventAges: [4] }])).toMatchObject({ kind: 'insufficientData' });
    expect(estimated([watched(10, 4)]).points).toEqual([
      { age: 4, atRisk: 1, events: 1, mean: 1, standardError: null, plain: null, log: null },
    ]);
  });

  it('takes two replacements of one vehicle on one day as two', () => {
    expect(estimated([watched(10, 4, 4), watched(10)]).points).toMatchObject([
      { age: 4, events: 2, mean: 1 },
    ]);
  });

  it('looks up the mean between events and refuses ages nobody reached', () => {
    const recurrence = estimated([watched(10, 4), watched(10)]);
    expect(recurrenceAt(recurrence, 3)).toBeNull();
    expect(recurrenceAt(recurrence, 9)).toMatchObject({ age: 4, mean: 0.5 });
    expect(() => recurrenceAt(recurrence, 11)).toThrow(RangeError);
  });

  it('refuses spans that run backwards and ages that are none', () => {
    expect(() => fleetRecurrence([{ spans: [{ from: 5, until: 2 }], eventAges: [] }])).toThrow(RangeError);
    expect(() => fleetRecurrence([{ spans: [{ from: -1, until: 2 }], eventAges: [] }])).toThrow(RangeError);
    expect(() => fleetRecurrence([{ spans: [{ from: 0, until: Infinity }], eventAges: [] }])).toThrow(
      RangeError,
    );
    expect(() => fleetRecurrence([watched(5, Number.NaN)])).toThrow(RangeError);
  });

  it('does not depend on the order of vehicles or events, and scales with the unit of age', () => {
    const anyHistory = fc
      .tuple(fc.integer({ min: 1, max: 50 }), fc.array(fc.integer({ min: 0, max: 50 }), { maxLength: 5 }))
      .map(([until, ages]) => watched(until, ...ages));
    fc.assert(
      fc.property(fc.array(anyHistory, { minLength: 2, maxLength: 8 }), (histories) => {
        const result = fleetRecurrence(histories);
        const reversed = fleetRecurrence(
          [...histories]
            .reverse()
            .map(({ spans, eventAges }) => ({ spans, eventAges: [...eventAges].reverse() })),
        );
        expect(reversed.kind).toBe(result.kind);
        if (result.kind !== 'estimated' || reversed.kind !== 'estimated') return;
        const doubled = estimated(
          histories.map(({ spans, eventAges }) => ({
            spans: spans.map(({ from, until }) => ({ from: 2 * from, until: 2 * until })),
            eventAges: eventAges.map((age) => 2 * age),
          })),
        );
        for (const [index, point] of result.points.entries()) {
          expect(reversed.points[index]!.mean).toBeCloseTo(point.mean, 12);
          expect(reversed.points[index]!.standardError!).toBeCloseTo(point.standardError!, 9);
          expect(doubled.points[index]).toMatchObject({ age: 2 * point.age, mean: point.mean });
          expect(point.mean).toBeGreaterThan(index === 0 ? 0 : result.points[index - 1]!.mean);
        }
        expect(result.events + result.unobservedEvents).toBe(
          histories.flatMap(({ eventAges }) => eventAges).length,
        );
      }),
      { seed: 20260807, numRuns: 200 },
    );
  });
});
