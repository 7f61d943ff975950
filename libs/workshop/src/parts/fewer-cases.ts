import type { LeadTimeCase } from '@endfloat/stock';

/** Most lead times that demand is worked out for; more are taken together, so that a fleet of any size is answered soon. */
export const mostCases = 8;

/** Neighbouring lead times taken together in equal shares, each share by its longest day, so that none is understated. */
export function fewerCases(cases: readonly LeadTimeCase[]): readonly LeadTimeCase[] {
  if (cases.length <= mostCases) return cases;
  const shares: LeadTimeCase[] = [];
  let [weight, reached] = [0, 0];
  cases.forEach(({ days, weight: each }, at) => {
    weight += each;
    reached += each;
    const isFull = reached >= (shares.length + 1) / mostCases - 1e-12;
    if (!isFull && at < cases.length - 1) return;
    shares.push({ days, weight });
    weight = 0;
  });
  return shares;
}
