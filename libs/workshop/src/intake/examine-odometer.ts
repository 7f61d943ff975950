import { examineOdometerEntry, type OdometerUnit } from '@endfloat/wear';
import type { Recorded, Stamp } from '../ports/record-store.port.js';
import type { OdometerEntry, OdometerSegment, OfVehicle } from '../ports/records/vehicles.records.js';
import { sameContent } from '../ports/same-content.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { correctRecord, exactly } from '../recording/correct-record.js';

export type OdometerEntryRecord = Recorded<OfVehicle, OdometerEntry>;

/** Digits as displayed; the distance is derived. */
export interface OdometerShown {
  readonly shown: string;
  readonly unit: OdometerUnit;
  readonly readAt: string;
  readonly readBy: string | null;
  readonly note: string | null;
}

/** What the entries of a vehicle are examined among; read once. */
export interface OdometerGround {
  readonly segments: readonly OdometerSegment[];
  readonly entries: readonly OdometerEntryRecord[];
  readonly expectedKmPerYear: string | null;
}

export async function odometerGroundOf(tx: ShopTransaction, vehicleId: string): Promise<OdometerGround> {
  const segments = await tx.odometerSegments.all({ vehicleId });
  const entries = await tx.odometerEntries.all({ vehicleId });
  const vehicle = await tx.vehicles.find(vehicleId);
  return {
    segments: segments.map(({ content }) => content),
    entries,
    expectedKmPerYear: vehicle?.content.expectedKmPerYear ?? null,
  };
}

export interface ExaminedAs {
  readonly id: string;
  /** whether an entry with a later date is a neighbour: not where that one was simply recorded afterwards */
  readonly looksAhead: boolean;
  /** the word of a person stands, whatever the rules say; null: by the rules */
  readonly settledReliable: boolean | null;
}

/** Examines an entry among its neighbours: what it means as a distance, and what looks odd. Nothing is ever refused. */
export function examinedEntry(
  { shown, unit, readAt, readBy, note }: OdometerShown,
  { segments, entries, expectedKmPerYear }: OdometerGround,
  { id, looksAhead, settledReliable }: ExaminedAs,
): OdometerEntry {
  const neighbours = entries
    .filter((other) => other.id !== id && (looksAhead || other.content.readAt <= readAt))
    .map(({ content }) => content);
  const found = examineOdometerEntry({ shown, unit, readAt }, neighbours, segments, expectedKmPerYear);
  return {
    shown,
    unit,
    readAt,
    readBy,
    note,
    distanceKm: found.distanceKm,
    operatingHours: found.operatingHours,
    reliable: settledReliable ?? found.reliable,
    settledReliable,
    warnings: found.warnings.map(({ code, values, proposals }) => ({
      code,
      pointer: '/shown',
      values,
      proposals,
    })),
  };
}

/** Whether an entry came in after one with a later date. */
export function isBackFilled({ warnings }: OdometerEntry): boolean {
  return warnings.some(({ code }) => code === 'backFilled');
}

/**
 * Examines the entries of a vehicle from a moment on again, because something before them is known otherwise now. One
 * that is judged as before gets no revision.
 */
export async function reexamineFrom(
  tx: ShopTransaction,
  vehicleId: string,
  from: string,
  stamp: Stamp,
  exceptId?: string,
): Promise<void> {
  const ground = await odometerGroundOf(tx, vehicleId);
  const entries = new Map(ground.entries.map((entry) => [entry.id, entry]));
  const meant = ground.entries
    .filter(({ id, content }) => content.readAt >= from && id !== exceptId)
    .sort((a, b) => a.content.readAt.localeCompare(b.content.readAt));
  for (const { id, revision, content } of meant) {
    const now = examinedEntry(
      content,
      { ...ground, entries: [...entries.values()] },
      { id, looksAhead: isBackFilled(content), settledReliable: content.settledReliable ?? null },
    );
    if (isSameEntry(now, content)) continue;
    const change = { id, expected: exactly(revision), content: now };
    entries.set(id, await correctRecord(tx.odometerEntries, 'odometer entry', change, stamp));
  }
}

/** The distance is a column that may come back with other trailing zeros. */
function isSameEntry(one: OdometerEntry, other: OdometerEntry): boolean {
  const asNumber = ({ distanceKm }: OdometerEntry) => (distanceKm === null ? null : Number(distanceKm));
  return (
    asNumber(one) === asNumber(other) &&
    sameContent({ ...one, distanceKm: null }, { ...other, distanceKm: null })
  );
}
