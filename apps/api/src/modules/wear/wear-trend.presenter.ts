import type {
  CalculationMethodDto,
  EstimatedWearDto,
  WearHandChecksDto,
  WearSeriesDto,
} from '@endfloat/contracts';
import type { HandChecks, WearTrend } from '@endfloat/wear';
import type { WearView } from '@endfloat/workshop';

export const wearMethod: CalculationMethodDto = {
  name: 'cumulativeWearWithMeasurementError',
  variant:
    'level = start + cumulative wear (variance in proportion to its mean) + bias of the instrument + error of the reading; start and rate of the part, their spread over the fleet by empirical Bayes; as-found readings of one fitted part only, mean of each inspection by each instrument',
  source:
    'van Noortwijk (2009), Reliab. Eng. Syst. Saf. 94:2-21; Lawless & Crowder (2004), Lifetime Data Analysis 10:213-227; Whitmore (1995), Lifetime Data Analysis 1:307-319',
};

export function presentWearTrend(outcome: WearView['outcome']): WearSeriesDto['trend'] {
  switch (outcome.kind) {
    case 'estimated':
      return presentEstimated(outcome);
    case 'insufficientData':
      return { kind: 'insufficientData', of: outcome.of, needed: outcome.needed, got: outcome.got };
    case 'riseWithinUncertainty':
      return {
        kind: 'riseWithinUncertainty',
        rise: outcome.rise,
        expandedUncertainty: outcome.expandedUncertainty,
      };
    case 'noWearLimit':
      return { kind: 'noWearLimit' };
  }
}

function presentEstimated(trend: WearTrend): EstimatedWearDto {
  const { level, rate, distanceToLimit, acceleration, extrapolation, confidence } = trend;
  return {
    kind: 'estimated',
    borrowed: trend.borrowed,
    nowKm: trend.nowKm,
    level: { value: level.value, standardUncertainty: level.u },
    rate: { perThousandKm: 1000 * rate.mean, lower: 1000 * rate.lower, upper: 1000 * rate.upper },
    distanceToLimit: {
      median: distanceToLimit.median,
      lower: distanceToLimit.lower,
      upper: distanceToLimit.upper,
      level: confidence,
    },
    reachedNow: trend.reachedNow,
    acceleration:
      acceleration.kind === 'tested'
        ? {
            kind: 'tested',
            z: acceleration.z,
            pAccelerating: acceleration.pAccelerating,
            pTwoSided: acceleration.pTwoSided,
            isAccelerating: acceleration.accelerating,
          }
        : acceleration,
    observedKm: extrapolation.observedKm,
    isBeyondData: extrapolation.beyondData,
    instruments: trend.instruments.map(({ instrumentId, points, bias, u }) => ({
      instrumentId,
      points,
      bias,
      standardUncertainty: u,
    })),
    handChecks: presentHandChecks(trend.handChecks, confidence),
  };
}

function presentHandChecks(checks: HandChecks, level: number): WearHandChecksDto {
  const { leastSquares, leastSquaresToLimit, theilSen, mannKendall } = checks;
  return {
    leastSquares:
      leastSquares.kind === 'estimated'
        ? {
            kind: 'estimated',
            slope: leastSquares.slope,
            slopeStandardError: leastSquares.slopeStandardError,
            intercept: leastSquares.intercept,
          }
        : leastSquares,
    leastSquaresToLimit,
    theilSen: theilSen.kind === 'estimated' ? { ...theilSen, level } : theilSen,
    mannKendall,
  };
}
