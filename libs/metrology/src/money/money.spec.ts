import fc from 'fast-check';
import { currencyCodes, currencyExponent } from './currency-table.js';
import type { Money } from './money.js';
import {
  addMoney,
  compareMoney,
  moneyFromNumber,
  multiplyMoney,
  subtractMoney,
  sumMoney,
} from './money-arithmetic.js';
import { parseMoney } from './parse-money.js';

const euro = (amount: string): Money => ({ amount, currency: 'EUR' });
const seed = { seed: 20260504, numRuns: 200 };
const cents = fc
  .integer({ min: -10_000_000, max: 10_000_000 })
  .map((value) => moneyFromNumber(value / 100, 'EUR'));

describe('money', () => {
  it('is written with the decimals of its currency: two for most, none, three or four for some (ISO 4217)', () => {
    expect(['EUR', 'USD', 'JPY', 'KWD', 'CLF', 'ISK', 'TND'].map(currencyExponent)).toEqual([
      2, 2, 0, 3, 4, 0, 3,
    ]);
    expect(parseMoney('129.9', 'EUR')).toEqual({ kind: 'money', money: euro('129.90') });
    expect(parseMoney('500', 'JPY')).toEqual({ kind: 'money', money: { amount: '500', currency: 'JPY' } });
    expect(parseMoney('-0', 'EUR')).toEqual({ kind: 'money', money: euro('0.00') });
  });

  it('refuses more decimals than the currency has, unknown codes and what is no decimal', () => {
    expect(parseMoney('1.999', 'EUR')).toEqual({ kind: 'tooManyDecimals', currency: 'EUR', allowed: 2 });
    expect(parseMoney('1.0', 'JPY').kind).toBe('tooManyDecimals');
    expect(parseMoney('1', 'eur').kind).toBe('unknownCurrency');
    expect(parseMoney('1', 'XTS').kind).toBe('unknownCurrency');
    expect(parseMoney('1e2', 'EUR').kind).toBe('notDecimal');
  });

  it('lists every code once, three capital letters', () => {
    expect(new Set(currencyCodes).size).toBe(currencyCodes.length);
    expect(currencyCodes.every((code) => /^[A-Z]{3}$/.test(code))).toBe(true);
  });

  it('adds and subtracts exactly where floats do not', () => {
    expect(addMoney(euro('0.10'), euro('0.20'))).toEqual({ kind: 'money', money: euro('0.30') });
    expect(subtractMoney(euro('0.30'), euro('0.10'))).toEqual({ kind: 'money', money: euro('0.20') });
    expect(sumMoney([euro('1.01'), euro('2.02'), euro('-3.03')], 'EUR')).toEqual({
      kind: 'money',
      money: euro('0.00'),
    });
  });

  it('never sums or compares across currencies', () => {
    const dollar: Money = { amount: '1.00', currency: 'USD' };
    const refusal = { kind: 'currenciesDiffer', currencies: ['EUR', 'USD'] };
    expect(addMoney(euro('1.00'), dollar)).toEqual(refusal);
    expect(subtractMoney(dollar, euro('1.00'))).toEqual(refusal);
    expect(sumMoney([euro('1.00'), dollar, dollar], 'EUR')).toEqual(refusal);
    expect(compareMoney(dollar, euro('1.00'))).toEqual(refusal);
  });

  it('rounds a product half to even: by hand, 0.25 x 0.5 is 0.12 and 0.35 x 0.5 is 0.18', () => {
    expect(multiplyMoney(euro('0.25'), '0.5')).toEqual(euro('0.12'));
    expect(multiplyMoney(euro('0.35'), '0.5')).toEqual(euro('0.18'));
    expect(multiplyMoney(euro('80.00'), '1.8')).toEqual(euro('144.00'));
    expect(multiplyMoney(euro('-0.01'), '0.1')).toEqual(euro('0.00'));
    expect(() => multiplyMoney(euro('1.00'), '1e2')).toThrow(RangeError);
    for (const text of ['', 'much', '1e2', 'Infinity', '0x10']) {
      expect(() => addMoney(euro('1.00'), euro(text))).toThrow(RangeError);
      expect(() => subtractMoney(euro(text), euro('1.00'))).toThrow(RangeError);
      expect(() => sumMoney([euro(text)], 'EUR')).toThrow(RangeError);
      expect(() => compareMoney(euro(text), euro('1.00'))).toThrow(RangeError);
      expect(() => multiplyMoney(euro(text), '2')).toThrow(RangeError);
    }
  });

  it('takes a computed number only if it is finite', () => {
    expect(moneyFromNumber(565.4, 'EUR')).toEqual(euro('565.40'));
    expect(() => moneyFromNumber(Number.NaN, 'EUR')).toThrow(RangeError);
    expect(() => moneyFromNumber(1, 'XXX')).toThrow(RangeError);
  });

  it('obeys the laws of addition and order', () => {
    fc.assert(
      fc.property(cents, cents, (a, b) => {
        expect(addMoney(a, b)).toEqual(addMoney(b, a));
        const sum = addMoney(a, b);
        if (sum.kind !== 'money') throw new Error(sum.kind);
        expect(subtractMoney(sum.money, b)).toEqual({ kind: 'money', money: a });
        const order = compareMoney(a, b);
        const expected =
          Number(a.amount) < Number(b.amount)
            ? 'less'
            : Number(a.amount) > Number(b.amount)
              ? 'greater'
              : 'equal';
        expect(order).toEqual({ kind: 'compared', order: expected });
      }),
      seed,
    );
  });
});
