import type {
  CalibrationList,
  CalibrationResponse,
  CalibrationStandingDto,
  InstrumentListItem,
  InstrumentPropertiesDto,
  InstrumentResponse,
} from '@endfloat/contracts';
import type {
  CalibrationRecord,
  CalibrationsOfInstrument,
  CalibrationStanding,
  Instrument,
  InstrumentRecord,
  InstrumentView,
} from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';

export function presentInstrument(record: InstrumentRecord): InstrumentResponse {
  const { kind, name, serial, retiredOn, properties } = record.content;
  return {
    ...presentRecorded(record),
    kind: kind as InstrumentResponse['kind'],
    name,
    serial,
    retiredOn,
    ...presentProperties(properties),
  };
}

function presentProperties({ errorModel, resolution }: Instrument['properties']): InstrumentPropertiesDto {
  if (errorModel.kind === 'expandedUncertainty') {
    const { degreesOfFreedom } = errorModel;
    return {
      errorModel: {
        ...errorModel,
        degreesOfFreedom: degreesOfFreedom === 'infinite' ? null : degreesOfFreedom,
      },
      resolution,
    };
  }
  if (errorModel.kind === 'bladeSet')
    return { errorModel: { ...errorModel, blades: [...errorModel.blades] }, resolution };
  return { errorModel: { ...errorModel }, resolution };
}

export function presentInstrumentView({ record, standing }: InstrumentView): InstrumentListItem {
  return { ...presentInstrument(record), standing: presentStanding(standing) };
}

function presentStanding(standing: CalibrationStanding): CalibrationStandingDto {
  switch (standing.kind) {
    case 'inCalibration':
    case 'due':
      return { kind: standing.kind, dueOn: standing.dueOn, daysLeft: standing.daysLeft };
    case 'overdue':
      return { kind: standing.kind, dueOn: standing.dueOn, daysLeft: -standing.daysOver };
    case 'calibratedLater':
      return { kind: 'neverCalibrated', dueOn: null, daysLeft: null };
    case 'neverCalibrated':
    case 'noInterval':
    case 'failed':
      return { kind: standing.kind, dueOn: null, daysLeft: null };
  }
}

export function presentCalibration(record: CalibrationRecord): CalibrationResponse {
  const { calibratedOn, dueOn, passed, certificate, note } = record.content;
  return {
    ...presentRecorded(record),
    instrumentId: record.identity.instrumentId,
    calibratedOn,
    dueOn,
    passed,
    certificate,
    note,
  };
}

export function presentCalibrations({ standing, calibrations }: CalibrationsOfInstrument): CalibrationList {
  return { standing: presentStanding(standing), items: calibrations.map(presentCalibration) };
}
