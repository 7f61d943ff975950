import { exp, log } from '../portable/elementary.js';
import type { LearnedTables } from '../tables/learned-tables.js';
import type { LeadTime } from '../terms/option-terms.js';

/** What a lead time is reckoned from. */
export const leadTimeBases = ['inStock', 'delivered', 'promisedOnly'] as const;

/** A basis of `leadTimeBases`. */
export type LeadTimeBasis = (typeof leadTimeBases)[number];

/** Mean days to arrival, and how to draw it: days = e^(level) - 1 with a normal level, outcomes spreading around it. */
export type ExpectedLeadTime =
  | {
      readonly kind: 'known';
      readonly basis: LeadTimeBasis;
      readonly meanDays: number;
      readonly deliveries: number;
      /** mean and doubt of the logarithm of the median, and the spread of single deliveries around it */
      readonly logMedian: number;
      readonly logMedianSd: number;
      readonly deliverySd: number;
    }
  | { readonly kind: 'unknown' };

function requireDays(days: number): void {
  if (!Number.isFinite(days) || days < 0)
    throw new RangeError(`days are a finite number of 0 or more, got ${days}`);
}

/**
 * Mean days of a lead time, given the logarithm of its median.
 *
 * @param logMedian  logarithm of median + 1
 * @param deliverySd spread of the logarithm
 * @returns days, 0 or more
 */
export function meanDays(logMedian: number, deliverySd: number): number {
  return Math.max(0, exp(logMedian + 0.5 * deliverySd * deliverySd) - 1);
}

/**
 * Lead time as this supplier really delivers: the promise stretched by the supplier's slips, log((actual + 1) / (promised
 * + 1)), shrunk towards the slip of all suppliers. Without a promise, or where no delivery recorded one, the delivered days
 * themselves.
 *
 * @param leadTime  in stock, or promise and deliveries
 * @param table     slip of all suppliers: mean, between and within suppliers
 * @returns mean days with its basis, or `unknown` without promise and deliveries
 * @throws RangeError on days that are negative or not finite
 * @source normal mean with known variances (conjugate normal prior), on the logarithm; log(days + 1) admits same-day delivery
 */
export function expectedLeadTime(leadTime: LeadTime, table: LearnedTables['leadTime']): ExpectedLeadTime {
  if (leadTime.kind === 'inStock') {
    return {
      kind: 'known',
      basis: 'inStock',
      meanDays: 0,
      deliveries: 0,
      logMedian: 0,
      logMedianSd: 0,
      deliverySd: 0,
    };
  }
  const { promisedDays, delivered } = leadTime;
  for (const { actualDays, promisedDays: promised } of delivered) {
    requireDays(actualDays);
    if (promised !== null) requireDays(promised);
  }
  if (promisedDays !== null) requireDays(promisedDays);
  const { meanLogSlip, betweenSuppliersSd, withinSupplierSd } = table;
  const within = withinSupplierSd * withinSupplierSd;
  const known = (
    basis: LeadTimeBasis,
    deliveries: number,
    logMedian: number,
    variance: number,
  ): ExpectedLeadTime => ({
    kind: 'known',
    basis,
    deliveries,
    meanDays: meanDays(logMedian, Math.sqrt(within + variance)),
    logMedian,
    logMedianSd: Math.sqrt(variance),
    deliverySd: withinSupplierSd,
  });

  const slips = delivered.flatMap(({ promisedDays: promised, actualDays }) =>
    promised === null ? [] : [log((actualDays + 1) / (promised + 1))],
  );
  if (promisedDays !== null && (slips.length > 0 || delivered.length === 0)) {
    const between = betweenSuppliersSd * betweenSuppliersSd;
    const sum = slips.reduce((total, slip) => total + slip, 0);
    // Written without a division by `between` or `within`, so that either may be zero.
    const weight = between === 0 ? 0 : (slips.length * between) / (slips.length * between + within);
    const slip = slips.length === 0 ? meanLogSlip : meanLogSlip + weight * (sum / slips.length - meanLogSlip);
    const basis = slips.length === 0 ? 'promisedOnly' : 'delivered';
    return known(basis, slips.length, log(promisedDays + 1) + slip, between * (1 - weight));
  }
  if (delivered.length === 0) return { kind: 'unknown' };
  const logs = delivered.map(({ actualDays }) => log(actualDays + 1));
  const mean = logs.reduce((total, value) => total + value, 0) / logs.length;
  return known('delivered', logs.length, mean, within / logs.length);
}
