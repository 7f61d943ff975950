import type { Calibration } from '../ports/records/bench.records.js';
import { calibrationStandingOn, lastGoodCalibration } from './calibration-standing.js';
import { contextValue } from './judging/limit-context.js';
import { localDay } from './local-day.js';

const calibration = (calibratedOn: string, dueOn: string | null, passed = true): Calibration => ({
  calibratedOn,
  dueOn,
  passed,
  certificate: null,
  note: null,
});

describe('calibrationStandingOn', () => {
  it('counts the due day itself as calibrated and the day after as overdue', () => {
    const one = [calibration('2030-05-10', '2031-05-10')];
    expect(calibrationStandingOn(one, '2031-05-10')).toEqual({
      kind: 'due',
      dueOn: '2031-05-10',
      daysLeft: 0,
    });
    expect(calibrationStandingOn(one, '2031-05-11')).toMatchObject({ kind: 'overdue', daysOver: 1 });
  });

  it('knows nothing of a later calibration on an earlier day', () => {
    const both = [calibration('2031-01-10', null), calibration('2030-01-10', '2030-07-10')];
    expect(calibrationStandingOn(both, '2030-12-01').kind).toBe('overdue');
    expect(calibrationStandingOn(both, '2031-02-01')).toEqual({
      kind: 'noInterval',
      lastCalibratedOn: '2031-01-10',
    });
    expect(calibrationStandingOn(both, '2029-12-31')).toEqual({ kind: 'neverCalibrated' });
  });

  it('lets a calibration that was not passed stand against an earlier good one', () => {
    const both = [calibration('2031-01-10', '2032-01-10'), calibration('2031-03-01', null, false)];
    expect(calibrationStandingOn(both, '2031-03-02')).toEqual({ kind: 'failed', failedOn: '2031-03-01' });
    expect(lastGoodCalibration(both, '2031-03-02')?.calibratedOn).toBe('2031-01-10');
    expect(lastGoodCalibration([], '2031-03-02')).toBeUndefined();
  });
});

describe('localDay', () => {
  it('is the day on the wall of the shop, not in UTC', () => {
    expect(localDay('2031-05-04T23:30:00.000Z', 'Europe/Lisbon')).toBe('2031-05-05');
    expect(localDay('2031-12-04T23:30:00.000Z', 'Europe/Lisbon')).toBe('2031-12-04');
    expect(localDay('2031-05-04T03:30:00.000Z', 'America/Chicago')).toBe('2031-05-03');
  });

  it('refuses a time zone that does not exist', () => {
    expect(() => localDay('2031-05-04T03:30:00.000Z', 'Nowhere/Atall')).toThrow(RangeError);
  });
});

describe('contextValue', () => {
  it('takes a number with a known unit for a quantity and everything else for text', () => {
    expect(contextValue('3500 kg')).toEqual({ value: '3500', unit: 'kg' });
    expect(contextValue('N1')).toBe('N1');
    expect(contextValue('3500 stone')).toBe('3500 stone');
    expect(contextValue('1,5 kg')).toBe('1,5 kg');
    expect(contextValue('rack and pinion')).toBe('rack and pinion');
  });
});
