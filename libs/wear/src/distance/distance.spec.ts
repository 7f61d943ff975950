import fc from 'fast-check';
import { distanceAt } from './distance-at.js';
import { distanceBetween } from './distance-between.js';
import { examineOdometerEntry } from './examine-odometer-entry.js';
import { compareExact, exactDecimal, exactText, minus, plus, times } from './exact-decimal.js';
import type { OdometerReading, OdometerSegment } from './odometer-segment.js';
import { proposedSegment } from './proposed-segment.js';

const seed = { seed: 20260802, numRuns: 300 };

const kmSegment: OdometerSegment = {
  startedAt: '2023-01-10T09:00:00Z',
  offsetKm: '61000',
  factor: '1',
  rawAtStart: '61000',
  unit: 'km',
  cause: 'firstSeen',
  digits: 6,
};
const read = (shown: string, readAt: string, more: Partial<OdometerReading> = {}): OdometerReading => ({
  shown,
  unit: 'km',
  readAt,
  ...more,
});
const codes = (
  entry: OdometerReading,
  neighbours: OdometerReading[],
  segments: OdometerSegment[],
  yearly?: string,
) => examineOdometerEntry(entry, neighbours, segments, yearly).warnings.map(({ code }) => code);
const segmentOf = (...args: Parameters<typeof proposedSegment>): OdometerSegment => {
  const proposed = proposedSegment(...args);
  if (proposed.kind !== 'proposed') throw new Error(proposed.reason);
  return proposed.segment;
};

describe('exact decimals', () => {
  const texts = fc
    .tuple(fc.boolean(), fc.nat(10 ** 9), fc.nat(999))
    .map(([isNegative, whole, decimals]) => `${isNegative ? '-' : ''}${whole}.${decimals}`);

  it('add, subtract and multiply as integers of the smallest decimal do', () => {
    fc.assert(
      fc.property(texts, texts, (first, second) => {
        const [a, b] = [exactDecimal(first), exactDecimal(second)];
        expect(exactText(minus(plus(a, b), b))).toBe(exactText(a));
        expect(exactText(times(plus(a, b), minus(a, b)))).toBe(exactText(minus(times(a, a), times(b, b))));
        expect(compareExact(a, b)).toBe(Math.sign(Number(first) - Number(second)) + 0);
      }),
      seed,
    );
  });

  it('read a display with leading zeros and write without them', () => {
    expect(exactText(exactDecimal('000123.40'))).toBe('123.4');
    expect(exactText(exactDecimal('-0.0'))).toBe('0');
    expect(exactText(times(exactDecimal('1.609344'), exactDecimal('062500')))).toBe('100584');
    expect(() => exactDecimal('1e3')).toThrow(RangeError);
  });
});

describe('distanceAt', () => {
  it('counts miles by the exact international mile', () => {
    const miles: OdometerSegment = {
      ...kmSegment,
      unit: '[mi_i]',
      factor: '1.609344',
      offsetKm: '160934.4',
      rawAtStart: '100000',
    };
    expect(distanceAt([miles], '100001.5', '[mi_i]', '2023-02-01T09:00:00Z')).toMatchObject({
      kind: 'distance',
      km: '160936.814016',
    });
  });

  it('converts a display that was switched to the other unit, exactly', () => {
    // 62,500 mi x 1.609344 = 100,584 km.
    expect(distanceAt([kmSegment], '62500', '[mi_i]', '2024-01-10T09:00:00Z')).toMatchObject({
      km: '100584',
    });
    const miles: OdometerSegment = {
      ...kmSegment,
      unit: '[mi_i]',
      factor: '1.609344',
      offsetKm: '0',
      rawAtStart: '0',
    };
    expect(distanceAt([miles], '100001', 'km', '2024-01-10T09:00:00Z')).toMatchObject({ km: '100001' });
  });

  it('takes the last segment that has started, and the first seen one also for what was found later about before', () => {
    const second: OdometerSegment = {
      ...kmSegment,
      startedAt: '2024-01-01T00:00:00Z',
      offsetKm: '75000',
      rawAtStart: '12',
      cause: 'displayReplaced',
    };
    const km = (shown: string, at: string) => distanceAt([second, kmSegment], shown, 'km', at);
    expect(km('74000', '2023-12-31T23:59:59Z')).toMatchObject({ km: '74000' });
    expect(km('13', '2024-01-01T00:00:00Z')).toMatchObject({ km: '75001' });
    expect(km('60000', '2022-06-01T08:00:00Z')).toMatchObject({ km: '60000' });
    expect(distanceAt([second], '13', 'km', '2023-12-31T23:59:59Z')).toEqual({ kind: 'noSegment' });
    expect(km('1', '2024-02-01T00:00:00Z')).toMatchObject({ km: '74989' });
  });

  it('keeps hours apart from kilometres', () => {
    const hours: OdometerSegment = {
      ...kmSegment,
      unit: 'h',
      factor: '1',
      offsetKm: '1200',
      rawAtStart: '0',
      digits: 5,
    };
    expect(distanceAt([kmSegment, hours], '00015.5', 'h', '2024-01-10T09:00:00Z')).toMatchObject({
      kind: 'operatingHours',
      hours: '1215.5',
    });
    expect(distanceAt([kmSegment], '15', 'h', '2024-01-10T09:00:00Z')).toEqual({ kind: 'noSegment' });
  });

  it('says so where the display cannot be read or the segment would say less than nothing', () => {
    expect(distanceAt([kmSegment], '61?00', 'km', '2024-01-10T09:00:00Z')).toMatchObject({
      kind: 'notReadable',
    });
    const odd = { ...kmSegment, offsetKm: '10', rawAtStart: '500' };
    expect(distanceAt([odd], '100', 'km', '2024-01-10T09:00:00Z')).toMatchObject({
      kind: 'belowZero',
      value: '-390',
    });
    expect(() => distanceAt([kmSegment], '1', 'km', '2024-01-10')).toThrow(RangeError);
    expect(() => distanceAt([kmSegment], '1', 'km', '2024-02-28T09:00:00')).toThrow(RangeError);
    expect(() => distanceAt([kmSegment], '1', 'km', '2024-02-30T09:00:00Z')).toThrow(RangeError);
  });
});

describe('distanceBetween', () => {
  it('is exact and never negative', () => {
    expect(distanceBetween('100000.1', '105000.3')).toEqual({ kind: 'distance', km: '5000.2' });
    expect(distanceBetween('100000', '100000')).toEqual({ kind: 'distance', km: '0' });
    expect(distanceBetween('100000', '99999.9')).toEqual({ kind: 'unreliable', reason: 'laterIsLower' });
    expect(distanceBetween(null, '1')).toEqual({ kind: 'unreliable', reason: 'earlierUnknown' });
    expect(distanceBetween('1', null)).toEqual({ kind: 'unreliable', reason: 'laterUnknown' });
    fc.assert(
      fc.property(fc.nat(10 ** 6), fc.nat(10 ** 6), (earlier, later) => {
        const result = distanceBetween(String(earlier), String(later));
        expect(result.kind === 'distance' ? Number(result.km) >= 0 : later < earlier).toBe(true);
      }),
      seed,
    );
  });
});

describe('examineOdometerEntry', () => {
  const earlier = [read('61000', '2023-01-10T09:00:00Z'), read('73000', '2023-07-10T09:00:00Z')];

  it('takes an ordinary reading without a word', () => {
    expect(examineOdometerEntry(read('85000', '2024-01-10T09:00:00Z'), earlier, [kmSegment])).toEqual({
      distanceKm: '85000',
      operatingHours: null,
      reliable: true,
      warnings: [],
      reexamine: [],
    });
  });

  it('places the first reading by offering the display at its word', () => {
    const first = examineOdometerEntry(read('00250.4', '2024-01-10T09:00:00Z', { unit: '[mi_i]' }), [], []);
    expect(first).toMatchObject({ distanceKm: null, reliable: true });
    expect(first.warnings).toMatchObject([
      {
        code: 'noSegment',
        proposals: [
          {
            kind: 'segment',
            segment: {
              offsetKm: '402.9797376',
              factor: '1.609344',
              rawAtStart: '250.4',
              cause: 'firstSeen',
              digits: null,
            },
          },
        ],
      },
    ]);
  });

  it('keeps an entry that is no number, and does not rely on it', () => {
    expect(examineOdometerEntry(read('85x00', '2024-01-10T09:00:00Z'), earlier, [kmSegment])).toMatchObject({
      distanceKm: null,
      reliable: false,
      warnings: [{ code: 'notReadable', values: { shown: '85x00' } }],
    });
  });

  describe('a five-digit display that rolls over', () => {
    const five: OdometerSegment = { ...kmSegment, offsetKm: '91000', rawAtStart: '91000', digits: 5 };
    const before = [read('91000', '2023-01-10T09:00:00Z'), read('97500', '2023-07-10T09:00:00Z')];
    const after = read('04200', '2024-01-10T09:00:00Z');

    it('is recognised, not relied on, and a segment with 100,000 added is offered', () => {
      const examined = examineOdometerEntry(after, before, [five]);
      expect(examined).toMatchObject({ reliable: false, distanceKm: '4200' });
      expect(examined.warnings).toEqual([
        {
          code: 'rolloverLikely',
          values: { last: '97500', shown: '04200', added: '100000' },
          reasonRequired: false,
          proposals: [
            {
              kind: 'segment',
              segment: {
                startedAt: '2024-01-10T09:00:00Z',
                offsetKm: '100000',
                factor: '1',
                rawAtStart: '0',
                unit: 'km',
                cause: 'rollover',
                digits: 5,
              },
            },
          ],
        },
      ]);
    });

    it('runs on without a gap once the segment is there', () => {
      const rolled = segmentOf({ cause: 'rollover', entry: after, segments: [five], last: before[1]! });
      expect(examineOdometerEntry(after, before, [five, rolled])).toMatchObject({
        distanceKm: '104200',
        reliable: true,
        warnings: [],
      });
      expect(distanceBetween('97500', '104200')).toEqual({ kind: 'distance', km: '6700' });
    });

    it('rolls over a second time on top of the first', () => {
      const rolled = segmentOf({ cause: 'rollover', entry: after, segments: [five], last: before[1]! });
      const last = read('99000', '2028-01-10T09:00:00Z');
      const again = read('00500', '2028-06-10T09:00:00Z');
      const twice = segmentOf({ cause: 'rollover', entry: again, segments: [five, rolled], last });
      expect(twice.offsetKm).toBe('200000');
      expect(examineOdometerEntry(again, [...before, after, last], [five, rolled, twice])).toMatchObject({
        distanceKm: '200500',
        reliable: true,
      });
    });

    it('counts miles at the rollover: 100,000 mi are 160,934.4 km', () => {
      const miles = { ...five, unit: '[mi_i]' as const, factor: '1.609344', offsetKm: '0', rawAtStart: '0' };
      const rolled = segmentOf({
        cause: 'rollover',
        entry: read('10', '2024-01-10T09:00:00Z', { unit: '[mi_i]' }),
        segments: [miles],
        last: read('99990', '2023-12-10T09:00:00Z', { unit: '[mi_i]' }),
      });
      expect(rolled).toMatchObject({ offsetKm: '160934.4', factor: '1.609344', rawAtStart: '0' });
    });

    it('also warns as lower than last where no van could have gone round in the time', () => {
      const soon = read('91000', '2023-07-12T09:00:00Z');
      expect(codes(soon, before, [five])).toEqual(['rolloverLikely', 'lowerThanLast']);
    });

    it('is not suspected below nine tenths of the display', () => {
      expect(
        codes(read('40000', '2024-01-10T09:00:00Z'), [read('89000', '2023-07-10T09:00:00Z')], [five]),
      ).toEqual(['lowerThanLast']);
    });
  });

  it('tells the stories of a lower reading, asks for a reason and offers a replaced display', () => {
    const examined = examineOdometerEntry(read('120', '2024-01-10T09:00:00Z'), earlier, [kmSegment]);
    expect(examined.reliable).toBe(false);
    expect(examined.warnings).toMatchObject([
      {
        code: 'lowerThanLast',
        reasonRequired: true,
        values: { last: '73000', stories: 'typingError,displayReplaced,tampering' },
        proposals: [
          { kind: 'segment', segment: { cause: 'displayReplaced', offsetKm: '73000', rawAtStart: '120' } },
        ],
      },
    ]);
  });

  it('keeps distance since a repair from going back when the cluster was replaced', () => {
    const entry = read('120', '2024-01-10T09:00:00Z');
    const replaced = segmentOf({ cause: 'displayReplaced', entry, segments: [kmSegment], last: earlier[1]! });
    const later = examineOdometerEntry(
      read('2120', '2024-04-10T09:00:00Z'),
      [...earlier, entry],
      [kmSegment, replaced],
    );
    expect(later).toMatchObject({ distanceKm: '75000', reliable: true, warnings: [] });
    expect(distanceBetween('73000', later.distanceKm)).toEqual({ kind: 'distance', km: '2000' });
  });

  it('takes the notice on the door frame where there is one: its value plus the present reading', () => {
    const entry = read('300', '2024-01-10T09:00:00Z');
    const replaced = segmentOf({
      cause: 'displayReplaced',
      entry: { ...entry, shown: '0' },
      segments: [kmSegment],
      last: earlier[1]!,
      distanceAtChangeKm: '80000',
    });
    expect(distanceAt([kmSegment, replaced], '300', 'km', '2024-01-10T09:00:00Z')).toMatchObject({
      km: '80300',
    });
  });

  it('sees miles written as kilometres: 45,360 x 1.609 is the expected 73,000', () => {
    const examined = examineOdometerEntry(read('46000', '2023-07-20T09:00:00Z'), earlier, [kmSegment]);
    expect(examined.warnings).toMatchObject([
      { code: 'unitMixedUp', proposals: [{ kind: 'unit', unit: '[mi_i]' }] },
    ]);
    expect(examined.reliable).toBe(false);
  });

  it('sees kilometres written as miles', () => {
    const examined = examineOdometerEntry(
      read('74000', '2023-07-20T09:00:00Z', { unit: '[mi_i]' }),
      earlier,
      [kmSegment],
    );
    expect(examined.warnings.map(({ code }) => code)).toEqual([
      'unitDiffersFromSegment',
      'unitMixedUp',
      'fasterThanPlausible',
    ]);
    expect(examined.warnings[1]!.proposals).toEqual([{ kind: 'unit', unit: 'km' }]);
  });

  it('suspects the earlier readings where kilometres are 1.609 times too many', () => {
    const examined = examineOdometerEntry(read('118500', '2023-08-10T09:00:00Z'), earlier, [kmSegment]);
    expect(examined.warnings[0]).toMatchObject({
      code: 'unitMixedUp',
      proposals: [{ kind: 'unitOfEarlierReadings', unit: '[mi_i]' }],
    });
  });

  it('goes by what the owner expects where that is known', () => {
    // 73,000 + 40,000 a year for half a year = 93,000 expected; 57,800 is 0.621 of it, and 57,800 mi are 93,020 km.
    const entry = read('57800', '2024-01-09T09:00:00Z');
    expect(codes(entry, earlier, [kmSegment], '40000')).toEqual(['unitMixedUp']);
    expect(codes(entry, [earlier[1]!], [kmSegment])).toEqual(['lowerThanLast']);
  });

  it('takes a display switched to miles as what it is, and offers the unit change', () => {
    // 45,982 mi = 74,000.856... km
    const examined = examineOdometerEntry(
      read('45982', '2023-07-20T09:00:00Z', { unit: '[mi_i]' }),
      earlier,
      [kmSegment],
    );
    expect(examined).toMatchObject({ reliable: true, distanceKm: '74000.855808' });
    expect(examined.warnings).toMatchObject([
      {
        code: 'unitDiffersFromSegment',
        proposals: [
          {
            kind: 'segment',
            segment: {
              cause: 'unitChanged',
              offsetKm: '74000.855808',
              factor: '1.609344',
              rawAtStart: '45982',
              digits: 6,
            },
          },
        ],
      },
    ]);
  });

  it('sees tenths read as a whole digit and a digit left out', () => {
    const tooMany = examineOdometerEntry(read('731205', '2023-07-20T09:00:00Z'), earlier, [kmSegment]);
    expect(tooMany.warnings[0]).toMatchObject({
      code: 'digitTooMany',
      proposals: [{ kind: 'shown', shown: '73120' }],
    });
    const missing = examineOdometerEntry(read('7312', '2023-07-20T09:00:00Z'), earlier, [kmSegment]);
    expect(missing.warnings).toMatchObject([
      { code: 'digitMissing', proposals: [{ kind: 'shownBetween', lowest: '73120', highest: '73129' }] },
    ]);
  });

  it('warns about more digits than the display has', () => {
    expect(codes(read('0073120', '2023-07-20T09:00:00Z'), earlier, [kmSegment])).toEqual([
      'moreDigitsThanDisplay',
    ]);
  });

  it('warns above a thousand kilometres a day, not at it', () => {
    expect(codes(read('83000', '2023-07-20T09:00:00Z'), earlier, [kmSegment])).toEqual([]);
    expect(codes(read('83001', '2023-07-20T09:00:00Z'), earlier, [kmSegment])).toEqual([
      'fasterThanPlausible',
    ]);
    expect(codes(read('73900', '2023-07-10T15:00:00Z'), earlier, [kmSegment])).toEqual([]);
    expect(codes(read('74100', '2023-07-10T15:00:00Z'), earlier, [kmSegment])).toEqual([
      'fasterThanPlausible',
    ]);
  });

  it('marks a display that has stood still for two months as unreliable from its first sight', () => {
    const still = [...earlier, read('73000', '2023-08-10T09:00:00Z')];
    expect(codes(read('73000', '2023-09-08T08:59:00Z'), still, [kmSegment])).toEqual([]);
    const examined = examineOdometerEntry(read('73000', '2023-09-08T09:00:00Z'), still, [kmSegment]);
    expect(examined.reliable).toBe(false);
    expect(examined.warnings).toMatchObject([
      {
        code: 'unchangedOverMonths',
        values: { days: '60' },
        proposals: [{ kind: 'notReliableFrom', from: '2023-07-10T09:00:00Z' }],
      },
    ]);
    expect(codes(read('73000', '2023-12-08T09:00:00Z'), still, [kmSegment], '0')).toEqual([]);
  });

  it('does not take a replaced display that goes on from the last known distance for one that stands still', () => {
    const replaced = {
      ...kmSegment,
      startedAt: '2024-01-10T09:00:00Z',
      offsetKm: '73000',
      rawAtStart: '12',
      cause: 'displayReplaced' as const,
    };
    const segments = [kmSegment, replaced];
    const before = [...earlier, read('73000', '2023-11-08T09:00:00Z')];
    // 73,000 km on the old display in November, 73,000 + (12 - 12) on the new one in January: what was driven is not known.
    expect(examineOdometerEntry(read('12', '2024-01-10T09:00:00Z'), before, segments).warnings).toEqual([]);
    const own = [...before, read('12', '2024-01-10T09:00:00Z')];
    const still = examineOdometerEntry(read('12', '2024-03-20T09:00:00Z'), own, segments);
    expect(still.warnings).toMatchObject([
      { code: 'unchangedOverMonths', values: { from: '2024-01-10T09:00:00Z', days: '70' } },
    ]);
  });

  it('sees a display stand still across a rollover and a change of its unit, which leave the distance what it was', () => {
    const other = {
      ...kmSegment,
      startedAt: '2024-01-10T09:00:00Z',
      offsetKm: '73000',
      factor: '1.609344',
      rawAtStart: '45360',
      unit: '[mi_i]' as const,
      cause: 'unitChanged' as const,
    };
    const before = [...earlier, read('73000', '2023-11-08T09:00:00Z')];
    const entry = read('45360', '2024-01-20T09:00:00Z', { unit: '[mi_i]' });
    expect(
      examineOdometerEntry(entry, before, [kmSegment, other]).warnings.map(({ code }) => code),
    ).toContain('unchangedOverMonths');
  });

  it('puts a reading entered later in date order and names the neighbour to examine again', () => {
    const examined = examineOdometerEntry(read('67000', '2023-04-10T09:00:00Z'), earlier, [kmSegment]);
    expect(examined).toMatchObject({ reliable: true, reexamine: ['2023-07-10T09:00:00Z'] });
    expect(examined.warnings.map(({ code }) => code)).toEqual(['backFilled']);
    const tooHigh = examineOdometerEntry(read('74000', '2023-04-10T09:00:00Z'), earlier, [kmSegment]);
    expect(tooHigh.reliable).toBe(false);
    expect(tooHigh.warnings.map(({ code }) => code)).toEqual(['backFilled', 'higherThanNext']);
  });

  it('compares with the last reading that can be relied on', () => {
    const doubtful = [...earlier, read('940000', '2023-08-10T09:00:00Z', { reliable: false })];
    expect(codes(read('75000', '2023-09-10T09:00:00Z'), doubtful, [kmSegment])).toEqual([]);
  });

  it('offers the rollover even where the old segment would go below zero', () => {
    const segment = {
      ...kmSegment,
      digits: 5,
      offsetKm: '2000',
      rawAtStart: '95000',
      cause: 'displayReplaced' as const,
    };
    const examined = examineOdometerEntry(
      read('00100', '2024-01-10T09:00:00Z'),
      [read('99000', '2023-07-10T09:00:00Z')],
      [segment],
    );
    expect(examined.distanceKm).toBeNull();
    expect(examined.warnings).toMatchObject([
      { code: 'belowZero' },
      { code: 'rolloverLikely', proposals: [{ segment: { offsetKm: '7000', rawAtStart: '0' } }] },
    ]);
  });

  it('watches an hour meter by its own day: more than 24 hours are too many', () => {
    const meter: OdometerSegment = {
      ...kmSegment,
      unit: 'h',
      offsetKm: '5000',
      rawAtStart: '5000',
      digits: 5,
    };
    const last = [read('5000', '2023-07-10T09:00:00Z', { unit: 'h' }), read('73000', '2023-07-10T09:00:00Z')];
    const at = (shown: string) =>
      examineOdometerEntry(
        read(shown, '2023-07-20T09:00:00Z', { unit: 'h' }),
        last,
        [kmSegment, meter],
        '20000',
      );
    expect(at('5240')).toMatchObject({
      operatingHours: '5240',
      distanceKm: null,
      reliable: true,
      warnings: [],
    });
    expect(at('5241').warnings.map(({ code }) => code)).toEqual(['fasterThanPlausible']);
    expect(at('4990').warnings).toMatchObject([
      { code: 'lowerThanLast', proposals: [{ segment: { unit: 'h', factor: '1', offsetKm: '5000' } }] },
    ]);
  });

  it('never blocks and never answers a number that is none, whatever is entered', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.stringMatching(/^[0-9]{1,8}$/), fc.string({ maxLength: 12 })),
        fc.constantFrom('km' as const, '[mi_i]' as const, 'h' as const),
        fc.integer({ min: -400, max: 400 }),
        (shown, unit, days) => {
          const readAt = new Date(Date.UTC(2023, 6, 10) + days * 86_400_000).toISOString();
          const examined = examineOdometerEntry({ shown, unit, readAt }, earlier, [kmSegment]);
          const text = JSON.stringify(examined);
          expect(text).not.toMatch(/NaN|Infinity/);
          for (const { proposals } of examined.warnings) {
            for (const proposal of proposals) {
              if (proposal.kind !== 'segment') continue;
              const segments = [kmSegment, proposal.segment];
              const settled = distanceAt(segments, shown, unit, readAt);
              expect(['distance', 'operatingHours']).toContain(settled.kind);
            }
          }
        },
      ),
      seed,
    );
  });

  it('throws on an expectation that is none', () => {
    expect(() => examineOdometerEntry(read('1', '2024-01-10T09:00:00Z'), [], [], '-5')).toThrow(RangeError);
    expect(() => examineOdometerEntry(read('1', '2024-01-10T09:00:00Z'), [], [], 'lots')).toThrow(RangeError);
  });
});

describe('proposedSegment', () => {
  it('says why it cannot propose', () => {
    const entry = read('12', '2024-01-10T09:00:00Z');
    const reason = (more: object) =>
      proposedSegment({ cause: 'rollover', entry, segments: [], last: null, ...more });
    expect(reason({})).toEqual({ kind: 'cannotPropose', reason: 'nothingBefore' });
    expect(reason({ cause: 'displayReplaced' })).toEqual({ kind: 'cannotPropose', reason: 'nothingBefore' });
    expect(reason({ entry: { ...entry, shown: '1?' } })).toEqual({
      kind: 'cannotPropose',
      reason: 'notReadable',
    });
  });
});
