import type { Recommendation, ValueOfFurtherReadings } from '../terms/assessment.js';
import type { AssessmentInput } from '../terms/assessment-input.js';
import { isConsentNeeded } from './guards.js';
import { admissible } from './evaluate-options.js';
import type { EvaluatedOption } from './evaluate-options.js';
import type { CandidateDraws } from './parameter-doubt.js';

/** Below this chance that the cheapest option is cheaper than another, the two are a close call; JUDGEMENT. */
export const closeCallChance = 0.6;

/**
 * Chance that the first option has the lesser expected cost; equal costs count half.
 *
 * @param first   draws of one
 * @param second  draws of the other, same length
 * @returns a share
 */
export function chanceCheaper(first: Float64Array, second: Float64Array): number {
  let wins = 0;
  first.forEach((cost, d) => (wins += cost < second[d]! ? 1 : cost === second[d] ? 0.5 : 0));
  return wins / first.length;
}

/** Chance of each option to be the cheapest of those given; equal costs share. */
export function chancesOfBeingCheapest(draws: readonly Float64Array[]): readonly number[] {
  const wins = draws.map(() => 0);
  const count = draws[0]?.length ?? 0;
  for (let d = 0; d < count; d += 1) {
    let least = Infinity;
    let winners = 0;
    for (const costs of draws) {
      const cost = costs[d]!;
      if (cost < least) {
        least = cost;
        winners = 1;
      } else if (cost === least) winners += 1;
    }
    for (let k = 0; k < draws.length; k += 1) if (draws[k]![d] === least) wins[k] = wins[k]! + 1 / winners;
  }
  return wins.map((count_) => count_ / Math.max(1, count));
}

/** Whether the measurement alone would carry a replacement: it is undecided, contradictory or missing. */
export function isMeasurementWeak({ evidence }: AssessmentInput): boolean {
  const { wearNow, functionalCriterion } = evidence;
  if (functionalCriterion.kind === 'positive' && functionalCriterion.isValid) return false;
  return wearNow.kind !== 'measured' || wearNow.verdict === 'undecided' || wearNow.verdict === 'notJudged';
}

/** Whether further readings come before a replacement that is, or may be, chosen on a weak measurement. */
function isToBeMeasuredFirst(
  inQuestion: readonly EvaluatedOption[],
  value: ValueOfFurtherReadings,
  input: AssessmentInput,
): boolean {
  const { furtherReadings, evidence } = input;
  if (value.kind === 'cannotBeSaid' || furtherReadings.kind === 'notAvailable' || furtherReadings.wereOffered)
    return false;
  const mightReplace = inQuestion.some(
    ({ option }) => option.action !== 'leave' && option.action !== 'adjust',
  );
  if (!mightReplace || !isMeasurementWeak(input)) return false;
  return evidence.wearNow.kind === 'contradictory' || value.kind === 'worthIt';
}

/**
 * The recommendation. An undecided (or missing) measurement is no reason to replace as long as further readings can be
 * had, are worth their cost and have not been offered; contradictory readings are repeated in any case. That holds too
 * where replacing is only one side of a close call.
 *
 * @param options  evaluated, cheapest first; all, removed ones too
 * @param draws    of each option's chosen candidate, by option id
 * @param value    of further readings
 * @param input    the assessment
 * @returns what to do
 */
export function recommend(
  options: readonly EvaluatedOption[],
  draws: ReadonlyMap<string, CandidateDraws>,
  value: ValueOfFurtherReadings,
  input: AssessmentInput,
): Recommendation {
  const left = admissible(options);
  const [best] = left;
  if (best === undefined) {
    if (input.options.length === 0) return { kind: 'none', why: 'noOptions' };
    return { kind: 'none', why: options.length === 0 ? 'nothingPriced' : 'nothingAdmissible' };
  }
  const { optionId } = best.option;
  const own = draws.get(optionId)!.costs;
  const close = left
    .slice(1)
    .filter(({ option }) => chanceCheaper(own, draws.get(option.optionId)!.costs) < closeCallChance);
  if (isToBeMeasuredFirst([best, ...close], value, input)) {
    return { kind: 'measureFirst', optionId, readings: value.kind === 'cannotBeSaid' ? 0 : value.readings };
  }
  const price = ({ chosen }: EvaluatedOption) => chosen.candidate.partPrice + chosen.candidate.labour;
  if (close.length === 0)
    return { kind: 'recommended', optionId, consentNeeded: isConsentNeeded(price(best), input) };
  return {
    kind: 'closeCall',
    optionIds: [best, ...close].map(({ option }) => option.optionId),
    consentNeeded: [best, ...close].some((option) => isConsentNeeded(price(option), input)),
  };
}
