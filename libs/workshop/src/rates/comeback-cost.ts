import { moneyFromNumber, multiplyMoney, subtractMoney, sumMoney, type Money } from '@endfloat/metrology';
import type { WorkLine } from '../ports/records/jobs.records.js';
import type { ShopSettings } from '../ports/records/shop.records.js';

/** What a repeat cost the shop at the full door rate, as one original job bears it. */
export interface RepeatCost {
  readonly labour: string;
  readonly parts: string;
  readonly handling: string;
  readonly total: string;
  readonly gaps: number;
}

/** How a repeat is divided: by the complaints its job dealt with, then by the original jobs of the complaint. */
export interface RepeatShares {
  /** complaints of the repeat job, 1 where it has none yet */
  readonly complaints: number;
  /** of those, comebacks: the handling is divided among them only */
  readonly comebacks: number;
  readonly originals: number;
  /** bears what does not divide evenly: the first complaint, the first original */
  readonly firstComplaint: boolean;
  readonly firstOriginal: boolean;
}

/**
 * Cost of a repeat: minutes of its done work lines at the shop's rate, parts used at their price, and the handling of a
 * comeback. Lines without minutes, parts without a price and prices in another currency are counted as gaps, never guessed.
 */
export function repeatCost(
  lines: readonly WorkLine[],
  settings: Pick<ShopSettings, 'labourRatePerHour' | 'comebackHandling' | 'currency'>,
  shares: RepeatShares,
): RepeatCost {
  const { currency } = settings;
  const done = lines.filter(({ state }) => state === 'done');
  const minutes = done.reduce((sum, line) => sum + (line.minutes ?? 0), 0);
  const rate: Money = { amount: settings.labourRatePerHour, currency };
  const labour = multiplyMoney(rate, (minutes / 60).toFixed(12));
  const prices = done.flatMap(({ part }) => (part === null ? [] : [part.price]));
  const known = prices.flatMap((price) => (price?.currency === currency ? [price] : []));
  const gaps = done.filter((line) => line.minutes === null).length + prices.length - known.length;
  const ofJob = (whole: Money): Money =>
    share(share(whole, shares.complaints, shares.firstComplaint), shares.originals, shares.firstOriginal);
  const handling = share(
    share({ amount: settings.comebackHandling, currency }, shares.comebacks, shares.firstComplaint),
    shares.originals,
    shares.firstOriginal,
  );
  const [labourShare, partsShare] = [ofJob(labour), ofJob(sum(known, currency))];
  return {
    labour: labourShare.amount,
    parts: partsShare.amount,
    handling: sum([handling], currency).amount,
    total: sum([labourShare, partsShare, handling], currency).amount,
    gaps,
  };
}

/** One of `among` equal shares; who bears the rest takes what the others leave, so that the shares add up. */
function share(whole: Money, among: number, bearsRest: boolean): Money {
  if (among === 1) return whole;
  const one = multiplyMoney(whole, (1 / among).toFixed(12));
  if (!bearsRest) return one;
  const left = subtractMoney(whole, multiplyMoney(one, String(among - 1)));
  return left.kind === 'money' ? left.money : one;
}

function sum(amounts: readonly Money[], currency: string): Money {
  const total = sumMoney(amounts, currency);
  return total.kind === 'money' ? total.money : moneyFromNumber(0, currency);
}
