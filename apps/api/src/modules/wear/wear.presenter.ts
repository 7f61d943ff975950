import type {
  CharacteristicWearDto,
  FleetWearDto,
  PartWearResponse,
  WearChanceCaseDto,
  WearOutlookDto,
  WearSeriesDto,
} from '@endfloat/contracts';
import type { FleetWear, PartWear, WearChance, WearOutlook, WearView } from '@endfloat/workshop';
import { presentWearTrend, wearMethod } from './wear-trend.presenter.js';

export function presentPartWear({ part, characteristics }: PartWear): PartWearResponse {
  const { componentType, position } = part.content;
  return {
    fittedPartId: part.id,
    vehicleId: part.identity.vehicleId,
    componentType,
    position,
    characteristics: characteristics.map(({ found, fleet, views }): CharacteristicWearDto => ({
      characteristic: found.characteristic.id,
      name: found.characteristic.name,
      fleet: fleet === null ? null : presentFleet(fleet),
      series: views.map(presentSeries),
    })),
  };
}

export function presentOutlook({ vehicleId, vehicle, view }: WearOutlook): WearOutlookDto {
  return {
    ...presentSeries(view),
    vehicleId,
    label: vehicle.label,
    plate: vehicle.plate,
    position: view.series.part.content.position,
  };
}

export function presentFleet({ fit, partsOfKind, partsLookedAt, partsWithPoints }: FleetWear): FleetWearDto {
  return { partsOfKind, partsLookedAt, partsWithPoints, model: presentFit(fit) };
}

function presentFit(fit: FleetWear['fit']): FleetWearDto['model'] {
  switch (fit.kind) {
    case 'estimated': {
      // Levels of the model are turned so that wear rises.
      const sign = fit.direction === 'rising' ? 1 : -1;
      const { start, logRate } = fit.model;
      return {
        kind: 'estimated',
        points: fit.points,
        startMean: sign * start.mean,
        startSd: start.sd,
        medianRatePerThousandKm: 1000 * Math.exp(logRate.mean),
        logRateSd: logRate.sd,
      };
    }
    case 'insufficientData':
      return { kind: 'insufficientData', of: fit.of, needed: fit.needed, got: fit.got };
    case 'wearWithinUncertainty':
      return { kind: 'wearWithinUncertainty', parts: fit.parts, points: fit.points };
    case 'notConverged':
      return { kind: 'notConverged', iterations: fit.iterations, reason: fit.reason };
  }
}

function presentSeries({ found, series, limit, outcome, chance }: WearView): WearSeriesDto {
  const { unit, direction, characteristic } = found;
  return {
    fittedPartId: series.part.id,
    place: series.place,
    characteristic: characteristic.id,
    unit,
    direction,
    limit:
      limit === null
        ? null
        : { limitId: limit.limitId, value: limit.value, unit, origin: limit.origin, source: limit.source },
    method: wearMethod,
    readings: series.readings,
    gaugeStudyIds: series.gaugeStudyIds,
    points: series.points.map((point) => ({
      km: point.km,
      value: point.value,
      standardUncertainty: point.u,
      instrumentId: point.instrumentId,
      biasStandardUncertainty: point.biasU,
      isInstrumentOverdue: point.instrumentOverdue === true,
      isOtherInstrument: point.instrumentId !== series.mainInstrumentId,
    })),
    leftOut: series.leftOut,
    trend: presentWearTrend(outcome),
    chance: chance === null ? null : presentChance(chance),
  };
}

function presentChance(chance: WearChance): WearChanceCaseDto {
  if (chance.kind !== 'estimated') return { kind: chance.kind };
  const { probability, until, yearlyDistance } = chance;
  return {
    kind: 'estimated',
    probability,
    withinKm: until.kind === 'distance' ? until.km : null,
    until: until.kind === 'day' ? until.day : null,
    yearlyDistance:
      yearlyDistance === null
        ? null
        : {
            kmPerYear: yearlyDistance.kmPerYear,
            standardUncertainty: yearlyDistance.u,
            basis: yearlyDistance.basis,
          },
  };
}
