import { parseDecimalText } from '../quantities/parse-decimal-text.js';
import { currencyExponent } from './currency-table.js';
import type { Money, MoneyRefusal } from './money.js';

/** Checked money, or the refusal. */
export type ParsedMoney = { readonly kind: 'money'; readonly money: Money } | MoneyRefusal;

/**
 * Checks an amount and a currency that come from outside.
 *
 * @param amount    decimal text of at most 18 digits, may be negative (minus zero loses its sign); fewer decimals than
 *   the currency has are filled with zeros, more are refused
 * @param currency  ISO 4217 code, upper case
 * @returns the amount written with exactly the currency's decimals, or why not
 * @source ISO 4217
 * @example parseMoney('129.9', 'EUR') // => { kind: 'money', money: { amount: '129.90', currency: 'EUR' } }
 */
export function parseMoney(amount: string, currency: string): ParsedMoney {
  const exponent = currencyExponent(currency);
  if (exponent === undefined) return { kind: 'unknownCurrency', currency: currency.slice(0, 16) };
  const parsed = parseDecimalText(amount);
  if (parsed.kind !== 'decimal') return parsed;
  const [whole = '0', decimals = ''] = parsed.text.split('.');
  if (decimals.length > exponent) return { kind: 'tooManyDecimals', currency, allowed: exponent };
  const text = exponent === 0 ? whole : `${whole}.${decimals.padEnd(exponent, '0')}`;
  return { kind: 'money', money: { amount: text, currency } };
}
