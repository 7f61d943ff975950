import type { Recorded } from '../ports/record-store.port.js';
import { courseOf, isUnderWay, jobState } from '../jobs/job-state.js';
import { localDay } from '../bench/local-day.js';
import type { Clock } from '../ports/clock.port.js';
import type { OfJob, WorkLine } from '../ports/records/jobs.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { partsOfKind } from '../wear/fleet-wear.js';
import { ListWearOutlooksUseCase, mostPartsOfOutlook } from '../wear/list-wear-outlooks.use-case.js';
import { wearCasesIfKnown } from '../wear/wear-case.js';
import { yearlyDistanceOf } from '../wear/yearly-distance.js';
import {
  comebackReason,
  labelOf,
  lifeReason,
  plannedReason,
  wearReason,
  type NeedReason,
  type VanNeeds,
} from './gather-needs.js';
import { ageOf, livesOfKind, type LivesOfKind, type VanOfPart } from './known-lives.js';
import { dayAfter } from './local-days.js';

/** Chances of the kind that come from counts of the shop, with those counts. */
export interface CountedChance {
  readonly chance: number;
  readonly events: number;
  readonly of: number;
}

/** Everything the need of a kind of part rests on. */
export interface NeedsOfKind {
  readonly componentType: string;
  readonly today: string;
  readonly vans: readonly VanNeeds[];
  readonly lives: LivesOfKind;
  /** how many planned replacements are done in the end */
  readonly planned: CountedChance;
  /** how many repairs without a new part come back and get one */
  readonly comebacks: CountedChance;
}

/**
 * Collects why vans may need a part of a kind. Two reads as of the same moment: the outlooks of wear open their own.
 */
export async function needsOfKind(
  ports: { readonly work: UnitOfWork; readonly clock: Clock },
  caller: Caller,
  componentType: string,
  asOf: string | undefined,
): Promise<NeedsOfKind> {
  const now = asOf ?? ports.clock.now();
  const wear = await wearReasons(ports, caller, componentType, now);
  return ports.work.read(caller.shopId, (tx) => gather(tx, componentType, now, wear));
}

type ReasonsByPart = ReadonlyMap<string, readonly NeedReason[]>;

async function wearReasons(
  { work, clock }: { readonly work: UnitOfWork; readonly clock: Clock },
  caller: Caller,
  componentType: string,
  now: string,
): Promise<ReasonsByPart> {
  const { cases, day } = await work.read(caller.shopId, async (tx) => ({
    cases: (await wearCasesIfKnown(tx, componentType, undefined, now)) ?? [],
    day: dayAfter(localDay(now, (await settingsOf(tx)).timeZone), 1),
  }));
  const outlooks = new ListWearOutlooksUseCase(work, clock);
  const reasons = new Map<string, NeedReason[]>();
  for (const { characteristic } of cases) {
    const { items } = await outlooks.execute(caller, {
      componentType,
      characteristic: characteristic.id,
      until: { kind: 'day', day },
      asOf: now,
      limit: mostPartsOfOutlook,
    });
    for (const { view } of items) {
      if (view.outcome.kind !== 'estimated') continue;
      const yearly = view.chance?.kind === 'estimated' ? view.chance.yearlyDistance : null;
      const own = reasons.get(view.series.part.id) ?? [];
      own.push(wearReason(view.outcome, yearly, characteristic.id));
      reasons.set(view.series.part.id, own);
    }
  }
  return reasons;
}

async function gather(
  tx: ShopTransaction,
  componentType: string,
  now: string,
  wear: ReasonsByPart,
): Promise<NeedsOfKind> {
  const { timeZone, comebackWindowDays, comebackWindowKm } = await settingsOf(tx);
  const parts = await partsOfKind(tx, componentType, now);
  const vans = await vansOf(tx, [...new Set(parts.map(({ identity }) => identity.vehicleId))], now);
  const lives = livesOfKind(parts, vans, now);
  const lines = await tx.workLines.all({ componentType }, now);
  const window = { days: comebackWindowDays, km: Number(comebackWindowKm) };
  const planned = plannedChance(lines);
  const comebacks = await comebackChance(tx, lines, now);
  const ofJobs = await jobReasons(tx, lines, { now, planned, comebacks, window, vans });
  const fitted = parts.filter(
    ({ content, identity }) =>
      content.removedAt === null && vans.get(identity.vehicleId)?.vehicle.retiredOn === null,
  );
  const needs = fitted.map((part): VanNeeds => {
    const { vehicleId } = part.identity;
    const van = vans.get(vehicleId)!;
    const { position } = part.content;
    return {
      vehicleId,
      label: labelOf(van.vehicle),
      position,
      application: van.vehicle.application,
      reasons: [
        ...(wear.get(part.id) ?? []),
        lifeReason(lives.lives, ageOf(part, van, now)),
        ...(ofJobs.get(`${vehicleId} ${position}`) ?? []),
      ],
    };
  });
  const seen = new Set(needs.map(({ vehicleId, position }) => `${vehicleId} ${position}`));
  return {
    componentType,
    today: localDay(now, timeZone),
    vans: [...needs, ...(await vansWithoutPart(tx, ofJobs, seen, now))],
    lives,
    planned,
    comebacks,
  };
}

async function vansOf(
  tx: ShopTransaction,
  ids: readonly string[],
  now: string,
): Promise<ReadonlyMap<string, VanOfPart>> {
  if (ids.length === 0) return new Map();
  const vans = new Map(
    (await tx.vehicles.findMany(ids, now)).map(({ id, content, firstRecordedAt }) => [
      id,
      { vehicle: content, firstRecordedAt, entries: [] as VanOfPart['entries'][number][] },
    ]),
  );
  for (const { identity, content } of await tx.odometerEntries.all({ vehicleId: ids }, now))
    vans.get(identity.vehicleId)?.entries.push(content);
  return vans;
}

type Lines = readonly Recorded<OfJob, WorkLine>[];

/** A replacement that was planned and is settled was done or dropped; Beta(1, 1) before any was. */
function plannedChance(lines: Lines): CountedChance {
  const settled = lines.filter(
    ({ content }) =>
      content.action === 'replace' && (content.state === 'done' || content.state === 'dropped'),
  );
  const done = settled.filter(({ content }) => content.state === 'done').length;
  return { chance: (done + 1) / (settled.length + 2), events: done, of: settled.length };
}

/** Repairs of the kind without a new part whose comeback was confirmed and got one; Beta(1, 9) before any was. */
async function comebackChance(tx: ShopTransaction, lines: Lines, now: string): Promise<CountedChance> {
  const replaced = new Set(
    lines
      .filter(({ content }) => content.state === 'done' && content.action === 'replace')
      .map(({ identity }) => identity.jobId),
  );
  const repaired = [
    ...new Set(lines.filter(({ content }) => content.state === 'done').map(({ identity }) => identity.jobId)),
  ].filter((jobId) => !replaced.has(jobId));
  if (repaired.length === 0) return { chance: 0.1, events: 0, of: 0 };
  const comebacks = (await tx.comebacks.all({ jobId: repaired }, now)).filter(
    ({ content }) => content.state === 'confirmed',
  );
  const complaintIds = comebacks.map(({ identity }) => identity.complaintId);
  const complaints = complaintIds.length === 0 ? [] : await tx.complaints.findMany(complaintIds, now);
  const later = new Map(complaints.map(({ id, content }) => [id, content.jobId]));
  const events = new Set(
    comebacks
      .filter(({ identity }) => replaced.has(later.get(identity.complaintId) ?? ''))
      .map(({ identity }) => identity.jobId),
  ).size;
  return { chance: (events + 1) / (repaired.length + 10), events, of: repaired.length };
}

interface JobsAsked {
  readonly now: string;
  readonly planned: CountedChance;
  readonly comebacks: CountedChance;
  readonly window: { readonly days: number; readonly km: number };
  readonly vans: ReadonlyMap<string, VanOfPart>;
}

/** Reasons by van and position: replacements planned on open jobs, and repairs that are still being watched. */
async function jobReasons(tx: ShopTransaction, lines: Lines, asked: JobsAsked): Promise<ReasonsByPart> {
  const reasons = new Map<string, NeedReason[]>();
  const jobIds = [...new Set(lines.map(({ identity }) => identity.jobId))];
  const jobs = jobIds.length === 0 ? [] : await tx.jobs.findMany(jobIds, asked.now);
  const releases = jobIds.length === 0 ? [] : await tx.releases.all({ jobId: jobIds }, asked.now);
  const releasedAt = new Map(releases.map(({ identity, content }) => [identity.jobId, content]));
  const add = (key: string, reason: NeedReason): void => {
    reasons.set(key, [...(reasons.get(key) ?? []), reason]);
  };
  for (const job of jobs) {
    const own = lines.filter(({ identity }) => identity.jobId === job.id);
    const { vehicleId } = job.identity;
    const release = releasedAt.get(job.id);
    const open = own.filter(({ content }) => content.state === 'planned' && content.action === 'replace');
    if (release === undefined && open.length > 0) {
      if (!isUnderWay(jobState(await courseOf(tx, job.id, asked.now)))) continue;
      for (const position of new Set(open.map(({ content }) => content.position)))
        add(`${vehicleId} ${position}`, plannedReason(job.id, asked.planned.chance));
      continue;
    }
    const repaired = own.filter(({ content }) => content.state === 'done');
    if (release === undefined || repaired.some(({ content }) => content.action === 'replace')) continue;
    const left = release.windowDays - (Date.parse(asked.now) - Date.parse(release.releasedAt)) / 86_400_000;
    if (left <= 0 || repaired.length === 0) continue;
    const van = asked.vans.get(vehicleId);
    const yearly = van === undefined ? null : yearlyDistanceOf(van.vehicle, van.entries);
    const share = left / Math.max(1, release.windowDays);
    const about = {
      days: left,
      km: Number(release.windowKm) * share,
      kmPerDay: yearly === null ? null : yearly.kmPerYear / 365.25,
    };
    for (const position of new Set(repaired.map(({ content }) => content.position)))
      add(`${vehicleId} ${position}`, comebackReason(job.id, asked.comebacks.chance * share, about));
  }
  return reasons;
}

/** Vans with such work on which the shop knows no part of the kind. */
async function vansWithoutPart(
  tx: ShopTransaction,
  ofJobs: ReasonsByPart,
  seen: ReadonlySet<string>,
  now: string,
): Promise<readonly VanNeeds[]> {
  const others = [...ofJobs].filter(([key]) => !seen.has(key));
  if (others.length === 0) return [];
  const ids = [...new Set(others.map(([key]) => key.slice(0, key.indexOf(' '))))];
  const vehicles = new Map((await tx.vehicles.findMany(ids, now)).map(({ id, content }) => [id, content]));
  return others.flatMap(([key, reasons]) => {
    const at = key.indexOf(' ');
    const vehicleId = key.slice(0, at);
    const vehicle = vehicles.get(vehicleId);
    if (vehicle === undefined || vehicle.retiredOn !== null) return [];
    const { application } = vehicle;
    return [{ vehicleId, label: labelOf(vehicle), position: key.slice(at + 1), application, reasons }];
  });
}
