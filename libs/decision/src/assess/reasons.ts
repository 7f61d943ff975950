import { sizeAtShare, wearNodes } from '../belief/wear-grid.js';
import type { Reason, Recommendation, ReportedValue, ValueOfFurtherReadings } from '../terms/assessment.js';
import type { ReasonCode } from '../terms/reason-codes.js';
import type { DecisionModel } from './decision-model.js';
import { admissible } from './evaluate-options.js';
import type { EvaluatedOption } from './evaluate-options.js';
import { reportedDifference, reportedTotal } from './reported-cost.js';
import { reported, reportedAmount, reportedMoney } from './reported.js';

/** What reasons are read off. */
export interface ReasonSource {
  readonly model: DecisionModel;
  readonly options: readonly EvaluatedOption[];
  readonly wear: Float64Array;
  readonly reachesCriterion: number;
  readonly recommendation: Recommendation;
  readonly value: ValueOfFurtherReadings;
}

const LIKELY = 0.8;

const reason = (
  code: ReasonCode,
  optionId: string | null,
  values: Readonly<Record<string, ReportedValue>> = {},
  evidence: readonly string[] = [],
): Reason => ({ code, optionId, values, evidence });

/** Chance that wear is at or beyond the criterion; the node on the criterion counts half. */
export function chanceBeyondCriterion(wear: Float64Array): number {
  return wear.reduce(
    (sum, weight, i) => sum + (wearNodes[i]! > 1 ? weight : wearNodes[i] === 1 ? weight / 2 : 0),
    0,
  );
}

function wearReasons({ model, wear }: ReasonSource): readonly Reason[] {
  const { evidence, characteristic } = model.beliefs.input;
  const { wearNow } = evidence;
  if (wearNow.kind === 'contradictory') return [reason('readingsContradict', null, {}, wearNow.evidence)];
  const values = {
    criterion: reported(characteristic.criterionSize, characteristic.unit),
    probabilityBeyond: reported(chanceBeyondCriterion(wear), '1'),
  };
  if (wearNow.kind === 'notMeasured') return [reason('wearNotMeasured', null, values)];
  const measured = {
    ...values,
    value: reported(wearNow.value, characteristic.unit),
    standardUncertainty: reported(wearNow.standardUncertainty, characteristic.unit),
  };
  const beyond = chanceBeyondCriterion(wear);
  const code: ReasonCode =
    beyond >= LIKELY
      ? 'wearLikelyBeyondCriterion'
      : beyond <= 1 - LIKELY
        ? 'wearLikelyWithinCriterion'
        : 'wearOnEitherSideOfCriterion';
  const reasons = [reason(code, null, measured, wearNow.evidence)];
  const share = model.beliefs.reading?.share ?? 0;
  if (share > 2 || share < 0) {
    const nearest = sizeAtShare(share > 2 ? 2 : 0, characteristic);
    const takenAs = reported(nearest, characteristic.unit);
    reasons.push(reason('wearBeyondModel', null, { value: measured.value, takenAs }, wearNow.evidence));
  }
  return reasons;
}

function functionalReasons({ model }: ReasonSource): readonly Reason[] {
  const { functionalCriterion } = model.beliefs.input.evidence;
  if (functionalCriterion.kind === 'notDone') return [reason('functionalCriterionNotDone', null)];
  const { kind, isValid, evidence } = functionalCriterion;
  if (!isValid) return [reason('functionalCriterionNotValid', null, {}, evidence)];
  return [
    reason(
      kind === 'positive' ? 'functionalCriterionPositive' : 'functionalCriterionNegative',
      null,
      {},
      evidence,
    ),
  ];
}

function rateReasons({ model, reachesCriterion }: ReasonSource): readonly Reason[] {
  const { evidence, characteristic, planningDistanceKm } = model.beliefs.input;
  const { wearRate } = evidence;
  const unit = `${characteristic.unit}/1000.km`;
  const basis =
    wearRate.kind === 'estimated'
      ? reason(
          'rateFromReadings',
          null,
          {
            rate: reported(wearRate.perThousandKm, unit),
            standardError: reported(wearRate.standardError, unit),
            points: reported(wearRate.points, '1'),
          },
          wearRate.evidence,
        )
      : reason('rateFromPopulation', null, {
          needed: reported(wearRate.needed, '1'),
          got: reported(wearRate.got, '1'),
        });
  if (planningDistanceKm === 0) return [basis];
  const values = {
    probability: reported(reachesCriterion, '1'),
    distance: reported(planningDistanceKm, 'km'),
  };
  return [
    basis,
    reason(
      reachesCriterion >= 0.5 ? 'criterionReachedWithinPlan' : 'criterionNotReachedWithinPlan',
      null,
      values,
    ),
  ];
}

function historyReasons({ model }: ReasonSource): readonly Reason[] {
  const { evidence, tables } = model.beliefs.input;
  const reasons: Reason[] = [];
  if (evidence.earlierComebacks.count > 0) {
    const count = reported(evidence.earlierComebacks.count, '1');
    reasons.push(reason('earlierComebacks', null, { count }, evidence.earlierComebacks.evidence));
  }
  for (const finding of evidence.safetyFindings) {
    reasons.push(reason('safetyFinding', null, {}, [finding.findingId, ...finding.evidence]));
  }
  const { comebacks, held, running } = tables.comeback.taught;
  if (comebacks + held + running === 0) reasons.push(reason('judgementNumbersOnly', null));
  return reasons;
}

/** A part that is dearer to buy but wins because the other one keeps the vehicle waiting. */
function waitReason(
  best: EvaluatedOption,
  left: readonly EvaluatedOption[],
  currency: string,
): readonly Reason[] {
  const spent = ({ chosen }: EvaluatedOption) => chosen.immediate - chosen.downtime;
  const outweighed = left.find(
    (other) =>
      other !== best &&
      other.chosen.candidate.offerId !== null &&
      spent(other) < spent(best) &&
      other.chosen.downtime - best.chosen.downtime > spent(best) - spent(other),
  );
  if (outweighed === undefined) return [];
  return [
    reason('waitOutweighsPrice', outweighed.option.optionId, {
      priceDifference: reportedAmount(spent(best) - spent(outweighed), currency),
      downtimeDifference: reportedAmount(outweighed.chosen.downtime - best.chosen.downtime, currency),
    }),
  ];
}

function leadTimeReason({ option, chosen }: EvaluatedOption): readonly Reason[] {
  const { leadTime } = chosen.candidate;
  if (leadTime === null || leadTime.basis === 'inStock') return [];
  const values = { days: reported(leadTime.meanDays, 'd'), deliveries: reported(leadTime.deliveries, '1') };
  return [
    reason(
      leadTime.basis === 'delivered' ? 'leadTimeAsDelivered' : 'leadTimeAsPromisedOnly',
      option.optionId,
      values,
    ),
  ];
}

function priceReasons(source: ReasonSource): readonly Reason[] {
  const { model, options } = source;
  const { currency, occasion, options: given } = model.beliefs.input;
  const left = admissible(options);
  const [best, second] = left;
  if (best === undefined) return [];
  const { optionId, action } = best.option;
  const { chosen } = best;
  const reasons: Reason[] = [
    reason('cheapestInTheEnd', optionId, { expectedCost: reportedMoney(reportedTotal(chosen, currency)) }),
  ];
  if (second !== undefined) {
    const dearerBy = reportedMoney(reportedDifference(second.chosen, chosen, currency));
    reasons.push(reason('runnerUp', second.option.optionId, { dearerBy }));
  } else {
    reasons.push(
      reason(
        options.length < given.length && options.length === 1 ? 'onlyOptionPriced' : 'onlyOptionLeft',
        optionId,
      ),
    );
  }
  if (chosen.comeback > 0) {
    const values = {
      probability: reported(chosen.comeback, '1'),
      cost: reportedAmount(chosen.comebackCost, currency),
    };
    reasons.push(reason('comebackRisk', optionId, values));
  }
  for (const option of left.slice(0, 2)) reasons.push(...leadTimeReason(option));
  reasons.push(...waitReason(best, left, currency));
  if (chosen.candidate.coreDepositAtRisk > 0) {
    const atRisk = reportedAmount(chosen.candidate.coreDepositAtRisk, currency);
    reasons.push(reason('coreDepositAtRisk', optionId, { atRisk }));
  }
  if (occasion === 'serviceVisit' && action !== 'leave' && action !== 'adjust')
    reasons.push(reason('replaceAtNextVisit', optionId));
  return reasons;
}

/**
 * Reasons in the order they are told: the prices that decide, the wear and its criterion, the rate, the history, the value
 * of measuring more.
 *
 * @param source  the solved and evaluated model
 * @returns stable codes with values and the records behind them
 */
export function reasonsFor(source: ReasonSource): readonly Reason[] {
  const { value } = source;
  const measuring =
    value.kind === 'worthIt'
      ? [
          reason('furtherReadingsWorthTheirCost', null, {
            expectedGain: reportedMoney(value.expectedGain),
            cost: reportedMoney(value.cost),
            readings: reported(value.readings, '1'),
          }),
        ]
      : [];
  return [
    ...priceReasons(source),
    ...functionalReasons(source),
    ...wearReasons(source),
    ...rateReasons(source),
    ...historyReasons(source),
    ...measuring,
  ];
}
