import type { Check } from '@endfloat/catalogue';
import type { Limit } from '@endfloat/metrology';
import type { BenchCase } from './bench-case.js';

/** Limits of the check, and those of the shop for the same characteristic; the shop's edition of an id replaces the sheet's. */
export function limitsOf({ shopLimits }: Pick<BenchCase, 'shopLimits'>, check: Check): readonly Limit[] {
  const own = shopLimits.filter(({ characteristic }) => characteristic === check.characteristicId);
  return [...check.limits.filter(({ id }) => !own.some((limit) => limit.id === id)), ...own];
}
