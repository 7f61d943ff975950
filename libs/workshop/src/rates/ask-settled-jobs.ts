import type { ComebackCountsAgainst } from '@endfloat/catalogue';
import { settlingVersion } from '@endfloat/reliability';
import { invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { ShopSettings } from '../ports/records/shop.records.js';
import type { Caller } from '../ports/roles.js';
import type { RateQuestion, SettledJobReads } from '../ports/settled-jobs.port.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { refuseFuture } from '../recording/happened-at.js';
import { vehiclesOf } from '../recording/vehicle-visibility.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { RowsInMemory } from './rows-in-memory.js';
import { SettleJobsUseCase } from './settle-jobs.use-case.js';
import { settledRows } from './settled-rows.js';

/** What every question about comebacks may narrow. */
export interface RateQuery {
  readonly at?: string | undefined;
  readonly asOf?: string | undefined;
  readonly from?: string | undefined;
  readonly until?: string | undefined;
  readonly customerId?: string | undefined;
  readonly symptom?: string | undefined;
  readonly component?: string | undefined;
  readonly action?: string | undefined;
  readonly against?: ComebackCountsAgainst | undefined;
  readonly group?: RateQuestion['group'];
}

/** What an answer rests on. */
export interface RateBasis {
  /** windows as they stood at this instant */
  readonly at: string;
  readonly asOf: string | null;
  readonly against: ComebackCountsAgainst | null;
  readonly currency: string;
  /** vehicles whose latest records are not in these numbers yet; 0 unless very much was recorded at once */
  readonly unsettledVehicles: number;
  readonly methodVersion: number;
}

export interface AskedSettledJobs {
  readonly tx: ShopTransaction;
  readonly reads: SettledJobReads;
  readonly question: RateQuestion;
  readonly settings: ShopSettings;
  readonly basis: RateBasis;
}

/** Vehicles settled at once for a question that finds some waiting; the rest is left to the worker and told. */
const settledForAnAnswer = 300;
const mostWaiting = 100_000;
/** Released jobs that a question as of an earlier moment works through: it reads the records themselves. */
export const mostJobsAsOf = 20_000;

/** Asks the settled jobs, brought up to the records first; as of an earlier moment, the records as they were known. */
export async function askSettledJobs<T>(
  { work, clock }: { readonly work: UnitOfWork; readonly clock: Clock },
  caller: Caller,
  query: RateQuery,
  answer: (asked: AskedSettledJobs) => Promise<T>,
): Promise<T> {
  const now = clock.now();
  const { asOf, ...narrowed } = query;
  const at = query.at ?? asOf ?? now;
  refuseFuture(at, now, '/at');
  if (
    query.from !== undefined &&
    query.until !== undefined &&
    Date.parse(query.from) >= Date.parse(query.until)
  )
    throw invalidInput(
      '/until',
      'order',
      'The period ends before it begins. Give an "until" later than "from".',
    );
  const ask = async (tx: ShopTransaction, unsettledVehicles: number): Promise<T> => {
    const settings = await settingsOf(tx, asOf);
    const vehicleIds =
      caller.customerId === undefined ? undefined : await vehiclesOf(tx, caller.customerId, now);
    const question: RateQuestion = { ...narrowed, at, timeZone: settings.timeZone, vehicleIds };
    const basis: RateBasis = {
      at,
      asOf: asOf ?? null,
      against: query.against ?? null,
      currency: settings.currency,
      unsettledVehicles,
      methodVersion: settlingVersion,
    };
    const reads = asOf === undefined ? tx.settledJobs : await readsAsOf(tx, asOf);
    return answer({ tx, reads, question, settings, basis });
  };
  const unsettled = (tx: ShopTransaction) => tx.settledJobs.unsettled(settlingVersion, mostWaiting);
  if (asOf !== undefined) return work.read(caller.shopId, (tx) => ask(tx, 0));
  const first = await work.read(caller.shopId, async (tx) =>
    (await unsettled(tx)) === 0 ? { answer: await ask(tx, 0) } : undefined,
  );
  if (first !== undefined) return first.answer;
  await new SettleJobsUseCase(work).execute(caller.shopId, settledForAnAnswer);
  return work.read(caller.shopId, async (tx) => ask(tx, await unsettled(tx)));
}

async function readsAsOf(tx: ShopTransaction, asOf: string): Promise<SettledJobReads> {
  const jobs = await tx.settledJobs.count();
  if (jobs > mostJobsAsOf) {
    throw invalidInput(
      '/asOf',
      'tooMany',
      `As of an earlier moment the records themselves are worked through, ${String(mostJobsAsOf)} released jobs at most; this shop has ${String(jobs)}. Leave "asOf" out, and give "at" for windows as they stood then.`,
    );
  }
  const vehicleIds = [...new Set((await tx.jobs.all({}, asOf)).map(({ identity }) => identity.vehicleId))];
  const operators = await tx.customers.all({ kind: 'fleetOperator' }, asOf);
  return new RowsInMemory(await settledRows(tx, vehicleIds, asOf), new Set(operators.map(({ id }) => id)));
}
