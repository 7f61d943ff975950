import { parseMoney, type Money } from '@endfloat/metrology';

/** An amount of the shop with the decimals of its currency; as it is where it has more of them. */
export function shopAmount(amount: string, currency: string): Money {
  const parsed = parseMoney(amount, currency);
  return parsed.kind === 'money' ? parsed.money : { amount, currency };
}
