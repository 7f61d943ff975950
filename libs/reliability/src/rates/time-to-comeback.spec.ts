import { timeToComeback } from './time-to-comeback.js';

describe('time to comeback', () => {
  it('is the curve of the NIST/SEMATECH e-Handbook 8.4.1.3, hours taken for days', () => {
    // 10 failures among 20, the rest removed at 500. Published: S(54) = 0.95 ... S(386) = 0.5; s.e. at 386 sqrt(0.25 / 20).
    const days = [54, 187, 216, 240, 244, 335, 361, 373, 375, 386];
    const curve = timeToComeback([
      ...days.map((day) => ({ day, comebacks: 1, lastSeen: 0 })),
      { day: 500, comebacks: 0, lastSeen: 10 },
    ]);
    if (curve.kind !== 'estimated') throw new Error(curve.kind);
    expect(curve.ages).toEqual(days);
    curve.survival.forEach((share, at) => expect(share).toBeCloseTo(0.95 - 0.05 * at, 12));
    expect(curve.standardErrors[9]).toBeCloseTo(0.1118034, 7);
    expect(curve.lower[9]).toBeCloseTo(0.2713278, 6);
    expect(curve.upper[9]).toBeCloseTo(0.6918925, 6);
    expect(curve).toMatchObject({ units: 20, comebacks: 10, lastAge: 500 });
  });

  it('by hand: two come back on day 3 of five, two were last seen that day and count as observed on it', () => {
    const curve = timeToComeback([
      { day: 3, comebacks: 2, lastSeen: 2 },
      { day: 9, comebacks: 0, lastSeen: 1 },
    ]);
    expect(curve).toMatchObject({ kind: 'estimated', atRisk: [5], events: [2], survival: [0.6] });
  });

  it('says so where nothing came back or nobody was seen, and refuses days that are none', () => {
    expect(timeToComeback([]).kind).toBe('insufficientData');
    expect(timeToComeback([{ day: 4, comebacks: 0, lastSeen: 3 }])).toMatchObject({
      kind: 'noEvents',
      units: 3,
    });
    expect(() => timeToComeback([{ day: 0, comebacks: 1, lastSeen: 0 }])).toThrow(RangeError);
    expect(() => timeToComeback([{ day: 1, comebacks: -1, lastSeen: 0 }])).toThrow(RangeError);
  });
});
