import type {
  BackTestResponse,
  CostDifferenceDto,
  ReliabilityClassDto,
  RuleCostsDto,
  TooFewDecisionsDto,
} from '@endfloat/contracts';
import type { BackTestOmission, BackTestRule, BackTestView } from '@endfloat/workshop';

const omissionTexts: Readonly<Record<BackTestOmission, string>> = {
  pending: 'The watch window is still running: pending, neither held nor come back.',
  notSeenSince: 'The van was not seen after its window closed, so nobody knows.',
  comebackNotSettled: 'A later complaint may be its comeback, and nobody has confirmed or refused it yet.',
  notDecided: 'Nothing was decided before the release.',
  handedOverUnrepaired: 'The van was handed over unrepaired.',
  workNotRecorded: 'No work on the component is recorded, or the condition of the part is not.',
  otherWorkDone: 'Something else was done than was chosen.',
  notPriced: 'The chosen option had no price, so nothing was predicted.',
  otherCurrency: 'It was reckoned in another currency.',
};

const ruleTexts: Readonly<Record<BackTestRule, string>> = {
  recommended: 'do what the assessment recommends',
  alwaysAdjust: 'always clean and adjust',
  alwaysReplace: 'always fit another part, the one that costs least in the end',
  replaceAtCriterion: 'replace when the reading has reached the criterion, else adjust',
  replaceAtThreeQuarters: 'replace when the reading has reached three quarters of the criterion, else adjust',
  functionalCriterionAlone: 'replace when the functional criterion says so, else adjust',
};

const method = [
  'Predicted chance of a comeback of the chosen option, as the assessment stated it before the release, against confirmed comebacks; Brier score, and classes with Wilson intervals at 90 %.',
  'Only decisions whose window has elapsed with the van seen afterwards, or that came back, are counted; pending ones stand apart and are never successes.',
  'Only the outcome of the chosen option was seen. What the other options would have cost is what the model of then expected, so the comparison of rules cannot prove the model; the calibration above can.',
  'Rules obey the same guards: where a guard or a missing price bars what a rule asks for, it takes the cheapest option left. Differences are paired; intervals by Student’s t at 90 %.',
];

type Difference = BackTestView['rules'][number]['dearerThanChosen'];

export function presentBackTest(view: BackTestView): BackTestResponse {
  const { at, settled, comebacks, omitted, brier, reliability, chosen, rules } = view;
  return {
    at,
    settled,
    comebacks,
    omitted: Object.entries(omitted).map(([reason, count]) => ({
      reason,
      count: count ?? 0,
      detail: omissionTexts[reason as BackTestOmission],
    })),
    brier:
      brier.kind === 'estimated'
        ? {
            kind: 'estimated',
            score: brier.score,
            baseRate: brier.baseRate,
            referenceScore: brier.referenceScore,
            skill: brier.skill,
            decisions: brier.forecasts,
          }
        : tooFew(brier),
    reliability:
      reliability.kind === 'estimated'
        ? { kind: 'estimated', classes: reliability.rows.map(presentClass) }
        : tooFew(reliability),
    chosenMeanExpectedCost: chosen.meanExpectedCost,
    chosenMeanRealisedCost: chosen.meanRealisedCost,
    rules: rules.map((rule): RuleCostsDto => ({
      rule: rule.rule,
      title: ruleTexts[rule.rule],
      decisions: rule.decisions,
      meanExpectedCost: rule.meanExpectedCost,
      dearerThanChosen: presentDifference(rule.dearerThanChosen),
      sameAsChosen: rule.sameAsChosen,
      turnedAside: rule.turnedAside,
    })),
    method: [...method],
  };
}

const tooFew = ({ needed, got }: { readonly needed: number; readonly got: number }): TooFewDecisionsDto => ({
  kind: 'insufficientData',
  needed,
  got,
});

function presentDifference(difference: Difference): CostDifferenceDto | TooFewDecisionsDto {
  if (difference.kind === 'insufficientData') return tooFew(difference);
  const { mean, standardError, lower, upper, decisions } = difference;
  return {
    kind: 'estimated',
    mean,
    standardError,
    lower,
    upper,
    decisions,
  };
}

function presentClass({
  from,
  to,
  forecasts,
  occurred,
  observed,
}: Extract<BackTestView['reliability'], { kind: 'estimated' }>['rows'][number]): ReliabilityClassDto {
  return {
    from,
    to,
    decisions: forecasts,
    comebacks: occurred,
    meanPredicted: observed?.meanStated ?? null,
    observed: observed?.share ?? null,
    interval:
      observed === null
        ? null
        : { low: observed.interval.lower, high: observed.interval.upper, level: 0.9, method: 'wilson' },
    finding: observed?.finding ?? null,
  };
}
