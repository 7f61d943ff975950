import {
  challengerRule,
  economicLife,
  ordinaryLeastSquares,
  predictOnLine,
  type ChallengerDecision,
  type EconomicLife,
  type HoldingPeriod,
} from '@endfloat/statistics';
import { DomainError, invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import type { Money } from '@endfloat/metrology';
import { visibleVehicle } from '../recording/vehicle-visibility.js';
import { gatherCosts } from './show-costs.use-case.js';

/** Fewest full years of own costs from which the next ones are told. */
export const fewestYears = 3;
const level = 0.95;

export interface KeepingCommand {
  readonly vehicleId: string;
  readonly resaleNow: Money;
  /** share of its value that the vehicle loses in a year, 0 to 1 */
  readonly resaleFall: number;
  readonly furtherYears: number;
  /** running cost of each further year as somebody expects it; null: told from the vehicle's own years */
  readonly expectedRunning: readonly number[] | null;
  readonly challenger: { readonly price: Money; readonly years: readonly HoldingPeriod[] };
  /** interest a year; null: none */
  readonly discountRate: number | null;
}

export interface RunningYear {
  readonly expected: number;
  /** for one such year, at 0.95; null where the costs were stated */
  readonly lower: number | null;
  readonly upper: number | null;
}

export interface KeepingView {
  readonly currency: string;
  /** running cost of the full calendar years (UTC) since the shop knew the vehicle */
  readonly ownYears: readonly { readonly year: number; readonly running: number }[];
  readonly outcome:
    | { readonly kind: 'insufficientData'; readonly needed: number; readonly got: number }
    | {
        readonly kind: 'decided';
        readonly basis: 'ownYears' | 'stated';
        readonly running: readonly RunningYear[];
        readonly challenger: EconomicLife;
        readonly decision: ChallengerDecision;
        /** with every year at its lower, and at its upper limit */
        readonly ifLower: ChallengerDecision | null;
        readonly ifUpper: ChallengerDecision | null;
      };
}

/** Keep the vehicle, and for how long, or replace it by another: its own costs against the cheapest years of the other. */
export class PreviewKeepingUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, command: KeepingCommand): Promise<KeepingView> {
    const now = this.clock.now();
    if (command.resaleFall > 1)
      throw invalidInput(
        '/resaleFallPerYear',
        'share',
        'A vehicle loses at most all of its value: give 0 to 1.',
      );
    return this.work.read(caller.shopId, async (tx) => {
      const vehicle = await visibleVehicle(tx, caller, command.vehicleId, now);
      const firstYear = new Date(vehicle.firstRecordedAt).getUTCFullYear() + 1;
      const lastYear = new Date(now).getUTCFullYear() - 1;
      const ownYears: { readonly year: number; readonly running: number }[] = [];
      let currency = '';
      for (let year = firstYear; year <= Math.max(lastYear, firstYear); year += 1) {
        const from = `${String(year)}-01-01T00:00:00.000Z`;
        const until = `${String(year + 1)}-01-01T00:00:00.000Z`;
        const gathered = await gatherCosts(tx, { only: [vehicle.id], from, until, asOf: undefined });
        currency = gathered.currency;
        const [costs] = gathered.costs;
        if (year <= lastYear && costs !== undefined)
          ownYears.push({ year, running: Number(costs.total.amount) });
      }
      refuseOtherCurrency(command, currency);
      return { currency, ownYears, outcome: outcomeOf(command, ownYears) };
    });
  }
}

function refuseOtherCurrency({ resaleNow, challenger }: KeepingCommand, currency: string): void {
  for (const [pointer, money] of [
    ['/resaleNow/currency', resaleNow],
    ['/challenger/price/currency', challenger.price],
  ] as const) {
    if (money.currency !== currency)
      throw new DomainError('currency.mismatch', `The shop counts in ${currency}. Give all amounts in it.`, [
        { pointer, rule: 'oneCurrency', detail: currency },
      ]);
  }
}

function outcomeOf(command: KeepingCommand, ownYears: KeepingView['ownYears']): KeepingView['outcome'] {
  const { expectedRunning, furtherYears, challenger, discountRate } = command;
  if (expectedRunning !== null && expectedRunning.length !== furtherYears)
    throw invalidInput(
      '/expectedRunning',
      'length',
      `Give one amount for each of the ${String(furtherYears)} years.`,
    );
  const running =
    expectedRunning?.map((expected) => ({ expected, lower: null, upper: null })) ??
    toldYears(ownYears, furtherYears);
  if (running === null) return { kind: 'insufficientData', needed: fewestYears, got: ownYears.length };
  const options = discountRate === null || discountRate === 0 ? {} : { discountRate };
  const life = economicLife(Number(challenger.price.amount), challenger.years, options);
  if (life.kind === 'insufficientData')
    return { kind: 'insufficientData', needed: life.needed, got: life.got };
  const decide = (of: (year: RunningYear) => number | null): ChallengerDecision | null => {
    const costs = running.map(of);
    const known = costs.filter((each) => each !== null);
    if (known.length < costs.length) return null;
    const periods = known.map((each, place) => ({ running: each, resale: resaleAfter(command, place + 1) }));
    const decision = challengerRule(Number(command.resaleNow.amount), periods, life.cost, options);
    return decision.kind === 'insufficientData' ? null : decision;
  };
  const decision = decide(({ expected }) => expected);
  if (decision === null) return { kind: 'insufficientData', needed: 1, got: 0 };
  return {
    kind: 'decided',
    basis: expectedRunning === null ? 'ownYears' : 'stated',
    running,
    challenger: life,
    decision,
    ifLower: decide(({ lower }) => lower),
    ifUpper: decide(({ upper }) => upper),
  };
}

const resaleAfter = ({ resaleNow, resaleFall }: KeepingCommand, years: number): number =>
  Number(resaleNow.amount) * (1 - resaleFall) ** years;

/** A straight line through the costs of full years, never below 0; null with fewer than three. */
function toldYears(ownYears: KeepingView['ownYears'], furtherYears: number): readonly RunningYear[] | null {
  const last = ownYears.at(-1);
  if (last === undefined || ownYears.length < fewestYears) return null;
  const fit = ordinaryLeastSquares(ownYears.map(({ year, running }) => [year - last.year, running] as const));
  if (fit.kind !== 'estimated') return null;
  return Array.from({ length: furtherYears }, (_, place) => {
    // The first further year is the one that runs now.
    const { fitted, predictionInterval } = predictOnLine(fit, place + 1, { confidence: level });
    return {
      expected: Math.max(0, fitted),
      lower: Math.max(0, predictionInterval.lower),
      upper: Math.max(0, predictionInterval.upper),
    };
  });
}
