import type {
  CalculationMethodDto,
  FleetComparisonResponse,
  FleetRecurrenceResponse,
  RecurrencePointDto,
  RecurrenceTrendDto,
  WatchOddityDto,
} from '@endfloat/contracts';
import type { FleetRecurrence, RecurrenceComparison, RecurrenceTrend } from '@endfloat/reliability';
import type { FleetComparisonView, FleetRecurrenceView, WatchOddity } from '@endfloat/workshop';

const source =
  'Nelson (1995), Technometrics 37:147-157; robust variance by Lawless & Nadeau (1995), Technometrics 37:158-168';

export function presentFleetRecurrence(view: FleetRecurrenceView): FleetRecurrenceResponse {
  return {
    of: view.of,
    recurrence: presentRecurrence(view.recurrence),
    trend: view.trend === null ? null : presentTrend(view.trend),
    withoutFirstUse: view.withoutFirstUse,
    neverWatched: view.neverWatched,
    oddities: view.oddities.map(presentOddity),
  };
}

export const presentOddity = ({ code, vehicleIds }: WatchOddity): WatchOddityDto => ({
  code,
  vehicleIds: [...vehicleIds],
});

function presentRecurrence(found: FleetRecurrence): FleetRecurrenceResponse['recurrence'] {
  switch (found.kind) {
    case 'insufficientData':
      return { kind: 'insufficientData', needed: found.needed, got: found.got };
    case 'noEvents':
      return { kind: 'noEvents', ...basisOf(found) };
    case 'estimated':
      return {
        kind: 'estimated',
        ...basisOf(found),
        method: found.method,
        source,
        level: found.level,
        events: found.events,
        points: found.points.map(({ age, atRisk, events, mean, standardError, plain, log }) => ({
          ageDays: age,
          atRisk,
          events,
          mean,
          standardError,
          plainLimits: plain,
          logLimits: log,
        })),
      };
  }
}

function basisOf({
  units,
  observedAge,
  unobservedEvents,
}: Exclude<FleetRecurrence, { kind: 'insufficientData' }>) {
  return { vehicles: units, observedDays: observedAge, unobservedEvents };
}

const trendMethod: CalculationMethodDto = {
  name: 'trendOfRecurrences',
  variant:
    'Laplace and MIL-HDBK-189 tests against a constant rate, two-sided; a stretch of observation that begins later counts from where it begins; power-law process by maximum likelihood with late starts and gaps, limits of the shape on its logarithm',
  source:
    'Ascher & Feingold (1984), Repairable Systems Reliability; MIL-HDBK-189 (1981), appendix C; Crow (1990), Technometrics 32',
};

function presentTrend({ laplace, powerLawTest, powerLaw }: RecurrenceTrend): RecurrenceTrendDto {
  return {
    laplace:
      laplace.kind === 'tested'
        ? {
            kind: 'tested',
            statistic: laplace.statistic,
            pValue: laplace.pValue,
            events: laplace.events,
          }
        : laplace,
    powerLawTest:
      powerLawTest.kind === 'tested'
        ? {
            kind: 'tested',
            chiSquare: powerLawTest.chiSquare,
            degreesOfFreedom: powerLawTest.degreesOfFreedom,
            pValue: powerLawTest.pValue,
          }
        : powerLawTest,
    powerLaw:
      powerLaw.kind === 'estimated'
        ? {
            kind: 'estimated',
            shape: powerLaw.shape,
            shapeLower: powerLaw.shapeLimits.lower,
            shapeUpper: powerLaw.shapeLimits.upper,
            rate: powerLaw.rate,
            level: powerLaw.level,
          }
        : powerLaw,
    method: trendMethod,
  };
}

const comparisonMethod: CalculationMethodDto = {
  name: 'differenceOfMeanCumulativeFunctions',
  variant:
    'first less second at the last age to which both were observed, standard error from the sum of the robust variances, two-sided normal test; limits along the curve are pointwise',
  source:
    'Doganaksoy & Nelson (1998), Lifetime Data Analysis 4:51-63; Nelson (2003), Recurrent Events Data Analysis, ch. 6',
};

export function presentFleetComparison(view: FleetComparisonView): FleetComparisonResponse {
  return {
    of: view.of,
    first: { vehicles: view.vehicles[0], events: view.events[0] },
    second: { vehicles: view.vehicles[1], events: view.events[1] },
    comparison: presentComparison(view.comparison),
    method: comparisonMethod,
  };
}

function presentComparison(found: RecurrenceComparison): FleetComparisonResponse['comparison'] {
  switch (found.kind) {
    case 'insufficientData':
      return { kind: 'insufficientData', of: 'vehicles of each fleet', needed: found.needed, got: found.got };
    case 'notComparable':
      return { kind: 'notComparable' };
    case 'noSpread':
      return { kind: 'noSpread', difference: found.difference };
    case 'tested': {
      const { curve, difference, standardError, statistic, pValue } = found;
      return {
        kind: 'tested',
        difference,
        standardError,
        statistic,
        pValue,
        level: curve.level,
        points: curve.ages.map((ageDays, place) => ({
          ageDays,
          difference: curve.difference[place] ?? 0,
          standardError: curve.standardErrors[place] ?? null,
          lower: curve.lower[place] ?? null,
          upper: curve.upper[place] ?? null,
        })),
      };
    }
  }
}

/** Points of the curve, for a table; none where it was not estimated. */
export const recurrencePoints = ({ recurrence }: FleetRecurrenceResponse): readonly RecurrencePointDto[] =>
  recurrence.kind === 'estimated' ? recurrence.points : [];
