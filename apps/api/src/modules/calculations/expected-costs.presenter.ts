import type { BreakEvenDto, ExpectedCostsResponse } from '@endfloat/contracts';
import type { BreakEven } from '@endfloat/decision';
import { renderText, type ExpectedCosts } from '@endfloat/workshop';

function presentBreakEven(breakEven: BreakEven): BreakEvenDto {
  switch (breakEven.kind) {
    case 'at':
      return { kind: 'at', probabilityOfComeback: breakEven.probabilityOfComeback };
    case 'alwaysCheaper':
    case 'neverCheaper':
    case 'alwaysEqual':
    case 'cannotBePriced':
      return { kind: breakEven.kind };
  }
}

export function presentExpectedCosts(costs: ExpectedCosts): ExpectedCostsResponse {
  return {
    cheapestFirst: costs.cheapestFirst.map((option) => ({
      optionId: option.optionId,
      partsAndLabour: option.partsAndLabour,
      downtime: option.downtime,
      coreDepositAtRisk: option.coreDepositAtRisk,
      costIfComeback: option.costIfComeback,
      expectedComeback: option.expectedComeback,
      expectedTotal: option.expectedTotal,
    })),
    cannotBePriced: costs.cannotBePriced.map(({ optionId, reason, members }) => ({
      optionId,
      reason,
      members: [...members],
    })),
    breakEven: costs.breakEven === null ? null : presentBreakEven(costs.breakEven),
    method: 'parts + labour + downtime + deposit at risk + chance of a comeback x cost of a comeback',
    caution: renderText('safety.precedence'),
  };
}
