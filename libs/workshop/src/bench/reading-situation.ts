import type { CheckSheet, ComponentType } from '@endfloat/catalogue';
import { DomainError, unknownReference } from '../errors/domain.errors.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { Stamp } from '../ports/record-store.port.js';
import type { Instrument, Reading } from '../ports/records/bench.records.js';
import type { FittedPart, Warning } from '../ports/records/vehicles.records.js';
import type { ShopRole } from '../ports/roles.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { refuseFuture } from '../recording/happened-at.js';
import { refuseImpossiblePair } from './blades-of-set.js';
import { checkOf, doesNotFit, positionOf, resultContent, type ReadingEntry } from './entered-reading.js';
import { characteristicOf, type DoneWork } from './judging/bench-case.js';
import { worksOf, type BenchGround, type InspectionRecord } from './judging/gather-bench-case.js';
import { refuseForeignHands, rolesOfPeople } from './who-may-measure.js';

interface PartOnVehicle {
  readonly id: string;
  readonly content: FittedPart;
}

/**
 * Everything needed to turn entries into readings of one inspection, read once for any number of entries. Parts that
 * nobody had recorded yet are taken down as the original ones and written before the readings.
 */
export class ReadingSituation {
  private readonly newParts: PartOnVehicle[] = [];

  private constructor(
    readonly inspection: InspectionRecord,
    readonly sheet: CheckSheet,
    readonly types: readonly ComponentType[],
    private readonly works: readonly DoneWork[],
    private readonly distances: readonly { readonly readAt: string; readonly distanceKm: string }[],
    private readonly parts: PartOnVehicle[],
    private readonly instruments: ReadonlyMap<string, Instrument>,
    private readonly people: ReadonlyMap<string, readonly ShopRole[]>,
    private readonly namedBefore: string | null,
    private readonly ids: IdSource,
  ) {}

  /** @param namedBefore  who measured by the revision that is corrected: roles may have changed since */
  static async of(
    tx: ShopTransaction,
    ids: IdSource,
    { inspection, sheet, types }: BenchGround,
    entries: readonly ReadingEntry[],
    namedBefore: string | null = null,
  ): Promise<ReadingSituation> {
    const { vehicleId, jobId } = inspection.identity;
    const odometer = await tx.odometerEntries.all({ vehicleId });
    const distances = odometer
      .flatMap(({ content: { reliable, distanceKm, readAt } }) =>
        reliable && distanceKm !== null ? [{ readAt, distanceKm }] : [],
      )
      .sort((a, b) => a.readAt.localeCompare(b.readAt));
    const instrumentIds = [...new Set(entries.flatMap(({ instrumentId }) => instrumentId ?? []))];
    const instruments = instrumentIds.length === 0 ? [] : await tx.instruments.findMany(instrumentIds);
    return new ReadingSituation(
      inspection,
      sheet,
      types,
      await worksOf(tx, jobId),
      distances,
      [...(await tx.fittedParts.all({ vehicleId }))],
      new Map(instruments.map(({ id, content }) => [id, content])),
      await rolesOfPeople(
        tx,
        entries.map(({ measuredBy }) => measuredBy),
      ),
      namedBefore,
      ids,
    );
  }

  /**
   * The reading an entry stands for.
   *
   * @param at  JSON Pointer of the entry in the request
   * @throws DomainError  where the entry does not fit the check, names what is not there, or comes too late to be as found
   */
  readingOf(entry: ReadingEntry, now: string, at: string): Reading {
    const check = checkOf(this.sheet, entry.checkId, at);
    refuseFuture(entry.takenAt, now, `${at}/takenAt`);
    this.refuseTooEarly(entry.takenAt, at);
    const instrument = this.instrumentOf(entry.instrumentId, at);
    if (entry.measuredBy !== this.namedBefore)
      refuseForeignHands(this.people, entry.measuredBy, `${at}/measuredBy`);
    const characteristic = characteristicOf(this.types, check);
    const position = positionOf(this.types, check, entry.position, at);
    const { implausible, ...result } = resultContent(this.types, check, entry.result, at);
    if (entry.result.kind === 'bladePair') refuseImpossiblePair(entry.result, instrument, at);
    const late = this.lateAsFound(entry, at);
    const warnings: Warning[] = [
      ...(implausible === null ? [] : [implausible]),
      ...(late === null ? [] : [late]),
      ...(instrument !== null && instrument.kind !== check.instrumentKind && check.instrumentKind !== 'none'
        ? [
            {
              code: 'instrumentOfOtherKind',
              pointer: '/instrumentId',
              values: { kind: instrument.kind, expected: check.instrumentKind },
            },
          ]
        : []),
    ];
    return {
      ...result,
      checkId: check.id,
      characteristic: characteristic.id,
      trend: characteristic.trend,
      fittedPartId: this.partAt(check.componentTypeId, position, entry.takenAt),
      phase: entry.phase,
      position,
      place: entry.place,
      takenAt: entry.takenAt,
      distanceKm: this.distances.filter(({ readAt }) => readAt <= entry.takenAt).at(-1)?.distanceKm ?? null,
      instrumentId: entry.instrumentId,
      measuredBy: entry.measuredBy,
      valueConfirmed: implausible === null,
      conditions: entry.conditions,
      note: entry.note,
      warnings,
    };
  }

  /** Writes the original parts that readings referred to. */
  async writeNewParts(tx: ShopTransaction, stamp: Stamp): Promise<void> {
    const { vehicleId } = this.inspection.identity;
    await tx.fittedParts.addMany(
      this.newParts.map(({ id, content }) => ({ id, identity: { vehicleId }, content })),
      stamp,
    );
  }

  private instrumentOf(instrumentId: string | null, at: string): Instrument | null {
    if (instrumentId === null) return null;
    const instrument = this.instruments.get(instrumentId);
    if (instrument === undefined) throw unknownReference(`${at}/instrumentId`, 'instrument');
    return instrument;
  }

  private refuseTooEarly(takenAt: string, at: string): void {
    const oneDay = 24 * 60 * 60 * 1000;
    if (Date.parse(this.inspection.content.startedAt) - Date.parse(takenAt) <= oneDay) return;
    throw doesNotFit(
      'The reading is older than the inspection it is entered for. Check its date, or enter it under the inspection in which it was taken.',
      { pointer: `${at}/takenAt`, rule: 'beforeInspection', detail: this.inspection.content.startedAt },
    );
  }

  /** As found is what was there before any work on the part; afterwards nobody can know it any more. */
  private lateAsFound({ checkId, phase, takenAt }: ReadingEntry, at: string): Warning | null {
    const check = checkOf(this.sheet, checkId, at);
    if (phase !== 'asFound') return null;
    const work = this.works.find(
      ({ action, componentType, doneAt }) =>
        componentType === check.componentTypeId &&
        doneAt <= takenAt &&
        !(action === 'freeLinkage' && check.prerequisites.length > 0),
    );
    if (work === undefined) return null;
    if (this.inspection.content.asFoundNotTaken.some((remark) => remark.checkId === checkId)) {
      return { code: 'takenAfterWork', pointer: '/phase', values: { doneAt: work.doneAt } };
    }
    throw new DomainError(
      'reading.asFoundAfterWork',
      `Work on this part was done at ${work.doneAt}, before this reading. What was found before the work cannot be read any more: record the reading as left, or say on the inspection that as found was never taken.`,
      [{ pointer: `${at}/phase`, rule: 'asFoundBeforeWork', detail: work.action }],
    );
  }

  private partAt(componentType: string, position: string, at: string): string {
    const here = [...this.parts, ...this.newParts].filter(
      ({ content }) => content.componentType === componentType && content.position === position,
    );
    const fitted = here.filter(
      ({ content }) =>
        (content.fittedAt ?? '') <= at && (content.removedAt === null || content.removedAt > at),
    );
    const known = fitted.sort((a, b) => (a.content.fittedAt ?? '').localeCompare(b.content.fittedAt ?? ''));
    const last = known.at(-1);
    if (last !== undefined) return last.id;
    return this.originalPart(componentType, position, at, here);
  }

  private originalPart(
    componentType: string,
    position: string,
    at: string,
    here: readonly PartOnVehicle[],
  ): string {
    const before = here.flatMap(({ content: { removedAt } }) =>
      removedAt !== null && removedAt <= at ? [removedAt] : [],
    );
    const after = here.flatMap(({ content: { fittedAt } }) =>
      fittedAt !== null && fittedAt > at ? [fittedAt] : [],
    );
    const content: FittedPart = {
      componentType,
      position,
      condition: 'original',
      fittedAt: before.sort().at(-1) ?? null,
      fittedKm: null,
      removedAt: after.sort()[0] ?? null,
      removedKm: null,
      serial: null,
      batch: null,
      supplier: null,
      partNumber: null,
      removalReason: null,
      replacesPartId: null,
      workLineId: null,
    };
    const part = { id: this.ids.next(), content };
    this.newParts.push(part);
    return part.id;
  }
}
