import type { CalibrationRecord } from './calibration-status.js';
import { calibrationStatus } from './calibration-status.js';
import { instrumentUncertainty } from './instrument-uncertainty.js';

describe('uncertainty of an instrument', () => {
  it('of a 0.01 mm dial with 15 um over its range is 15 / sqrt(3) = 8.66 um', () => {
    const result = instrumentUncertainty(
      { kind: 'maximumPermissibleError', limit: { value: '15', unit: 'um' } },
      { value: '0.18', unit: 'mm' },
      'length',
    );
    expect(result).toMatchObject({ kind: 'known', halfWidth: 0.015, degreesOfFreedom: 'infinite' });
    expect(result.kind === 'known' && result.standardUncertainty).toBeCloseTo(0.0086603, 7);
  });

  it('of a class 1.6 gauge over 100 kPa is 1.6 kPa anywhere on the scale, in whatever unit it is read', () => {
    const model = {
      kind: 'accuracyClassOfSpan',
      accuracyClass: '1.6',
      span: { value: '1', unit: 'bar' },
    } as const;
    for (const reading of [
      { value: '2', unit: 'kPa' },
      { value: '20', unit: "[in_i'Hg]" },
    ] as const) {
      expect(instrumentUncertainty(model, reading, 'vacuum')).toMatchObject({ halfWidth: 1.6 });
    }
  });

  it('of a voltmeter is percent of the reading and digits: 0.5 % + 3 digits of 0.01 V at 12.60 V are 0.093 V', () => {
    const model = {
      kind: 'percentOfReadingPlusDigits',
      percent: '0.5',
      digits: 3,
      digit: { value: '0.01', unit: 'V' },
    } as const;
    const at = (value: string): unknown => instrumentUncertainty(model, { value, unit: 'V' }, 'voltage');
    expect((at('12.60') as { halfWidth: number }).halfWidth).toBeCloseTo(0.093, 12);
    expect(at('-12.60')).toEqual(at('12.60'));
  });

  it('of a feeler blade is its tolerance, and of a certificate the expanded uncertainty divided by its factor', () => {
    const blades = {
      kind: 'bladeSet',
      blades: [{ value: '0.07', unit: 'mm' }],
      permissibleError: { value: '0.005', unit: 'mm' },
    } as const;
    const blade = instrumentUncertainty(blades, { value: '0.07', unit: 'mm' }, 'length');
    expect(blade.kind === 'known' && blade.standardUncertainty).toBeCloseTo(0.0028868, 7);
    const certificate = instrumentUncertainty(
      {
        kind: 'expandedUncertainty',
        expanded: { value: '0.04', unit: 'mm' },
        coverageFactor: 2,
        degreesOfFreedom: 12,
      },
      { value: '1', unit: 'mm' },
      'length',
    );
    expect(certificate).toEqual({
      kind: 'known',
      standardUncertainty: 0.02,
      degreesOfFreedom: 12,
      halfWidth: null,
    });
  });

  it('is unknown for an unknown model and on a scale without fixed steps, and never zero by default', () => {
    expect(instrumentUncertainty({ kind: 'unknown' }, { value: '1', unit: 'mm' }, 'length')).toEqual({
      kind: 'unknown',
      why: 'errorModelUnknown',
    });
    const model = { kind: 'maximumPermissibleError', limit: { value: '1', unit: 'km/L' } } as const;
    expect(instrumentUncertainty(model, { value: '20', unit: 'km/L' }, 'fuelConsumption')).toMatchObject({
      why: 'scaleNotLinear',
    });
  });

  it('refuses a negative bound and a factor that is not positive', () => {
    const reading = { value: '1', unit: 'kPa' } as const;
    const span = { value: '100', unit: 'kPa' } as const;
    expect(() =>
      instrumentUncertainty({ kind: 'accuracyClassOfSpan', accuracyClass: '-1', span }, reading, 'vacuum'),
    ).toThrow(RangeError);
    const certificate = {
      kind: 'expandedUncertainty',
      expanded: span,
      coverageFactor: 0,
      degreesOfFreedom: 5,
    } as const;
    for (const coverageFactor of [0, Infinity, Number.NaN])
      expect(() => instrumentUncertainty({ ...certificate, coverageFactor }, reading, 'vacuum')).toThrow(
        RangeError,
      );
    for (const accuracyClass of ['', '1,6', '0x1'])
      expect(() =>
        instrumentUncertainty({ kind: 'accuracyClassOfSpan', accuracyClass, span }, reading, 'vacuum'),
      ).toThrow(RangeError);
  });
});

describe('calibration on a day', () => {
  const record: CalibrationRecord = { lastCalibratedOn: '2024-02-29', intervalDays: 366 };

  it('is due on the last day and overdue from the next: 29 February 2024 and 366 days make 1 March 2025', () => {
    expect(calibrationStatus(record, '2025-02-28', 0)).toEqual({
      kind: 'inCalibration',
      dueOn: '2025-03-01',
      daysLeft: 1,
    });
    expect(calibrationStatus(record, '2025-03-01', 0)).toEqual({
      kind: 'due',
      dueOn: '2025-03-01',
      daysLeft: 0,
    });
    expect(calibrationStatus(record, '2025-03-02', 0)).toEqual({
      kind: 'overdue',
      dueOn: '2025-03-01',
      daysOver: 1,
    });
    expect(calibrationStatus(record, '2025-02-15', 14)).toMatchObject({ kind: 'due', daysLeft: 14 });
  });

  it('is unknown without a calibration, without an interval, and before the calibration on record', () => {
    expect(calibrationStatus({ ...record, lastCalibratedOn: null }, '2025-01-01', 0)).toEqual({
      kind: 'neverCalibrated',
    });
    expect(calibrationStatus({ ...record, intervalDays: null }, '2025-01-01', 0).kind).toBe('noInterval');
    expect(calibrationStatus(record, '2024-02-28', 0).kind).toBe('calibratedLater');
  });

  it('refuses dates that do not exist and intervals that are none', () => {
    for (const asOf of ['2025-02-29', '2025-13-01', '25-01-01', 'today']) {
      expect(() => calibrationStatus(record, asOf, 0)).toThrow(RangeError);
    }
    expect(() => calibrationStatus({ ...record, intervalDays: 0 }, '2025-01-01', 0)).toThrow(RangeError);
    expect(() => calibrationStatus(record, '2025-01-01', -1)).toThrow(RangeError);
  });
});
