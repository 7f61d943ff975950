import type { OptionAssessment, PricedOption } from '@endfloat/decision';
import { moneyFromNumber, type Money } from '@endfloat/metrology';
import {
  brierScore,
  reliabilityTable,
  studentTQuantile,
  type BrierScore,
  type ReliabilityTable,
} from '@endfloat/statistics';
import type { AssessedRepair, ReleasedJobHistory } from '../ports/learning-history.port.js';
import { doneActionAt, watchOutcomeOf } from './learning/comeback-outcomes.js';
import { watchedOf } from './learning/watched.js';

/** What became of a decision that cannot be looked at yet, or ever. */
export const backTestOmissions = [
  'pending',
  'notSeenSince',
  'comebackNotSettled',
  'notDecided',
  'handedOverUnrepaired',
  'workNotRecorded',
  'otherWorkDone',
  'notPriced',
  'otherCurrency',
] as const;
export type BackTestOmission = (typeof backTestOmissions)[number];

/** Rules that are compared with what was chosen. */
export const backTestRules = [
  'recommended',
  'alwaysAdjust',
  'alwaysReplace',
  'replaceAtCriterion',
  'replaceAtThreeQuarters',
  'functionalCriterionAlone',
] as const;
export type BackTestRule = (typeof backTestRules)[number];

/** Mean of paired differences with its 90 % interval. */
export type MeanDifference =
  | {
      readonly kind: 'estimated';
      readonly mean: Money;
      readonly standardError: Money;
      readonly lower: Money;
      readonly upper: Money;
      readonly decisions: number;
    }
  | { readonly kind: 'insufficientData'; readonly needed: number; readonly got: number };

export interface RuleOutcome {
  readonly rule: BackTestRule;
  readonly decisions: number;
  /** mean expected cost by the model of what the rule would have done; null without a decision */
  readonly meanExpectedCost: Money | null;
  /** rule less chosen, decision by decision: above zero the rule would have been dearer */
  readonly dearerThanChosen: MeanDifference;
  /** decisions in which the rule would have done the same: only there its outcome was seen */
  readonly sameAsChosen: number;
  /** decisions in which a guard or a missing price turned the rule to the cheapest option left */
  readonly turnedAside: number;
}

export interface BackTest {
  readonly settled: number;
  readonly comebacks: number;
  readonly omitted: Readonly<Partial<Record<BackTestOmission, number>>>;
  readonly brier:
    BrierScore | { readonly kind: 'insufficientData'; readonly needed: number; readonly got: number };
  readonly reliability:
    ReliabilityTable | { readonly kind: 'insufficientData'; readonly needed: number; readonly got: number };
  readonly chosen: {
    readonly meanExpectedCost: Money | null;
    /** mean of what each decision came to: with its comeback where it came back, without where it held */
    readonly meanRealisedCost: Money | null;
  };
  readonly rules: readonly RuleOutcome[];
}

interface SettledDecision {
  readonly assessed: AssessedRepair;
  readonly chosen: PricedOption;
  readonly cameBack: boolean;
}

/** Classes of the reliability table: comebacks of good repairs are rare, so the lower classes are narrow. Judgement. */
const borders = [0.05, 0.1, 0.2, 0.4, 0.7] as const;

/**
 * Looks back at decisions whose watch window has elapsed: predicted against observed comebacks, and what each fixed rule
 * would have cost on the same vans by the model of then. The outcome of the chosen option was seen, those of the others
 * never: their costs are the model's, so the comparison of rules cannot prove the model itself; the calibration can.
 *
 * @param jobs      released jobs
 * @param assessed  their assessments, options included, each with what was chosen
 * @param given     moment looked back from, and the currency reckoned in
 * @returns counts, Brier score, reliability table with Wilson intervals, and costs
 * @source Brier (1950); Murphy (1973); Wilson (1927); paired differences with Student's t
 */
export function backTest(
  jobs: readonly ReleasedJobHistory[],
  assessed: readonly AssessedRepair[],
  given: { readonly until: string; readonly currency: string },
): BackTest {
  const byId = new Map(jobs.map((job) => [job.jobId, job]));
  const omitted: Partial<Record<BackTestOmission, number>> = {};
  const settled: SettledDecision[] = [];
  for (const each of assessed) {
    const job = byId.get(each.jobId);
    if (job === undefined) continue;
    const found = settledDecision(job, each, given);
    if (typeof found === 'string') omitted[found] = (omitted[found] ?? 0) + 1;
    else settled.push(found);
  }
  const forecasts = settled.map(({ chosen, cameBack }) => ({
    probability: chosen.comeback.probability,
    occurred: cameBack,
  }));
  return {
    settled: settled.length,
    comebacks: settled.filter(({ cameBack }) => cameBack).length,
    omitted,
    brier: brierScore(forecasts),
    reliability: reliabilityTable(forecasts, { borders, confidence: 0.9 }),
    chosen: {
      meanExpectedCost: meanMoney(
        settled.map(({ chosen }) => amountOf(chosen)),
        given.currency,
      ),
      meanRealisedCost: meanMoney(settled.map(realisedCost), given.currency),
    },
    rules: backTestRules.map((rule) => outcomeOf(rule, settled, given.currency)),
  };
}

function settledDecision(
  job: ReleasedJobHistory,
  assessed: AssessedRepair,
  { until, currency }: { readonly until: string; readonly currency: string },
): SettledDecision | BackTestOmission {
  if (assessed.chosen === null) return 'notDecided';
  if (assessed.chosen === 'handOverUnrepaired') return 'handedOverUnrepaired';
  const chosen = assessed.options.find(({ optionId }) => optionId === assessed.chosen);
  if (chosen?.kind !== 'priced') return 'notPriced';
  if (chosen.expectedCost.currency !== currency) return 'otherCurrency';
  const done = doneActionAt(job, assessed);
  if (done === null) return 'workNotRecorded';
  if (done !== chosen.action) return 'otherWorkDone';
  const outcome = watchOutcomeOf(job, until);
  if (outcome === 'comebackNotSettled') return 'comebackNotSettled';
  if (typeof outcome === 'string' || outcome.kind === 'running')
    return watchedOf(job, until).standing === 'running' ? 'pending' : 'notSeenSince';
  return { assessed, chosen, cameBack: outcome.kind === 'comeback' };
}

const amountOf = ({ expectedCost }: PricedOption): number => Number(expectedCost.amount);

function realisedCost({ chosen: { outcomes }, cameBack }: SettledDecision): number {
  return Number((cameBack ? outcomes.withComeback : outcomes.withoutComeback).amount);
}

const meanOf = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;

function meanMoney(values: readonly number[], currency: string): Money | null {
  const mean = meanOf(values);
  return mean === null ? null : moneyFromNumber(mean, currency);
}

function outcomeOf(rule: BackTestRule, settled: readonly SettledDecision[], currency: string): RuleOutcome {
  const picks = settled.flatMap(({ assessed, chosen }) => {
    const wanted = wantedBy(rule, assessed);
    const usable = assessed.options.filter(isUsable);
    const direct = usable.find(({ optionId }) => optionId === wanted);
    const pick = direct ?? cheapestOf(usable);
    return pick === undefined ? [] : [{ pick, chosen, isTurned: direct === undefined }];
  });
  return {
    rule,
    decisions: picks.length,
    meanExpectedCost: meanMoney(
      picks.map(({ pick }) => amountOf(pick)),
      currency,
    ),
    dearerThanChosen: meanDifference(
      picks.map(({ pick, chosen }) => amountOf(pick) - amountOf(chosen)),
      currency,
    ),
    sameAsChosen: picks.filter(({ pick, chosen }) => pick.optionId === chosen.optionId).length,
    turnedAside: picks.filter(({ isTurned }) => isTurned).length,
  };
}

const isUsable = (option: OptionAssessment): option is PricedOption =>
  option.kind === 'priced' && option.isAdmissible;

function cheapestOf(options: readonly PricedOption[]): PricedOption | undefined {
  return [...options].sort((a, b) => amountOf(a) - amountOf(b))[0];
}

/** What a rule asks for; whether it can be had is looked at afterwards. */
function wantedBy(rule: BackTestRule, assessed: AssessedRepair): string | null {
  const { evidence, characteristic, recommendation } = assessed;
  const optionOf = (isReplacing: boolean): string | null => {
    const fitting = assessed.options
      .filter(isUsable)
      .filter(({ action }) => (isReplacing ? action.startsWith('fit') : action === 'adjust'));
    return cheapestOf(fitting)?.optionId ?? null;
  };
  const hasReached = (share: number): boolean => {
    if (evidence.wearNow.kind !== 'measured') return false;
    const { unwornSize, criterionSize } = characteristic;
    return (evidence.wearNow.value - unwornSize) / (criterionSize - unwornSize) >= share;
  };
  switch (rule) {
    case 'recommended':
      if (recommendation.kind === 'closeCall') return recommendation.optionIds[0] ?? null;
      return recommendation.kind === 'none' ? null : recommendation.optionId;
    case 'alwaysAdjust':
      return optionOf(false);
    case 'alwaysReplace':
      return optionOf(true);
    case 'replaceAtCriterion':
      return optionOf(hasReached(1));
    case 'replaceAtThreeQuarters':
      return optionOf(hasReached(0.75));
    case 'functionalCriterionAlone': {
      const { functionalCriterion } = evidence;
      return optionOf(functionalCriterion.kind === 'positive' && functionalCriterion.isValid);
    }
  }
}

function meanDifference(differences: readonly number[], currency: string): MeanDifference {
  const decisions = differences.length;
  const mean = meanOf(differences);
  if (mean === null || decisions < 2) return { kind: 'insufficientData', needed: 2, got: decisions };
  const squares = differences.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const standardError = Math.sqrt(squares / (decisions - 1) / decisions);
  const half = studentTQuantile(0.95, decisions - 1) * standardError;
  const money = (amount: number): Money => moneyFromNumber(amount, currency);
  return {
    kind: 'estimated',
    mean: money(mean),
    standardError: money(standardError),
    lower: money(mean - half),
    upper: money(mean + half),
    decisions,
  };
}
