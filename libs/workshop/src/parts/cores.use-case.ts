import { coreStandingOn, coreStates, type CoreStanding, type CoreState } from '@endfloat/stock';
import { localDay } from '../bench/local-day.js';
import { notNegative } from '../decide/offers.use-case.js';
import { DomainError, invalidInput } from '../errors/domain.errors.js';
import { courseOf } from '../jobs/job-state.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPosition, Recorded } from '../ports/record-store.port.js';
import type { Core, CoreIdentity, CoreStepEntry } from '../ports/records/stock.records.js';
import type { Warning } from '../ports/records/vehicles.records.js';
import type { Caller } from '../ports/roles.js';
import { sameContent } from '../ports/same-content.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord } from '../recording/add-record.js';
import { correctRecord, exactly, type ExpectedRevision } from '../recording/correct-record.js';
import { referencedRecord, requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { dayAfter } from './local-days.js';

export type CoreRecord = Recorded<CoreIdentity, Core>;

/** A core with where it stands today. */
export interface CoreView {
  readonly record: CoreRecord;
  readonly standing: CoreStanding;
  readonly warnings: readonly Warning[];
}

/** What a person enters about a core; its steps come one by one. */
export type CoreEntry = Omit<Core, 'state' | 'steps'>;

/** Records an old part that a supplier wants back; a receipt with a deposit does so by itself. */
export class RecordCoreUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id?: string | undefined;
      readonly partId: string | null;
      readonly jobId: string | null;
      readonly core: CoreEntry;
    },
  ): Promise<CoreView & { readonly created: boolean }> {
    const stamp = stampOf(this.clock, caller);
    const { partId, jobId } = command;
    return this.work.run(caller.shopId, async (tx) => {
      if (partId !== null) await referencedRecord(tx.parts, 'part', partId, '/partId');
      if (jobId !== null) await referencedRecord(tx.jobs, 'job', jobId, '/jobId');
      const today = await todayOf(tx, stamp.at);
      const content: Core = { ...checkedCore(command.core, today), state: 'owed', steps: [] };
      const identity = { partId, jobId, stockMoveId: null };
      const added = await addRecord(
        tx.cores,
        'core',
        { id: command.id ?? this.ids.next(), identity, content },
        stamp,
      );
      if (added.created)
        await tx.announce({
          type: 'endfloat.core.owed.v1',
          subjectId: added.record.id,
          at: stamp.at,
          payload: { componentType: content.componentType, returnBy: content.returnBy },
        });
      return { ...viewOf(added.record, today), created: added.created };
    });
  }
}

/** Corrects what is said about a core; its steps stay. */
export class CorrectCoreUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly core: CoreEntry;
      readonly reason: string;
    },
  ): Promise<CoreView> {
    const stamp = stampOf(this.clock, caller, command.reason);
    return this.work.run(caller.shopId, async (tx) => {
      const today = await todayOf(tx, stamp.at);
      const entry = checkedCore(command.core, today);
      const content = (now: Core): Core => ({ ...entry, state: now.state, steps: now.steps });
      const change = { id: command.id, expected: command.expected, content };
      return viewOf(await correctRecord(tx.cores, 'core', change, stamp), today);
    });
  }
}

/** The next step of a core: sent back, looked at, accepted, refused, credited. */
export class StepCoreUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, command: { readonly id: string; readonly step: CoreStepEntry }): Promise<CoreView> {
    const stamp = stampOf(this.clock, caller);
    return this.work.run(caller.shopId, async (tx) => {
      await tx.takeTurn(command.id);
      const record = await requiredRecord(tx.cores, 'core', command.id);
      const today = await todayOf(tx, stamp.at);
      const step = checkedStep(command.step, record.content, today);
      const last = record.content.steps.at(-1);
      if (last !== undefined && sameContent(last, step)) return viewOf(record, today);
      const { state, next } = coreStandingOn(record.content, record.content.steps, today);
      if (!next.includes(step.kind)) throw wrongStep(state, next);
      const warnings = step.kind === 'returned' ? await beforeRoadTest(tx, record, step) : [];
      const content = { ...record.content, state: step.kind, steps: [...record.content.steps, step] };
      const after = await correctRecord(
        tx.cores,
        'core',
        { id: record.id, expected: exactly(record.revision), content },
        { ...stamp, reason: step.reason ?? step.kind },
      );
      const payload = { state: step.kind, on: step.on };
      await tx.announce({ type: 'endfloat.core.stepped.v1', subjectId: record.id, at: stamp.at, payload });
      return { ...viewOf(after, today), warnings };
    });
  }
}

export interface CoreQuery {
  readonly state?: CoreState | undefined;
  readonly supplier?: string | undefined;
  /** owed cores whose last day comes within so many days */
  readonly dueWithinDays?: number | undefined;
  readonly asOf?: string | undefined;
  readonly after?: ListPosition | undefined;
  readonly limit: number;
}

export class ListCoresUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    query: CoreQuery,
  ): Promise<{ readonly items: readonly CoreView[]; readonly next?: ListPosition | undefined }> {
    const { state, supplier, dueWithinDays, asOf, ...page } = query;
    return this.work.read(caller.shopId, async (tx) => {
      const today = await todayOf(tx, asOf ?? this.clock.now());
      if (dueWithinDays === undefined && (state === undefined || !unsent.includes(state))) {
        const list = await tx.cores.list({ where: { state, supplier }, asOf, ...page });
        return { items: list.items.map((record) => viewOf(record, today)), next: list.next };
      }
      // That a last day has passed is not stored: among those not sent back, today decides.
      const until = dueWithinDays === undefined ? null : dayAfter(today, dueWithinDays);
      const ids = (await tx.cores.all({ state: 'owed', supplier }, asOf))
        .map((record) => viewOf(record, today))
        .filter(({ standing }) => state === undefined || standing.state === state)
        .filter(
          ({ record: { content } }) =>
            until === null ||
            (content.returnBy !== null && content.returnBy >= today && content.returnBy <= until),
        )
        .map(({ record }) => record.id);
      if (ids.length === 0) return { items: [] };
      const list = await tx.cores.list({ where: { id: ids }, asOf, ...page });
      return { items: list.items.map((record) => viewOf(record, today)), next: list.next };
    });
  }

  one(caller: Caller, id: string, asOf?: string): Promise<CoreView> {
    return this.work.read(caller.shopId, async (tx) => {
      const record = await requiredRecord(tx.cores, 'core', id, asOf);
      return viewOf(record, await todayOf(tx, asOf ?? this.clock.now()));
    });
  }

  revisions(caller: Caller, id: string): Promise<readonly CoreView[]> {
    return this.work.read(caller.shopId, async (tx) => {
      await requiredRecord(tx.cores, 'core', id);
      const today = await todayOf(tx, this.clock.now());
      return (await tx.cores.history(id)).map((record) => viewOf(record, today));
    });
  }
}

const unsent: readonly CoreState[] = coreStates.filter((state) => state === 'owed' || state === 'expired');

const viewOf = (record: CoreRecord, today: string): CoreView => ({
  record,
  standing: coreStandingOn(record.content, record.content.steps, today),
  warnings: [],
});

async function todayOf(tx: ShopTransaction, moment: string): Promise<string> {
  return localDay(moment, (await settingsOf(tx)).timeZone);
}

function checkedCore(core: CoreEntry, today: string): CoreEntry {
  if (core.owedSince > today) throw invalidInput('/owedSince', 'notInFuture', 'This day lies in the future.');
  if (core.returnBy !== null && core.returnBy < core.owedSince)
    throw invalidInput('/returnBy', 'order', 'The last day cannot come before the first.');
  return { ...core, deposit: core.deposit === null ? null : notNegative(core.deposit, '/deposit') };
}

function checkedStep(step: CoreStepEntry, core: Core, today: string): CoreStepEntry {
  if (step.on > today) throw invalidInput('/on', 'notInFuture', 'This day lies in the future.');
  const before = core.steps.at(-1)?.on ?? core.owedSince;
  if (step.on < before)
    throw invalidInput('/on', 'order', `The step before was on ${before}; this one cannot come earlier.`);
  if (step.kind === 'refused' && (step.reason ?? '').trim() === '')
    throw invalidInput('/reason', 'required', 'Say why it was refused.');
  if (step.amount !== null && step.kind !== 'credited')
    throw invalidInput('/amount', 'absent', 'Only a credit has an amount.');
  if (step.amount === null) return step;
  const amount = notNegative(step.amount, '/amount');
  if (core.deposit !== null && core.deposit.currency !== amount.currency)
    throw new DomainError(
      'currency.mismatch',
      `The deposit was paid in ${core.deposit.currency}. Give the credit in that currency.`,
      [{ pointer: '/amount/currency', rule: 'oneCurrency', detail: core.deposit.currency }],
    );
  return { ...step, amount };
}

function wrongStep(state: CoreState, next: readonly string[]): DomainError {
  const may = next.length === 0 ? 'Nothing follows.' : `What may follow: ${next.join(', ')}.`;
  return new DomainError('record.wrongState', `The core is ${state}. ${may}`, [
    { pointer: '/kind', rule: 'order', detail: next.join(', ') },
  ]);
}

/** The old part stays until the road test has passed: it is evidence, and may be the only one that can be repaired. */
async function beforeRoadTest(
  tx: ShopTransaction,
  { identity }: CoreRecord,
  step: CoreStepEntry,
): Promise<readonly Warning[]> {
  if (identity.jobId === null) return [];
  const { releasedAt } = await courseOf(tx, identity.jobId);
  if (releasedAt !== null) return [];
  if ((step.reason ?? '').trim() === '')
    throw new DomainError(
      'record.wrongState',
      'The job of this core is not released: keep the old part until the road test has passed, or say why it goes back before.',
      [{ pointer: '/reason', rule: 'afterRoadTest', detail: 'a reason is needed before the release' }],
    );
  return [{ code: 'coreBeforeRoadTest', pointer: '/on', values: {} }];
}
