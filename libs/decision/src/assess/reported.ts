import type { Money } from '@endfloat/metrology';
import { moneyFromNumber } from '@endfloat/metrology';
import type { ReportedValue } from '../terms/assessment.js';

/**
 * A number with four significant digits, as plain decimal text.
 *
 * @param value  finite
 * @param unit   its unit
 * @returns decimal text without exponent, with its unit
 * @throws RangeError on a number that is not finite
 */
export function reported(value: number, unit: string): ReportedValue {
  if (!Number.isFinite(value)) throw new RangeError('a reported value is a finite number');
  const rounded = Number(value.toPrecision(4));
  const plain =
    Math.abs(rounded) >= 1e-6 || rounded === 0 ? String(rounded) : rounded.toFixed(12).replace(/0+$/, '');
  return { value: plain === '-0' ? '0' : plain, unit };
}

/** A share rounded to four decimals. */
export const reportedShare = (share: number): number => Math.round(share * 1e4) / 1e4;

/** Money as a reported value. */
export const reportedMoney = ({ amount, currency }: Money): ReportedValue => ({
  value: amount,
  unit: currency,
});

/** A plain number of money, rounded to the currency's decimals, as a reported value. */
export const reportedAmount = (value: number, currency: string): ReportedValue =>
  reportedMoney(moneyFromNumber(value, currency));
