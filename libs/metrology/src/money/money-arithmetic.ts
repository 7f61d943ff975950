import { Decimal } from 'decimal.js';
import { ExactDecimal } from '../quantities/exact-decimal.js';
import { currencyExponent } from './currency-table.js';
import type { Money, MoneyResult } from './money.js';

const differ = (currencies: readonly string[]): MoneyResult => ({
  kind: 'currenciesDiffer',
  currencies: [...new Set(currencies)].sort(),
});

function write(amount: ExactDecimal, currency: string): Money {
  const exponent = currencyExponent(currency);
  if (exponent === undefined) throw new RangeError(`unknown currency ${currency.slice(0, 16)}`);
  const text = amount.toFixed(exponent, Decimal.ROUND_HALF_EVEN);
  return { amount: /^-[0.]+$/.test(text) ? text.slice(1) : text, currency };
}

/** Decimal text is read; anything else would be read by another rule or not at all. */
function exactOf(text: string): ExactDecimal {
  if (!/^-?[0-9]+(?:\.[0-9]+)?$/.test(text)) throw new RangeError(`not decimal text: ${text.slice(0, 64)}`);
  return new ExactDecimal(text);
}

const done = (money: Money): MoneyResult => ({ kind: 'money', money });

/**
 * Sum of two amounts of one currency, exact.
 *
 * @param first   checked money
 * @param second  checked money
 * @returns `money`, or `currenciesDiffer`
 * @throws RangeError on an amount that is no decimal text, on an unknown currency
 * @source decimal arithmetic
 * @example addMoney({ amount: '0.10', currency: 'EUR' }, { amount: '0.20', currency: 'EUR' })
 *   // => { kind: 'money', money: { amount: '0.30', currency: 'EUR' } }
 */
export function addMoney(first: Money, second: Money): MoneyResult {
  if (first.currency !== second.currency) return differ([first.currency, second.currency]);
  return done(write(exactOf(first.amount).plus(exactOf(second.amount)), first.currency));
}

/**
 * First amount less the second, one currency, exact.
 *
 * @param first   checked money
 * @param second  checked money
 * @returns `money` (possibly negative), or `currenciesDiffer`
 * @throws RangeError on an amount that is no decimal text, on an unknown currency
 * @source decimal arithmetic
 * @example subtractMoney({ amount: '1.00', currency: 'EUR' }, { amount: '0.99', currency: 'EUR' })
 *   // => { kind: 'money', money: { amount: '0.01', currency: 'EUR' } }
 */
export function subtractMoney(first: Money, second: Money): MoneyResult {
  if (first.currency !== second.currency) return differ([first.currency, second.currency]);
  return done(write(exactOf(first.amount).minus(exactOf(second.amount)), first.currency));
}

/**
 * Sum of a list of amounts of one currency, exact.
 *
 * @param amounts   checked money, possibly none
 * @param currency  currency of the sum; the empty sum is zero of it
 * @returns `money`, or `currenciesDiffer` with every currency met
 * @throws RangeError on an amount that is no decimal text, on an unknown currency
 * @source decimal arithmetic
 * @example sumMoney([], 'EUR') // => { kind: 'money', money: { amount: '0.00', currency: 'EUR' } }
 */
export function sumMoney(amounts: readonly Money[], currency: string): MoneyResult {
  const foreign = amounts.filter((amount) => amount.currency !== currency);
  if (foreign.length > 0) return differ([currency, ...foreign.map((amount) => amount.currency)]);
  const total = amounts.reduce((sum, { amount }) => sum.plus(exactOf(amount)), new ExactDecimal(0));
  return done(write(total, currency));
}

/**
 * An amount times a plain factor (hours, pieces, a rate), rounded half to even at the currency's decimals.
 *
 * @param money   checked money
 * @param factor  decimal text
 * @returns money of the same currency
 * @throws RangeError on an amount or factor that is no decimal text, on an unknown currency
 * @source half to even: judgement
 * @example multiplyMoney({ amount: '80.00', currency: 'EUR' }, '1.2') // => { amount: '96.00', currency: 'EUR' }
 */
export function multiplyMoney(money: Money, factor: string): Money {
  return write(exactOf(money.amount).times(exactOf(factor)), money.currency);
}

/**
 * A computed number as money, rounded half to even at the currency's decimals.
 *
 * @param value     finite number of whole currency units, read as its shortest decimal text
 * @param currency  ISO 4217 code
 * @returns money
 * @throws RangeError on a number that is not finite, on an unknown currency
 * @source half to even: judgement
 * @example moneyFromNumber(565.4, 'EUR') // => { amount: '565.40', currency: 'EUR' }
 */
export function moneyFromNumber(value: number, currency: string): Money {
  if (!Number.isFinite(value)) throw new RangeError('money needs a finite number');
  return write(new ExactDecimal(value), currency);
}

/** Order of two amounts, or that their currencies differ. */
export type MoneyComparison =
  | { readonly kind: 'compared'; readonly order: 'less' | 'equal' | 'greater' }
  | { readonly kind: 'currenciesDiffer'; readonly currencies: readonly string[] };

/**
 * Compares two amounts of one currency.
 *
 * @param first   checked money
 * @param second  checked money
 * @returns order of the first against the second, or `currenciesDiffer`
 * @throws RangeError on an amount that is no decimal text
 * @source decimal arithmetic
 * @example compareMoney({ amount: '1.00', currency: 'EUR' }, { amount: '1', currency: 'EUR' })
 *   // => { kind: 'compared', order: 'equal' }
 */
export function compareMoney(first: Money, second: Money): MoneyComparison {
  if (first.currency !== second.currency) {
    return { kind: 'currenciesDiffer', currencies: [first.currency, second.currency].sort() };
  }
  const sign = exactOf(first.amount).cmp(exactOf(second.amount));
  return { kind: 'compared', order: sign < 0 ? 'less' : sign > 0 ? 'greater' : 'equal' };
}
