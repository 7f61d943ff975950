import type { OdometerEntry, Vehicle } from '../ports/records/vehicles.records.js';
import { daysBetween, presentKm, yearlyDistanceOf } from './yearly-distance.js';

const entry = (readAt: string, distanceKm: string | null, reliable = true): OdometerEntry => ({
  shown: distanceKm ?? '0',
  unit: 'km',
  readAt,
  distanceKm,
  reliable,
  readBy: null,
  operatingHours: null,
  warnings: [],
  note: null,
});

const van = (expectedKmPerYear: string | null): Vehicle => ({
  chassisNumber: null,
  numberSearch: null,
  plate: null,
  plateSearch: null,
  label: 'Van 14',
  firstUsedOn: null,
  application: null,
  attributes: {},
  expectedKmPerYear,
  observedSpans: [],
  retiredOn: null,
});

describe('yearlyDistanceOf', () => {
  const twoYears = [entry('2030-01-01T00:00:00Z', '10000'), entry('2032-01-01T00:00:00Z', '70000')];

  it('takes what the owner expects before what the odometer shows, with a fifth of it as doubt', () => {
    expect(yearlyDistanceOf(van('24000'), twoYears)).toEqual({ kmPerYear: 24_000, u: 4800, basis: 'stated' });
  });

  it('reads 60,000 km in 730 days as 30,020.5 km a year', () => {
    const found = yearlyDistanceOf(van(null), twoYears);
    expect(found?.basis).toBe('odometer');
    expect(found?.kmPerYear).toBeCloseTo(30_020.548, 3);
  });

  it('says nothing from entries less than 90 days apart, unreliable ones or none', () => {
    const near = [entry('2030-01-01T00:00:00Z', '10000'), entry('2030-03-31T00:00:00Z', '15000')];
    expect(yearlyDistanceOf(van(null), near)).toBeNull();
    const doubtful = [entry('2030-01-01T00:00:00Z', '10000'), entry('2032-01-01T00:00:00Z', '70000', false)];
    expect(yearlyDistanceOf(van(null), doubtful)).toBeNull();
    expect(yearlyDistanceOf(van(null), [])).toBeNull();
  });
});

describe('presentKm', () => {
  it('is that of the last reliable entry, whatever the order', () => {
    const entries = [
      entry('2032-01-01T00:00:00Z', '70000'),
      entry('2033-01-01T00:00:00Z', '7000', false),
      entry('2031-01-01T00:00:00Z', '40000'),
    ];
    expect(presentKm(entries)).toBe(70_000);
    expect(presentKm([entry('2032-01-01T00:00:00Z', null)])).toBeNull();
  });
});

describe('daysBetween', () => {
  it('counts whole days over the end of a leap February', () => {
    expect(daysBetween('2032-02-28', '2032-03-01')).toBe(2);
    expect(daysBetween('2031-03-01', '2031-02-28')).toBe(-1);
  });
});
