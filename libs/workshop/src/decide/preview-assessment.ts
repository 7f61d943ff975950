import {
  assessRepairOrReplace,
  canonicaliseAssessmentInput,
  type Assessment,
  type AssessmentDepth,
  type AssessmentInput,
  type LearnedTables,
  type WearingCharacteristic,
} from '@endfloat/decision';
import {
  conformanceProbability,
  defaultThresholds,
  outcomeOfProbability,
  parseMoney,
  type Money,
} from '@endfloat/metrology';
import { invalidInput } from '../errors/domain.errors.js';
import type { AssessmentSources, PreventiveAdvice } from '../ports/records/decide.records.js';
import { adviceOf } from './preventive-advice.js';
import { wearFindings, type MeasuredSet, type ReadingDoubt } from './wear-series.js';

/** As-found readings of one inspection, sent along. */
export interface InlineInspection {
  readonly kmSinceFitted: number | null;
  readonly instrument: string;
  readonly values: readonly number[];
  /** null: not known; such readings are never taken for exact and say nothing */
  readonly doubt: ReadingDoubt | null;
  readonly evidence: readonly string[];
}

/** One more set of readings as the caller could take it; null: none can be had. */
export interface InlineFurtherReadings {
  readonly count: number;
  readonly minutes: number;
  readonly wereOffered: boolean;
  /** for a part that was not measured yet */
  readonly doubt: ReadingDoubt | null;
}

export type PreviewCommand = Omit<AssessmentInput, 'tables' | 'evidence' | 'furtherReadings'> & {
  readonly evidence: Omit<AssessmentInput['evidence'], 'wearNow' | 'wearRate'>;
  /** oldest first */
  readonly inspections: readonly InlineInspection[];
  readonly furtherReadings: InlineFurtherReadings | null;
  readonly depth: AssessmentDepth;
};

export interface PreviewedAssessment {
  readonly result: Assessment;
  /** canonical text */
  readonly input: string;
  readonly sources: AssessmentSources;
  readonly advice: PreventiveAdvice | null;
}

/**
 * Assesses what it is sent, history and prices included. Pure: the same command and tables give the same answer.
 *
 * @throws DomainError `input.invalid` on input that cannot be assessed, with the place
 */
export function previewAssessment(command: PreviewCommand, tables: LearnedTables): PreviewedAssessment {
  refuseWrongInput(command);
  const { inspections, furtherReadings, evidence, depth, ...rest } = command;
  const sets = inspections.map((inspection) => measuredSet(inspection, command.characteristic));
  const findings = wearFindings(
    sets,
    command.characteristic,
    furtherReadings === null ? null : { ...furtherReadings, usualDoubt: furtherReadings.doubt },
  );
  const input: AssessmentInput = {
    ...rest,
    evidence: { ...evidence, wearNow: findings.wearNow, wearRate: findings.wearRate },
    furtherReadings: findings.furtherReadings,
    tables,
  };
  const deliveries = command.options
    .flatMap(({ offers }) => offers)
    .reduce((sum, { leadTime }) => sum + (leadTime.kind === 'toOrder' ? leadTime.delivered.length : 0), 0);
  const result = assessRepairOrReplace(input, depth);
  return {
    result,
    advice: adviceOf(result, input, findings),
    input: canonicaliseAssessmentInput(input),
    sources: {
      offersLeftOut: [],
      wearLeftOut: findings.leftOut,
      otherDangerousFindings: [],
      observations: { readings: findings.readings, wearPoints: findings.points, deliveries },
    },
  };
}

/** The verdict against the criterion's size, by the usual thresholds and with the doubt that was sent. */
function measuredSet(
  { kmSinceFitted, instrument, values, doubt, evidence }: InlineInspection,
  { direction, criterionSize, unwornSize }: WearingCharacteristic,
): MeasuredSet {
  const set = { km: kmSinceFitted, instrument, values, doubt, evidence };
  if (doubt === null) return { ...set, verdict: 'notJudged', isContradictory: false };
  const variance = (doubt.repeat * doubt.repeat) / values.length + doubt.setUp ** 2 + doubt.bias ** 2;
  if (variance === 0) return { ...set, doubt: null, verdict: 'notJudged', isContradictory: false };
  const isRising = direction === 'up';
  const inside = conformanceProbability({
    value: values.reduce((sum, value) => sum + value, 0) / values.length,
    standardUncertainty: Math.sqrt(variance),
    degreesOfFreedom: 'infinite',
    permitted: isRising ? { lower: null, upper: criterionSize } : { lower: criterionSize, upper: null },
    possible: isRising ? { lower: unwornSize, upper: null } : { lower: 0, upper: null },
    prior: null,
  });
  if (inside.kind === 'contradictsPhysicalBound')
    return { ...set, verdict: 'notJudged', isContradictory: true };
  const verdict = outcomeOfProbability(inside.inside, defaultThresholds);
  return { ...set, verdict, isContradictory: false };
}

function refuseWrongInput(command: PreviewCommand): void {
  const { characteristic, options, rates, consent } = command;
  const { direction, criterionSize, unwornSize } = characteristic;
  if (direction === 'up' ? criterionSize <= unwornSize : criterionSize >= unwornSize) {
    throw invalidInput(
      '/characteristic/criterionSize',
      'order',
      `A characteristic that goes ${direction} has its criterion on that side of the unworn size.`,
    );
  }
  if (!(command.watchWindowKm > 0))
    throw invalidInput('/watchWindowKm', 'range', 'A watch window is longer than 0 km.');
  if (command.serviceIntervalKm !== null && !(command.serviceIntervalKm > 0))
    throw invalidInput('/serviceIntervalKm', 'range', 'A service interval is longer than 0 km.');
  refuseTwice(
    options.map(({ optionId }) => optionId),
    '/options',
    'Two options have this id.',
  );
  refuseTwice(
    options.flatMap(({ offers }) => offers.map(({ offerId }) => offerId)),
    '/options',
    'Two offers have this id.',
  );
  for (const member of ['labourPerHour', 'downtimePerDay', 'comebackHandling'] as const)
    refuseNoMoney(rates[member], `/rates/${member}`);
  refuseNoMoney(consent.ceiling, '/consent/ceiling');
  options.forEach(({ offers }, o) => {
    offers.forEach(({ price, core }, k) => {
      const at = `/options/${String(o)}/offers/${String(k)}`;
      refuseNoMoney(price, `${at}/price`);
      refuseNoMoney(core?.deposit ?? null, `${at}/core/deposit`);
    });
  });
}

function refuseTwice(ids: readonly string[], pointer: string, detail: string): void {
  const twice = ids.find((id, index) => ids.indexOf(id) !== index);
  if (twice !== undefined) throw invalidInput(pointer, 'unique', `${detail} (${twice})`);
}

/** An amount that cannot be one; whether it makes sense is for the assessment to say, option by option. */
function refuseNoMoney(money: Money | null, pointer: string): void {
  if (money === null || parseMoney(money.amount, money.currency).kind === 'money') return;
  throw invalidInput(
    `${pointer}/amount`,
    'money',
    `Give an amount of ${money.currency} with no more decimals than the currency has.`,
  );
}
