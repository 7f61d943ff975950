import type { Assessment, GuardFinding, OptionAssessment, UnpricedOption } from '../terms/assessment.js';
import type { AssessmentInput } from '../terms/assessment-input.js';
import { commonPrices, priceOption } from '../pricing/price-options.js';
import type { PricedOffers } from '../pricing/price-options.js';
import type { CommonPrices } from '../pricing/repair-candidate.js';
import { chanceOfReaching, reachTable } from './criterion-reached.js';
import type { PartBelief } from '../belief/part-belief.js';
import { decisionBeliefs, partNow } from './decision-beliefs.js';
import type { DecisionBeliefs } from './decision-beliefs.js';
import { candidateKey, moneyFreeModel, pricedModel } from './decision-model.js';
import type { DecisionModel } from './decision-model.js';
import { admissible, evaluateOptions } from './evaluate-options.js';
import { flipPoints } from './flip-points.js';
import { nextLook } from './next-look.js';
import { removingGuards } from './guards.js';
import type { RemovingGuard } from './guards.js';
import { drawCount, drawExpectedCosts } from './parameter-doubt.js';
import { reasonsFor } from './reasons.js';
import { chancesOfBeingCheapest, isMeasurementWeak, recommend } from './recommend.js';
import { reportBelief } from './report-belief.js';
import { reportOption } from './report-option.js';
import { valueOfFurtherReadings } from './value-of-readings.js';

/** Version of the model; a change that moves any reported digit changes it. */
export const modelVersion = 'repair-or-replace-2';

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** How much an assessment works out: flip points solve the model some twenty times over. */
export const assessmentDepths = ['full', 'withoutFlipPoints'] as const;

/** A depth of `assessmentDepths`. */
export type AssessmentDepth = (typeof assessmentDepths)[number];

interface Guarded extends PricedOffers {
  readonly guards: readonly RemovingGuard[];
}

function guardedOffers(input: AssessmentInput, prices: CommonPrices | null): readonly Guarded[] {
  const ids = input.options.map(({ optionId }) => optionId);
  const offerIds = input.options.flatMap(({ offers }) => offers.map(({ offerId }) => offerId));
  if (new Set(ids).size !== ids.length) throw new RangeError('two options have one id');
  if (new Set(offerIds).size !== offerIds.length) throw new RangeError('two offers have one id');
  const ordered = input.options.toSorted((a, b) => byText(a.optionId, b.optionId));
  return ordered.map((option): Guarded => {
    const guards = removingGuards(option, input);
    if (prices === null) return { option, candidates: [], problems: [], unpricedOffers: [], guards };
    const priced = priceOption(option, input, prices);
    const candidates = priced.candidates.toSorted((a, b) => byText(candidateKey(a), candidateKey(b)));
    return { ...priced, candidates, guards };
  });
}

function unpriced(guarded: Guarded, problems: UnpricedOption['problems']): UnpricedOption {
  return {
    kind: 'cannotBePriced',
    optionId: guarded.option.optionId,
    action: guarded.option.action,
    removedBy: guarded.guards.map(({ code }) => code),
    problems,
  };
}

interface Frame {
  readonly input: AssessmentInput;
  readonly beliefs: DecisionBeliefs;
  readonly part: PartBelief;
  readonly guarded: readonly Guarded[];
  readonly prices: CommonPrices | null;
}

/** The answer where nothing can be priced: which option, and why. */
function withoutCosts(frame: Frame, options: readonly UnpricedOption[]): Assessment {
  const { input, part, prices } = frame;
  return {
    ...heading(frame),
    options,
    recommendation: { kind: 'none', why: options.length === 0 ? 'noOptions' : 'nothingPriced' },
    guards: frame.guarded.flatMap(({ guards }) => guards),
    flipPoints: [],
    furtherReadings: valueOfFurtherReadings([], part, input, prices),
    reasons: [],
    nextLook: null,
  };
}

function heading({ input, beliefs, part }: Frame) {
  return {
    modelVersion,
    tablesVersion: input.tables.version,
    tablesHash: input.tables.hash,
    seed: input.seed,
    draws: drawCount,
    belief: reportBelief(beliefs, part),
  };
}

function withCosts(
  frame: Frame,
  model: DecisionModel,
  withoutCost: readonly UnpricedOption[],
  depth: AssessmentDepth,
): Assessment {
  const { input, part, guarded, beliefs, prices } = frame;
  const priced = guarded.filter(({ candidates }) => candidates.length > 0);
  const options = evaluateOptions(
    model,
    priced.map(({ option, guards }) => ({ option, removedBy: guards.map(({ code }) => code) })),
    part,
    depth === 'full',
  );
  const drawn = new Map(
    drawExpectedCosts(model, part).map((draws) => [candidateKey(draws.candidate), draws]),
  );
  const draws = new Map(
    options.map(({ option, chosen }) => [option.optionId, drawn.get(candidateKey(chosen.candidate))!]),
  );
  const left = admissible(options);
  const chances = chancesOfBeingCheapest(left.map(({ option }) => draws.get(option.optionId)!.costs));
  const chanceOf = new Map(left.map(({ option }, k) => [option.optionId, chances[k]!]));
  const reach = reachTable(beliefs);
  const value = valueOfFurtherReadings(options, part, input, prices);
  const recommendation = recommend(options, draws, value, input);
  const bestId = left[0]?.option.optionId ?? null;
  const reports = options.map((evaluated): OptionAssessment =>
    reportOption({
      model,
      part,
      reach,
      offers: priced.find(({ option }) => option === evaluated.option)!,
      evaluated,
      draws: draws.get(evaluated.option.optionId)!,
      probabilityOfBeingCheapest: chanceOf.get(evaluated.option.optionId) ?? null,
    }),
  );
  const guards: GuardFinding[] = guarded.flatMap((option) => option.guards);
  const bestAction = left[0]?.option.action ?? 'leave';
  if (isMeasurementWeak(input) && bestAction !== 'leave' && bestAction !== 'adjust') {
    const { wearNow } = input.evidence;
    guards.push({
      code: 'undecidedReadingAlone',
      optionId: bestId,
      evidence: wearNow.kind === 'notMeasured' ? [] : wearNow.evidence,
    });
  }
  if ('consentNeeded' in recommendation && recommendation.consentNeeded) {
    guards.push({ code: 'consentNeeded', optionId: bestId, evidence: input.consent.evidence });
  }
  return {
    ...heading(frame),
    options: [...reports, ...withoutCost],
    recommendation,
    guards,
    flipPoints:
      bestId === null || depth === 'withoutFlipPoints' ? [] : flipPoints({ model, options, part, bestId }),
    furtherReadings: value,
    nextLook: nextLook(model, part),
    reasons: reasonsFor({
      model,
      options,
      wear: part.wear,
      reachesCriterion: chanceOfReaching(reach, part.places),
      recommendation,
      value,
    }),
  };
}

/**
 * What to do with a worn component: the expected cost of every option to the end of the owner's plan, comebacks, second
 * downtime, follow-up repairs and wear to come included; with its doubt, what would turn it, and whether measuring more
 * pays.
 *
 * The chance of a comeback is logistic in the wear left in, the functional criterion, the comebacks so far, the action and
 * the part's condition, with a normal belief over the coefficients. Wear grows by a gamma process. What lies after the
 * watch window is looked ahead by dynamic programming over distance, wear and rate; later decisions are taken as the best
 * ones. The interval and the chance of being cheapest express doubt about parameters (comeback coefficients, wear now, rate
 * now, mean lead time); the spread of outcomes stands apart. Guards hold whatever an option costs.
 *
 * Expected costs do not depend on the seed; intervals and chances of being cheapest do. Everything is computed from the
 * operations that are exact on every machine, and rounded at the very end: money at the currency's decimals (the expected
 * cost is the sum of its rounded components), shares at four decimals, sizes at four significant digits.
 *
 * @param input  evidence, prices, options and learned tables; the order of options, offers and ids never matters
 * @param depth  without flip points everything else is the same, some four times faster
 * @returns the assessment; an option that cannot be priced says why, with nothing priced the recommendation is `none`
 * @throws RangeError on numbers that are not finite or out of range, on two options or offers of one id, on a seed that is
 *   no 32-bit whole number, on tables of another size
 * @source model: own; gamma process: van Noortwijk (2009), Reliab. Eng. Syst. Saf. 94:2-21; numbers: the tables passed in
 * @oracle look-ahead against enumeration; closed forms without noise, wear or distance (assess-repair-or-replace.spec.ts)
 */
export function assessRepairOrReplace(input: AssessmentInput, depth: AssessmentDepth = 'full'): Assessment {
  const common = commonPrices(input);
  const prices = 'labourPerHour' in common ? common : null;
  const beliefs = decisionBeliefs(input);
  const frame: Frame = {
    input,
    beliefs,
    part: partNow(beliefs),
    guarded: guardedOffers(input, prices),
    prices,
  };
  if (!('labourPerHour' in common))
    return withoutCosts(
      frame,
      frame.guarded.map((option) => unpriced(option, common)),
    );
  const candidates = frame.guarded.flatMap((option) => option.candidates);
  const model = pricedModel(moneyFreeModel(beliefs, candidates), candidates, common, true);
  const withoutCost = frame.guarded
    .filter((option) => option.candidates.length === 0)
    .map((option) => unpriced(option, option.problems));
  if (model !== null) return withCosts(frame, model, withoutCost, depth);
  // Nothing renews the part: what follows a comeback has no price, and so no option has.
  const others = frame.guarded
    .filter((option) => option.candidates.length > 0)
    .map((option) => unpriced(option, [{ code: 'repairAfterComebackCannotBePriced', at: null }]));
  return withoutCosts(
    frame,
    [...others, ...withoutCost].sort((a, b) => byText(a.optionId, b.optionId)),
  );
}
