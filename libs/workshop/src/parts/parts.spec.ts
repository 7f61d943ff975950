import {
  comebackReason,
  horizonOfQuery,
  lifeReason,
  plannedReason,
  vanChance,
  type NeedReason,
  type VanNeeds,
} from './gather-needs.js';
import { ageOf, livesOfKind, type VanOfPart } from './known-lives.js';
import { fewerCases, mostCases } from './fewer-cases.js';
import { partGroups } from './part-groups.js';
import { useForecast } from './use-forecast.js';
import type { FittedPartRecord } from '../intake/fitted-parts.use-case.js';
import type { PartRecord } from './parts.use-case.js';

const days = (ahead: number) => ({ kind: 'days', days: ahead }) as const;
const wear = (chance: number): NeedReason => ({ source: 'wear', about: {}, chanceWithin: () => chance });
const van = (reasons: readonly NeedReason[], application: string | null = null): VanNeeds => ({
  vehicleId: 'v',
  label: 'Van 14',
  position: 'intake',
  application,
  reasons,
});

describe('the chance of a van', () => {
  it('takes wear, a planned job and a comeback as independent: 0.5, 0.5 and 0.2 leave 0.5 · 0.5 · 0.8 = 0.2', () => {
    const comeback = comebackReason('j', 0.2, { days: 30, km: 1000, kmPerDay: null });
    expect(vanChance(van([wear(0.5), plannedReason('j', 0.5), comeback]), days(30))?.chance).toBeCloseTo(
      0.8,
      12,
    );
  });

  it('counts two characteristics of one part once, by the likelier', () => {
    expect(vanChance(van([wear(0.5), wear(0.3)]), days(30))?.chance).toBe(0.5);
  });

  it('asks lives in general only where the wear of this part says nothing', () => {
    const life = lifeReason({ days: { scale: 100, shape: 1 }, km: null }, { days: 10, km: null });
    expect(vanChance(van([wear(0.1), life]), days(100))?.chance).toBeCloseTo(0.1, 14);
    expect(vanChance(van([life]), days(100))?.chance).toBeCloseTo(1 - Math.exp(-1), 12);
    expect(vanChance(van([life]), { kind: 'distance', km: 5000 })).toBeNull();
  });

  it('spreads a comeback over what is left of its window: half of it in half the days, all of it beyond', () => {
    const { chanceWithin } = comebackReason('j', 0.2, { days: 30, km: 1000, kmPerDay: 50 });
    expect(chanceWithin(days(15))).toBeCloseTo(0.1, 12);
    expect(chanceWithin(days(90))).toBeCloseTo(0.2, 12);
    // 500 km are half of the km left, and 10 of the 30 days at 50 km a day: the window closes at whichever is first.
    expect(chanceWithin({ kind: 'distance', km: 500 })).toBeCloseTo(0.1, 12);
  });

  it('one horizon is asked at a time', () => {
    expect(horizonOfQuery(30, undefined)).toEqual(days(30));
    expect(() => horizonOfQuery(30, 1000)).toThrow();
    expect(() => horizonOfQuery(undefined, undefined)).toThrow();
  });
});

const fitted = (content: Partial<FittedPartRecord['content']>): FittedPartRecord => ({
  id: 'p',
  identity: { vehicleId: 'v' },
  revision: 1,
  recordedAt: '2026-01-01T00:00:00Z',
  recordedBy: 'u',
  reason: null,
  replacedAt: null,
  firstRecordedAt: '2026-01-01T00:00:00Z',
  content: {
    componentType: 'throttle-housing',
    position: 'intake',
    condition: 'new',
    fittedAt: null,
    fittedKm: null,
    removedAt: null,
    removedKm: null,
    serial: null,
    batch: null,
    supplier: null,
    partNumber: null,
    removalReason: null,
    replacesPartId: null,
    workLineId: null,
    ...content,
  },
});

const ofVan = (firstUsedOn: string | null, firstRecordedAt = '2020-01-01T00:00:00Z'): VanOfPart => ({
  firstRecordedAt,
  entries: [],
  vehicle: {
    chassisNumber: null,
    numberSearch: null,
    plate: null,
    plateSearch: null,
    label: null,
    firstUsedOn,
    application: null,
    attributes: {},
    expectedKmPerYear: null,
    observedSpans: [],
    retiredOn: null,
  },
});

describe('lives behind needs', () => {
  it('a part that came with the van is as old as the van; another without a date has no age', () => {
    const now = '2026-01-11T00:00:00Z';
    expect(ageOf(fitted({ condition: 'original' }), ofVan('2026-01-01'), now).days).toBe(10);
    expect(ageOf(fitted({ condition: 'used' }), ofVan('2026-01-01'), now).days).toBeNull();
    expect(ageOf(fitted({ fittedAt: '2026-01-06T00:00:00Z' }), ofVan(null), now).days).toBe(5);
  });

  it('says nothing of a curve with fewer than five ended lives, and counts what it left out', () => {
    const parts = [
      fitted({ fittedAt: '2021-01-01T00:00:00Z', removedAt: '2022-01-01T00:00:00Z' }),
      fitted({ fittedAt: '2022-01-01T00:00:00Z' }),
      fitted({ condition: 'used' }),
    ];
    const found = livesOfKind(parts, new Map([['v', ofVan(null)]]), '2026-01-01T00:00:00Z');
    expect(found).toEqual({ lives: { days: null, km: null }, ended: 1, running: 1, leftOut: 1 });
  });

  it('leaves out a life that had ended before anybody would have seen it', () => {
    const gone = fitted({ fittedAt: '2018-01-01T00:00:00Z', removedAt: '2019-01-01T00:00:00Z' });
    const found = livesOfKind([gone], new Map([['v', ofVan(null)]]), '2026-01-01T00:00:00Z');
    expect(found).toMatchObject({ ended: 0, running: 0, leftOut: 1 });
  });

  it('finds the scale of equal exponential-like lives within its doubt: 40 lives from 30 to 1200 days', () => {
    // Quantiles of an exponential life with mean 300 days: -300 ln(1 - (i - 0.5)/40).
    const parts = Array.from({ length: 40 }, (_, at) => {
      const life = -300 * Math.log(1 - (at + 0.5) / 40);
      const from = Date.parse('2021-01-01T00:00:00Z');
      return fitted({
        fittedAt: new Date(from).toISOString(),
        removedAt: new Date(from + life * 86_400_000).toISOString(),
      });
    });
    const { lives } = livesOfKind(parts, new Map([['v', ofVan(null)]]), '2026-01-01T00:00:00Z');
    // Standard error of ln(scale) is about 1.05/√40 = 0.17, of ln(shape) 0.78/√40 = 0.12.
    expect(lives.days!.scale).toBeGreaterThan(300 * Math.exp(-0.17));
    expect(lives.days!.scale).toBeLessThan(300 * Math.exp(0.17));
    expect(lives.days!.shape).toBeGreaterThan(0.88);
    expect(lives.days!.shape).toBeLessThan(1.13);
  });
});

describe('demand from past use', () => {
  it('by hand: 2 in January and 2 in March, asked on 10 May', () => {
    // January to April: 2 0 2 0. Croston starts with size 2 and interval 1, then size 2 and interval 1 + 0.15 · (2 − 1) =
    // 1.15; 2 / 1.15 without bias: · (1 − 0.075) = 1.6087 a month, 0.05285 a day.
    const use = useForecast(
      [
        { partId: 'p', month: '2026-01-01', pieces: 2 },
        { partId: 'p', month: '2026-03-01', pieces: 2 },
        { partId: 'p', month: '2026-05-01', pieces: 9 },
      ],
      '2026-05-10',
    );
    expect(use).toMatchObject({ kind: 'estimated', months: 4, monthsWithUse: 2 });
    if (use.kind !== 'estimated') throw new Error('it is estimated');
    expect(use.perDay).toBeCloseTo(((2 / 1.15) * 0.925) / (365.25 / 12), 12);
  });

  it('needs two months with use, and goes over the turn of the year', () => {
    expect(useForecast([], '2026-05-10')).toMatchObject({ kind: 'insufficientData', needed: 2, got: 0 });
    const over = useForecast(
      [
        { partId: 'p', month: '2025-12-01', pieces: 1 },
        { partId: 'p', month: '2026-01-01', pieces: 1 },
      ],
      '2026-02-01',
    );
    expect(over).toMatchObject({ months: 2, monthsWithUse: 2 });
  });
});

const part = (id: string, applications: string[], more: Partial<PartRecord['content']> = {}): PartRecord => ({
  ...fitted({}),
  id,
  identity: {},
  content: {
    componentType: 'throttle-housing',
    partNumber: id,
    title: 'housing',
    applications,
    supersededById: null,
    interchangesWith: [],
    alsoOrder: [],
    note: null,
    ...more,
  },
});

describe('groups of parts', () => {
  it('parts that stand in for each other share their vans; the newest number is ordered', () => {
    const parts = [part('a', ['x'], { supersededById: 'b' }), part('b', []), part('c', ['y'])];
    const { groups, unfitted } = partGroups(parts, [van([], 'x'), van([], 'y'), van([], null)]);
    expect(groups.map((group) => [group.current.id, group.parts.length, group.vans.length])).toEqual([
      ['b', 2, 2],
      ['c', 1, 1],
    ]);
    expect(unfitted).toEqual([]);
  });

  it('a van that no number fits is named', () => {
    const { groups, unfitted } = partGroups([part('c', ['y'])], [van([], 'z')]);
    expect([groups[0]?.vans.length, unfitted.length]).toEqual([0, 1]);
  });
});

describe('many lead times', () => {
  it('are taken together in equal shares by their longest day, and lose no weight', () => {
    const cases = Array.from({ length: 20 }, (_, at) => ({ days: at + 1, weight: 0.05 }));
    const fewer = fewerCases(cases);
    expect(fewer.length).toBeLessThanOrEqual(mostCases);
    expect(fewer.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    expect(fewer.at(-1)?.days).toBe(20);
    const mean = (some: readonly { days: number; weight: number }[]) =>
      some.reduce((sum, { days: each, weight }) => sum + each * weight, 0);
    expect(mean(fewer)).toBeGreaterThanOrEqual(mean(cases));
    expect(fewerCases(cases.slice(0, 3))).toEqual(cases.slice(0, 3));
  });
});
