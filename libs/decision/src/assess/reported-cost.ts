import { moneyFromNumber, subtractMoney, sumMoney, type Money } from '@endfloat/metrology';
import type { CostComponents } from '../terms/assessment.js';
import type { EvaluatedCandidate } from './evaluate-candidate.js';

/** The parts of an expected cost, each rounded at the currency's decimals. */
export function reportedComponents(chosen: EvaluatedCandidate, currency: string): CostComponents {
  const money = (value: number): Money => moneyFromNumber(value, currency);
  const { candidate, downtime, comebackCost, wearToCome } = chosen;
  return {
    parts: money(candidate.partPrice),
    labour: money(candidate.labour),
    downtime: money(downtime),
    coreDepositAtRisk: money(candidate.coreDepositAtRisk),
    comeback: money(comebackCost),
    wearToCome: money(wearToCome),
  };
}

/** The expected cost as it is reported everywhere: the sum of the rounded parts, so that a reader can add them up. */
export function reportedTotal(chosen: EvaluatedCandidate, currency: string): Money {
  const total = sumMoney(Object.values(reportedComponents(chosen, currency)), currency);
  if (total.kind !== 'money') throw new RangeError('components are in one currency');
  return total.money;
}

/** By how much one reported cost is above another. */
export function reportedDifference(
  dearer: EvaluatedCandidate,
  cheaper: EvaluatedCandidate,
  currency: string,
): Money {
  const difference = subtractMoney(reportedTotal(dearer, currency), reportedTotal(cheaper, currency));
  if (difference.kind !== 'money') throw new RangeError('costs are in one currency');
  return difference.money;
}
