import {
  distanceAt,
  downtimeOf,
  type Downtime,
  type DowntimeReason,
  type Visit,
} from '@endfloat/reliability';
import { addMoney, moneyFromNumber, multiplyMoney, parseMoney, type Money } from '@endfloat/metrology';
import type { FleetDistance, FleetVehicle, FleetVisit, YearOfWork } from '../ports/fleet-history.port.js';
import type { JobEventKind } from '../ports/records/jobs.records.js';

/** Distance driven within a time, as far as readings tell. */
export type DrivenDistance =
  | {
      readonly kind: 'known';
      readonly km: number;
      /** days of the time that lie between the readings used */
      readonly coveredDays: number;
    }
  /** fewer than two readings within the time, or around its ends */
  | { readonly kind: 'unknown'; readonly readings: number };

export interface YearOfCosts {
  readonly year: number;
  readonly labour: Money;
  readonly parts: Money;
  readonly lines: number;
}

/** What a vehicle has cost within a time, at the shop's present rate; amounts in its currency. */
export interface VehicleCosts {
  readonly vehicle: FleetVehicle;
  readonly labour: Money;
  readonly parts: Money;
  readonly downtimeCost: Money;
  readonly total: Money;
  readonly lines: number;
  readonly hours: number;
  readonly linesWithoutMinutes: number;
  readonly partsWithoutPrice: number;
  /** parts priced in other currencies, never summed with the rest */
  readonly otherCurrencies: readonly Money[];
  readonly downtime: Downtime;
  readonly distance: DrivenDistance;
  readonly years: readonly YearOfCosts[];
}

export interface CostTerms {
  readonly currency: string;
  readonly labourRatePerHour: string;
  readonly downtimeCostPerDay: string;
  readonly from: string;
  readonly until: string;
}

const msPerDay = 86_400_000;

const reasonAfter: Readonly<Record<JobEventKind, DowntimeReason | null>> = {
  waitingForConsent: 'waitingForConsent',
  waitingForPart: 'waitingForPart',
  waitingForBay: 'waitingForBay',
  resumed: 'inWork',
  workFinished: 'waitingForRelease',
  closed: null,
};

const visitOf = ({ openedAt, leftAt, events }: FleetVisit): Visit => ({
  openedAt,
  leftAt,
  changes: events.flatMap(({ kind, at }) => {
    const reason = reasonAfter[kind];
    return reason === null ? [] : [{ at, reason }];
  }),
});

function moneyOf(amount: string, currency: string): Money {
  const parsed = parseMoney(amount, currency);
  return parsed.kind === 'money' ? parsed.money : moneyFromNumber(Number(amount), currency);
}

function plus(first: Money, second: Money): Money {
  const sum = addMoney(first, second);
  if (sum.kind !== 'money') throw new RangeError('amounts of one currency did not add');
  return sum.money;
}

/** Minutes at a rate an hour; rounded once, as the currency writes amounts. */
const labourOf = (minutes: number, { labourRatePerHour, currency }: CostTerms): Money =>
  moneyFromNumber((minutes * Number(labourRatePerHour)) / 60, currency);

export interface CostFacts {
  readonly vehicle: FleetVehicle;
  readonly work: readonly YearOfWork[];
  readonly visits: readonly FleetVisit[];
  readonly distances: readonly FleetDistance[];
}

/** Work, parts and downtime of one vehicle put together. */
export function vehicleCosts(
  { vehicle, work, visits, distances }: CostFacts,
  terms: CostTerms,
): VehicleCosts {
  const { currency, from, until } = terms;
  const isOwn = (each: YearOfWork): boolean => each.currency === null || each.currency === currency;
  const sum = (of: (each: YearOfWork) => number): number => work.reduce((total, each) => total + of(each), 0);
  const minutes = sum((each) => each.minutes);
  const none = moneyFromNumber(0, currency);
  const parts = work
    .filter(isOwn)
    .reduce((total, each) => plus(total, moneyOf(each.partsAmount, currency)), none);
  const labour = labourOf(minutes, terms);
  const downtime = downtimeOf(visits.map(visitOf), from, until);
  const perDay = { amount: terms.downtimeCostPerDay, currency };
  const downtimeCost = multiplyMoney(perDay, downtime.days.toFixed(6));
  return {
    vehicle,
    labour,
    parts,
    downtimeCost,
    total: plus(plus(labour, parts), downtimeCost),
    lines: sum((each) => each.lines),
    hours: minutes / 60,
    linesWithoutMinutes: sum((each) => each.linesWithoutMinutes),
    partsWithoutPrice: sum((each) => each.partsWithoutPrice),
    otherCurrencies: otherCurrencies(work, currency),
    downtime,
    distance: drivenDistance(distances, Date.parse(from), Date.parse(until)),
    years: yearsOf(work, terms),
  };
}

function otherCurrencies(work: readonly YearOfWork[], currency: string): readonly Money[] {
  const sums = new Map<string, Money>();
  for (const each of work) {
    if (each.currency === null || each.currency === currency) continue;
    const amount = moneyOf(each.partsAmount, each.currency);
    const before = sums.get(each.currency);
    sums.set(each.currency, before === undefined ? amount : plus(before, amount));
  }
  return [...sums.values()];
}

function yearsOf(work: readonly YearOfWork[], terms: CostTerms): readonly YearOfCosts[] {
  const { currency } = terms;
  const years = [...new Set(work.map(({ year }) => year))].sort((a, b) => a - b);
  return years.map((year) => {
    const own = work.filter((each) => each.year === year);
    const minutes = own.reduce((total, each) => total + each.minutes, 0);
    const parts = own
      .filter((each) => each.currency === currency)
      .reduce(
        (total, each) => plus(total, moneyOf(each.partsAmount, currency)),
        moneyFromNumber(0, currency),
      );
    const lines = own.reduce((total, each) => total + each.lines, 0);
    return { year, labour: labourOf(minutes, terms), parts, lines };
  });
}

/** Between the ends of the time where readings surround them, else between the first and last reading within it. */
export function drivenDistance(
  distances: readonly FleetDistance[],
  from: number,
  until: number,
): DrivenDistance {
  const [first, last] = [distances[0], distances.at(-1)];
  if (first === undefined || last === undefined) return { kind: 'unknown', readings: 0 };
  const [start, end] = [Math.max(from, first.at), Math.min(until, last.at)];
  const readings = distances.filter(({ at }) => at >= from && at <= until).length;
  if (end <= start) return { kind: 'unknown', readings };
  const [a, b] = [distanceAt(distances, start), distanceAt(distances, end)];
  if (a.kind !== 'known' || b.kind !== 'known' || !(b.km > a.km)) return { kind: 'unknown', readings };
  return { kind: 'known', km: b.km - a.km, coveredDays: (end - start) / msPerDay };
}
