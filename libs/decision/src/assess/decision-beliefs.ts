import { addComebackChances, comebackChance, comebackFeatures } from '../comeback/comeback-predictor.js';
import type { FunctionalEvidence } from '../comeback/comeback-predictor.js';
import { coefficientDesign } from '../comeback/coefficient-draws.js';
import { estimatedRateWeights, populationRateWeights, rateNodes } from '../belief/rate-belief.js';
import type { EstimatedRate } from '../belief/rate-belief.js';
import type { EarlierReading, Growth, PartBelief } from '../belief/part-belief.js';
import { beforeReading, believedPart, gammaGrowth } from '../belief/part-belief.js';
import { adjustingLogOdds, comebacksLikelihood } from '../comeback/adjusting-causes.js';
import { complaintLikelihood } from '../belief/complaint-evidence.js';
import { functionalLikelihood, populationWeights, wearBelief } from '../belief/wear-belief.js';
import type { WearReading } from '../belief/wear-belief.js';
import { recalled } from '../memo/recalled.js';
import { criterionWear, stepsAtNodes, wearNodes, wearShare } from '../belief/wear-grid.js';
import { startingPlaces } from '../look-ahead/look-ahead-world.js';
import type { RenewalInWorld } from '../look-ahead/look-ahead-world.js';
import { exp, logistic } from '../portable/elementary.js';
import type { RepairCandidate } from '../pricing/repair-candidate.js';
import type { AssessmentInput } from '../terms/assessment-input.js';
import type { LearnedTables } from '../tables/learned-tables.js';
import type { RenewingAction } from '../terms/option-actions.js';

const LONGEST_PLAN_IN_STEPS = 60;
const MOST_COUNTS = 20;

/** What an assessment believes before any price is looked at. */
export interface DecisionBeliefs {
  readonly input: AssessmentInput;
  readonly design: readonly Float64Array[];
  readonly functional: FunctionalEvidence;
  readonly reading: WearReading | null;
  readonly rates: Float64Array;
  /** tells these rates from others that the same tables may lead to */
  readonly ratesKey: string;
  /** of the part now fitted, before the present reading, over rate x node */
  readonly before: Float64Array;
  /** all that speaks for more or less wear besides readings, by wear node */
  readonly nodeEvidence: Float64Array;
  readonly steps: number;
  readonly stepKm: number;
  readonly increments: readonly Float64Array[];
  readonly complaint: Float64Array;
  readonly plannedVisit: readonly boolean[];
}

function requireDistance(name: string, km: number, isZeroAllowed: boolean): void {
  if (!Number.isFinite(km) || km < 0 || (km === 0 && !isZeroAllowed)) {
    throw new RangeError(`${name} is a finite distance, got ${km}`);
  }
}

function functionalEvidence({ functionalCriterion }: AssessmentInput['evidence']): FunctionalEvidence {
  if (functionalCriterion.kind === 'notDone' || !functionalCriterion.isValid) return 'none';
  return functionalCriterion.kind;
}

function readingOf({ evidence, characteristic }: AssessmentInput): WearReading | null {
  if (evidence.wearNow.kind !== 'measured') return null;
  const { value, standardUncertainty } = evidence.wearNow;
  if (!Number.isFinite(standardUncertainty) || standardUncertainty < 0) {
    throw new RangeError(`a standard uncertainty is finite and not negative, got ${standardUncertainty}`);
  }
  return {
    share: wearShare(value, characteristic),
    standardUncertainty: standardUncertainty / criterionWear(characteristic),
  };
}

function estimateOf({ evidence, characteristic }: AssessmentInput): EstimatedRate | null {
  if (evidence.wearRate.kind !== 'estimated') return null;
  const { perThousandKm, standardError } = evidence.wearRate;
  if (!Number.isFinite(perThousandKm) || !Number.isFinite(standardError) || standardError < 0) {
    throw new RangeError('an estimated rate is finite and its standard error not negative');
  }
  const perCriterion = 100 / criterionWear(characteristic);
  return { mean: perThousandKm * perCriterion, standardError: standardError * perCriterion };
}

function plannedVisits(steps: number, stepKm: number, intervalKm: number | null): readonly boolean[] {
  if (intervalKm === null) return Array.from({ length: steps }, () => false);
  requireDistance('a service interval', intervalKm, false);
  // A hair is added, so that a visit that falls on a step exactly is not lost to rounding.
  const visits = (position: number) => Math.floor((position * stepKm) / intervalKm + 1e-9);
  return Array.from(
    { length: steps },
    (_, position) => position > 0 && visits(position) > visits(position - 1),
  );
}

function earlierOf({ evidence, characteristic }: AssessmentInput): readonly EarlierReading[] | null {
  if (evidence.wearNow.kind !== 'measured' || evidence.wearNow.earlier === undefined) return null;
  return evidence.wearNow.earlier.map(({ kmBefore, value, standardUncertainty }) => ({
    kmBefore,
    share: wearShare(value, characteristic),
    standardUncertainty: standardUncertainty / criterionWear(characteristic),
  }));
}

/** What speaks for wear besides readings: the functional criterion, the complaint itself, and that adjusting did not hold. */
function nodeEvidenceOf(input: AssessmentInput): Float64Array {
  const { tables, evidence, occasion } = input;
  const likelihood = functionalLikelihood(functionalEvidence(evidence), tables.functionalWidth);
  if (occasion === 'serviceVisit') return likelihood;
  const complaint = complaintLikelihood(tables.complaints);
  const comebacks = comebacksLikelihood(tables, evidence.earlierComebacks.count);
  return likelihood.map((value, i) => value * complaint[i]! * comebacks[i]!);
}

/**
 * Turns evidence and tables into weights over wear and rate, and the plan into equal steps of about one watch window.
 *
 * @param input  the assessment
 * @returns beliefs, free of money
 * @throws RangeError on numbers that are not finite or out of range
 */
export function decisionBeliefs(input: AssessmentInput): DecisionBeliefs {
  const { tables, planningDistanceKm, watchWindowKm } = input;
  requireDistance('a planning distance', planningDistanceKm, true);
  requireDistance('a watch window', watchWindowKm, false);
  const wished = Math.max(1, Math.round(planningDistanceKm / watchWindowKm));
  const steps = planningDistanceKm === 0 ? 0 : Math.min(LONGEST_PLAN_IN_STEPS, wished);
  const stepKm = steps === 0 ? 0 : planningDistanceKm / steps;
  const earlier = earlierOf(input);
  const estimate = earlier === null ? estimateOf(input) : null;
  const populations = [tables.wear.fittedPart, ...Object.values(tables.wear.byAction)].map(
    ({ rate }) => rate,
  );
  const rates = rateNodes(populations, estimate);
  const share = stepKm / 100_000;
  const { otherCausesRate, wornRate, onsetWidth } = tables.complaints;
  const design = coefficientDesign(tables.comeback);
  const reading = readingOf(input);
  const rateWeights =
    estimate === null
      ? populationRateWeights(rates, tables.wear.fittedPart.rate)
      : estimatedRateWeights(rates, estimate);
  const ratesKey = estimate === null ? '' : JSON.stringify(estimate);
  const growth: Growth = (km) =>
    recalled(tables, `growth ${km} ${ratesKey}`, () => gammaGrowth(rates, tables.wear.incrementScale, km));
  return {
    input,
    design,
    functional: functionalEvidence(input.evidence),
    reading,
    rates,
    ratesKey,
    before: beforeReading(tables.wear, rateWeights, earlier ?? [], reading !== null, growth),
    nodeEvidence: nodeEvidenceOf(input),
    steps,
    stepKm,
    increments: growth(stepKm),
    complaint: wearNodes.map(
      (wear) => 1 - exp(-(otherCausesRate + wornRate * logistic((wear - 1) / onsetWidth)) * share),
    ),
    plannedVisit: plannedVisits(steps, stepKm, input.serviceIntervalKm),
  };
}

/**
 * What is believed of the part now fitted.
 *
 * @param beliefs  of the assessment
 * @param reading  instead of the one that was taken, to ask what another would change
 * @returns weights over wear and rate
 */
export function partNow(
  { before, nodeEvidence, reading: taken }: DecisionBeliefs,
  reading: WearReading | null = taken,
): PartBelief {
  return believedPart(before, reading, nodeEvidence);
}

/** What the coefficients correct for a repair that keeps the wear, by wear node. */
export function keptLogOdds(
  tables: LearnedTables,
  action: 'leave' | 'adjust',
  earlierComebacks: number,
): Float64Array {
  return action === 'adjust'
    ? adjustingLogOdds(tables, earlierComebacks)
    : new Float64Array(wearNodes.length);
}

/**
 * Chances of a comeback for a repair that keeps the wear, by wear node, averaged over the doubt about the coefficients.
 *
 * @param design      coefficients to average over
 * @param tables      chances of adjusting by cause, which the coefficients correct
 * @param action      leave or adjust
 * @param functional  criterion as it was judged; none for a later complaint
 * @param earlierComebacks  of the same complaint
 * @returns one chance a node, rising with wear
 */
export function chancesAtNodes(
  design: readonly Float64Array[],
  tables: LearnedTables,
  action: 'leave' | 'adjust',
  functional: FunctionalEvidence,
  earlierComebacks: number,
): Float64Array {
  return recalled(tables, `kept ${action} ${functional} ${earlierComebacks}`, () => {
    const context = { action, condition: null, arrivalStep: 0, functional, earlierComebacks };
    const features = comebackFeatures(context, [0, 0, 0]);
    const sums = new Float64Array(wearNodes.length);
    const logOdds = keptLogOdds(tables, action, earlierComebacks);
    for (const coefficients of design)
      addComebackChances(coefficients, features, stepsAtNodes, logOdds, sums);
    return sums.map((sum) => sum / design.length);
  });
}

/** A part as it will be just after it was fitted. */
export interface FittedStart {
  /** tells it from other starts that the same tables may lead to */
  readonly key: string;
  readonly start: Float64Array;
  readonly rates: Float64Array;
  readonly places: Pick<RenewalInWorld, 'places' | 'weights'>;
  readonly features: (earlierComebacks: number) => Float64Array;
  /** of a comeback, averaged over the doubt about the coefficients */
  readonly chance: (earlierComebacks: number) => number;
}

/**
 * Start and rate of the part a candidate fits: its population's, or as measured on arrival.
 *
 * @param beliefs    of the assessment
 * @param candidate  a renewing candidate
 * @returns weights, and the features of its comeback chance
 */
export function fittedStart(beliefs: DecisionBeliefs, candidate: RepairCandidate): FittedStart {
  const key = `start ${startKey(candidate)} ${JSON.stringify(beliefs.input.characteristic)} ${beliefs.ratesKey}`;
  return recalled(beliefs.input.tables, key, () => ({ key, ...startOf(beliefs, candidate) }));
}

/** Tells where a candidate's part starts from where others do, for given tables and a given characteristic. */
export function startKey({ action, condition, arrivalWear }: RepairCandidate): string {
  const arrival =
    arrivalWear.kind === 'notMeasured' ? '' : `${arrivalWear.value} ${arrivalWear.standardUncertainty}`;
  return `${action} ${String(condition)} ${arrival}`;
}

function startOf(beliefs: DecisionBeliefs, candidate: RepairCandidate): Omit<FittedStart, 'key'> {
  const { characteristic, tables } = beliefs.input;
  const population = tables.wear.byAction[candidate.action as RenewingAction];
  const { arrivalWear } = candidate;
  const start =
    arrivalWear.kind === 'notMeasured'
      ? populationWeights(population.start)
      : wearBelief(
          population.start,
          {
            share: wearShare(arrivalWear.value, characteristic),
            standardUncertainty: arrivalWear.standardUncertainty / criterionWear(characteristic),
          },
          'none',
          tables.functionalWidth,
        );
  const arrivalStep = start.reduce((sum, weight, i) => sum + weight * stepsAtNodes[i]![1], 0);
  const rates = populationRateWeights(beliefs.rates, population.rate);
  const features = (earlierComebacks: number) =>
    comebackFeatures(
      {
        action: candidate.action,
        condition: candidate.condition,
        arrivalStep,
        functional: 'none',
        earlierComebacks,
      },
      [0, 0, 0],
    );
  const chances = new Map<number, number>();
  return {
    start,
    rates,
    places: startingPlaces(start, rates),
    features,
    chance: (earlierComebacks) => {
      const known = chances.get(earlierComebacks);
      if (known !== undefined) return known;
      const made = averageChance(beliefs.design, features(earlierComebacks));
      if (chances.size < MOST_COUNTS) chances.set(earlierComebacks, made);
      return made;
    },
  };
}

/** Chance of a comeback averaged over the doubt about the coefficients. */
function averageChance(design: readonly Float64Array[], features: Float64Array): number {
  return (
    design.reduce((sum, coefficients) => sum + comebackChance(coefficients, features), 0) / design.length
  );
}
