import type { ExpectedCostsRequest } from '@endfloat/contracts';
import type { ExpectedCostsCommand } from '@endfloat/workshop';

export function toExpectedCostsCommand(request: ExpectedCostsRequest): ExpectedCostsCommand {
  const { labourPerHour, downtimePerDay, comebackHandling, followUpRepair } = request.rates;
  return {
    rates: { labourPerHour, downtimePerDay, comebackHandling, followUpRepair },
    options: request.options.map((option) => ({
      optionId: option.optionId,
      parts: option.parts,
      labourHours: option.labourHours,
      downtimeDays: option.downtimeDays,
      probabilityOfComeback: option.probabilityOfComeback,
      comebackConsequence: option.comebackConsequence,
      core: option.core,
    })),
    breakEven: request.breakEven ?? null,
  };
}
