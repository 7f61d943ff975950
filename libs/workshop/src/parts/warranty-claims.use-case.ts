import { claimStandingAfter, warrantyCoverOn, type ClaimStanding, type WarrantyCover } from '@endfloat/stock';
import { localDay } from '../bench/local-day.js';
import { notNegative } from '../decide/offers.use-case.js';
import { DomainError, invalidInput } from '../errors/domain.errors.js';
import { distanceOf } from '../jobs/work-lines.use-case.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPosition, Recorded } from '../ports/record-store.port.js';
import type { ClaimStepEntry, WarrantyClaim, WarrantyClaimIdentity } from '../ports/records/stock.records.js';
import type { Warning } from '../ports/records/vehicles.records.js';
import type { Caller } from '../ports/roles.js';
import { sameContent } from '../ports/same-content.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord } from '../recording/add-record.js';
import { correctRecord, exactly, type ExpectedRevision } from '../recording/correct-record.js';
import { referencedRecord, requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { settingsOf } from '../shop/open-shop.use-case.js';

export type WarrantyClaimRecord = Recorded<WarrantyClaimIdentity, WarrantyClaim>;

export interface WarrantyClaimView {
  readonly record: WarrantyClaimRecord;
  readonly standing: ClaimStanding;
}

/** What a person enters about a claim; its steps come one by one, its cover is looked up. */
export type WarrantyClaimEntry = Omit<WarrantyClaim, 'state' | 'cover' | 'steps' | 'warnings'>;

const viewOf = (record: WarrantyClaimRecord): WarrantyClaimView => ({
  record,
  standing: claimStandingAfter(record.content.steps.map(({ kind }) => kind)),
});

/** Records a claim on a warranty. That the warranty had ended is said, and refuses nothing. */
export class RecordWarrantyClaimUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id?: string | undefined;
      readonly identity: WarrantyClaimIdentity;
      readonly claim: WarrantyClaimEntry;
    },
  ): Promise<WarrantyClaimView & { readonly created: boolean }> {
    const stamp = stampOf(this.clock, caller);
    return this.work.run(caller.shopId, async (tx) => {
      const { identity, claim } = command;
      const id = command.id ?? this.ids.next();
      const first = (await tx.warrantyClaims.history(id))[0]?.content;
      if (first === undefined) await refuseUnknown(tx, identity);
      const looked = await contentOf(tx, identity, claim, stamp.at);
      // The records may show another cover by now: the same claim sent again is the first one all the same.
      const { cover, warnings } = first ?? looked;
      const content: WarrantyClaim = { ...looked, cover, warnings, state: 'open', steps: [] };
      const added = await addRecord(tx.warrantyClaims, 'warranty claim', { id, identity, content }, stamp);
      if (added.created)
        await tx.announce({
          type: 'endfloat.warrantyClaim.recorded.v1',
          subjectId: id,
          at: stamp.at,
          payload: { giver: content.giver, cover: content.cover.kind },
        });
      return { ...viewOf(added.record), created: added.created };
    });
  }
}

/** Corrects a claim; its steps stay, its cover is looked up anew. */
export class CorrectWarrantyClaimUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly claim: WarrantyClaimEntry;
      readonly reason: string;
    },
  ): Promise<WarrantyClaimView> {
    const stamp = stampOf(this.clock, caller, command.reason);
    return this.work.run(caller.shopId, async (tx) => {
      const { identity } = await requiredRecord(tx.warrantyClaims, 'warranty claim', command.id);
      const entered = await contentOf(tx, identity, command.claim, stamp.at);
      const content = (now: WarrantyClaim): WarrantyClaim => ({
        ...entered,
        state: now.state,
        steps: now.steps,
      });
      const change = { id: command.id, expected: command.expected, content };
      return viewOf(await correctRecord(tx.warrantyClaims, 'warranty claim', change, stamp));
    });
  }
}

/** The next step of a claim. */
export class StepWarrantyClaimUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id: string; readonly step: ClaimStepEntry },
  ): Promise<WarrantyClaimView> {
    const stamp = stampOf(this.clock, caller);
    return this.work.run(caller.shopId, async (tx) => {
      await tx.takeTurn(command.id);
      const record = await requiredRecord(tx.warrantyClaims, 'warranty claim', command.id);
      const today = localDay(stamp.at, (await settingsOf(tx)).timeZone);
      const step = checkedStep(command.step, record.content, today);
      const last = record.content.steps.at(-1);
      if (last !== undefined && sameContent(last, step)) return viewOf(record);
      const { state, next } = viewOf(record).standing;
      if (!next.includes(step.kind))
        throw new DomainError(
          'record.wrongState',
          `The claim is ${state}. ${next.length === 0 ? 'Nothing follows.' : `What may follow: ${next.join(', ')}.`}`,
          [{ pointer: '/kind', rule: 'order', detail: next.join(', ') }],
        );
      const content = { ...record.content, state: step.kind, steps: [...record.content.steps, step] };
      const after = await correctRecord(
        tx.warrantyClaims,
        'warranty claim',
        { id: record.id, expected: exactly(record.revision), content },
        { ...stamp, reason: step.reason ?? step.kind },
      );
      const payload = { state: step.kind, on: step.on };
      await tx.announce({
        type: 'endfloat.warrantyClaim.stepped.v1',
        subjectId: record.id,
        at: stamp.at,
        payload,
      });
      return viewOf(after);
    });
  }
}

export class ListWarrantyClaimsUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(
    caller: Caller,
    query: {
      /** true: not settled and not withdrawn; false: the others */
      readonly isOpen?: boolean | undefined;
      readonly supplier?: string | undefined;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<{ readonly items: readonly WarrantyClaimView[]; readonly next?: ListPosition | undefined }> {
    const { isOpen, supplier, ...page } = query;
    const ended = ['settled', 'withdrawn'];
    const state = isOpen === undefined ? undefined : isOpen ? ['open', 'sent', 'accepted', 'refused'] : ended;
    return this.work.read(caller.shopId, async (tx) => {
      const list = await tx.warrantyClaims.list({ where: { state, supplier }, ...page });
      return { items: list.items.map(viewOf), next: list.next };
    });
  }

  one(caller: Caller, id: string, asOf?: string): Promise<WarrantyClaimView> {
    return this.work.read(caller.shopId, async (tx) =>
      viewOf(await requiredRecord(tx.warrantyClaims, 'warranty claim', id, asOf)),
    );
  }

  revisions(caller: Caller, id: string): Promise<readonly WarrantyClaimView[]> {
    return this.work.read(caller.shopId, async (tx) => {
      await requiredRecord(tx.warrantyClaims, 'warranty claim', id);
      return (await tx.warrantyClaims.history(id)).map(viewOf);
    });
  }
}

async function refuseUnknown(tx: ShopTransaction, identity: WarrantyClaimIdentity): Promise<void> {
  const { partId, fittedPartId, jobId } = identity;
  if (partId !== null) await referencedRecord(tx.parts, 'part', partId, '/partId');
  if (jobId !== null) await referencedRecord(tx.jobs, 'job', jobId, '/jobId');
  if (fittedPartId !== null)
    await referencedRecord(tx.fittedParts, 'fitted part', fittedPartId, '/fittedPartId');
}

async function contentOf(
  tx: ShopTransaction,
  identity: WarrantyClaimIdentity,
  claim: WarrantyClaimEntry,
  now: string,
): Promise<Omit<WarrantyClaim, 'state' | 'steps'>> {
  const { timeZone } = await settingsOf(tx);
  const today = localDay(now, timeZone);
  for (const member of ['claimedOn', 'foundOn'] as const)
    if (claim[member] > today)
      throw invalidInput(`/${member}`, 'notInFuture', 'This day lies in the future.');
  if (claim.foundOn > claim.claimedOn)
    throw invalidInput('/foundOn', 'order', 'A fault is claimed on the day it is found or later.');
  const amount = claim.amount === null ? null : notNegative(claim.amount, '/amount');
  const cover = await coverOf(tx, identity, claim, timeZone);
  return { ...claim, amount, cover, warnings: warningsOf(cover) };
}

/** Whether the warranty held, from the day of fitting and the distance gone with the part. */
async function coverOf(
  tx: ShopTransaction,
  { fittedPartId }: WarrantyClaimIdentity,
  { months, km, foundOn }: WarrantyClaimEntry,
  timeZone: string,
): Promise<WarrantyCover> {
  const terms = { months, km: km === null ? null : Number(km) };
  const part = fittedPartId === null ? undefined : await tx.fittedParts.find(fittedPartId);
  const fittedAt = part?.content.fittedAt ?? null;
  if (part === undefined || fittedAt === null) return warrantyCoverOn(terms, null, foundOn, null);
  const fittedOn = localDay(fittedAt, timeZone);
  if (foundOn < fittedOn)
    throw invalidInput('/foundOn', 'order', `The part was fitted on ${fittedOn}; its fault cannot be older.`);
  const end =
    part.content.removedKm ?? (await distanceOf(tx, part.identity.vehicleId, `${foundOn}T23:59:59.999Z`));
  const { fittedKm } = part.content;
  const gone = end === null || fittedKm === null ? null : Math.max(0, Number(end) - Number(fittedKm));
  return warrantyCoverOn(terms, fittedOn, foundOn, gone);
}

function warningsOf(cover: WarrantyCover): readonly Warning[] {
  if (cover.kind === 'ended')
    return [{ code: 'afterWarranty', pointer: '/foundOn', values: { by: cover.by } }];
  return cover.kind === 'unknown' ? [{ code: 'warrantyUnknown', pointer: '/foundOn', values: {} }] : [];
}

function checkedStep(step: ClaimStepEntry, claim: WarrantyClaim, today: string): ClaimStepEntry {
  if (step.on > today) throw invalidInput('/on', 'notInFuture', 'This day lies in the future.');
  const before = claim.steps.at(-1)?.on ?? claim.claimedOn;
  if (step.on < before)
    throw invalidInput('/on', 'order', `The step before was on ${before}; this one cannot come earlier.`);
  if ((step.kind === 'refused' || step.kind === 'withdrawn') && (step.reason ?? '').trim() === '')
    throw invalidInput('/reason', 'required', 'Say why.');
  if (step.amount === null) return step;
  const amount = notNegative(step.amount, '/amount');
  if (claim.amount !== null && claim.amount.currency !== amount.currency)
    throw new DomainError(
      'currency.mismatch',
      `The claim is in ${claim.amount.currency}. Give that currency.`,
      [{ pointer: '/amount/currency', rule: 'oneCurrency', detail: claim.amount.currency }],
    );
  return { ...step, amount };
}
