import { log } from '../portable/elementary.js';
import type { LearnedTables } from '../tables/learned-tables.js';
import type { SettledDelivery } from './settled-history.js';

/** Suppliers and deliveries the judgement is worth; JUDGEMENT. */
const WORTH_SUPPLIERS = 3;
const WORTH_DELIVERIES = 20;

/**
 * Slips of all suppliers: mean, and spread between and within suppliers.
 *
 * @param deliveries  with their promises
 * @param prior       what is expected
 * @returns moment estimates, drawn towards the prior by what it is worth
 * @throws RangeError on days that are negative or not finite
 * @source one-way random effects by moments, on log((actual + 1) / (promised + 1))
 */
export function fitLeadTimes(
  deliveries: readonly SettledDelivery[],
  prior: LearnedTables['leadTime'],
): LearnedTables['leadTime'] {
  if (deliveries.length === 0) return prior;
  const bySupplier = new Map<string, number[]>();
  for (const { supplierId, promisedDays, actualDays } of deliveries) {
    for (const days of [promisedDays, actualDays]) {
      if (!Number.isFinite(days) || days < 0)
        throw new RangeError(`days are a finite number of 0 or more, got ${days}`);
    }
    const slips = bySupplier.get(supplierId) ?? [];
    slips.push(log((actualDays + 1) / (promisedDays + 1)));
    bySupplier.set(supplierId, slips);
  }
  const means = [...bySupplier.values()].map(
    (slips) => slips.reduce((sum, slip) => sum + slip, 0) / slips.length,
  );
  let within = WORTH_DELIVERIES * prior.withinSupplierSd * prior.withinSupplierSd;
  let freedom = WORTH_DELIVERIES;
  [...bySupplier.values()].forEach((slips, k) => {
    for (const slip of slips) within += (slip - means[k]!) * (slip - means[k]!);
    freedom += slips.length - 1;
  });
  const mean =
    (WORTH_SUPPLIERS * prior.meanLogSlip + means.reduce((sum, value) => sum + value, 0)) /
    (WORTH_SUPPLIERS + means.length);
  let between = WORTH_SUPPLIERS * prior.betweenSuppliersSd * prior.betweenSuppliersSd;
  for (const [k, slips] of [...bySupplier.values()].entries()) {
    const own = (means[k]! - mean) * (means[k]! - mean) - within / freedom / slips.length;
    between += Math.max(0, own);
  }
  return {
    meanLogSlip: mean,
    betweenSuppliersSd: Math.sqrt(between / (WORTH_SUPPLIERS + means.length)),
    withinSupplierSd: Math.sqrt(within / freedom),
  };
}
