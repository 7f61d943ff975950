import { calibrationStandingOn } from '../bench/calibration-standing.js';
import type { InstrumentRecord } from '../bench/instruments.use-case.js';
import type { ReadingRecord } from '../bench/judging/bench-case.js';
import type { InspectionRecord } from '../bench/judging/gather-bench-case.js';
import { localDay } from '../bench/local-day.js';
import type { Calibration } from '../ports/records/bench.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import type { ReadingInHistory } from './history-entry.js';
import type { HistoryShelf } from './history-shelf.js';
import type { HistoryQuestion } from './tell-of-vehicle.js';

/** Inspections with their readings and verdicts. */
export async function tellOfBench(
  tx: ShopTransaction,
  shelf: HistoryShelf,
  question: HistoryQuestion,
): Promise<readonly InspectionRecord[]> {
  const { vehicleId } = question;
  const inspections = await shelf.latest('inspection', tx.inspections, { vehicleId });
  const jobOf = new Map(inspections.map(({ id, identity }) => [id, identity.jobId]));
  await shelf.tell(tx.inspections, inspections, {
    kind: 'inspection',
    happenedAt: ({ content }) => content.startedAt,
    jobId: ({ identity }) => identity.jobId,
    view: (record) => record,
  });
  const inspectionId = inspections.map(({ id }) => id);
  const readings = await shelf.latestOf(
    'reading',
    tx.readings,
    { inspectionId },
    ({ content }) => content.takenAt,
  );
  const bench = await InstrumentsThen.of(tx, question.asOf);
  await shelf.tell(tx.readings, readings, {
    kind: 'reading',
    happenedAt: ({ content }) => content.takenAt,
    jobId: ({ identity }) => jobOf.get(identity.inspectionId) ?? null,
    lookUp: (all) => bench.lookUp(tx, all),
    view: (record) => bench.withInstrument(record),
  });
  await tellOfVerdicts(tx, shelf, inspections, readings);
  return inspections;
}

async function tellOfVerdicts(
  tx: ShopTransaction,
  shelf: HistoryShelf,
  inspections: readonly InspectionRecord[],
  readings: readonly ReadingRecord[],
): Promise<void> {
  const inspectionById = new Map(inspections.map((each) => [each.id, each]));
  const takenAt = new Map(readings.map(({ id, content }) => [id, content.takenAt]));
  const sheetIds = [...new Set(inspections.map(({ identity }) => identity.checkSheetId))];
  const sheets = new Map((await tx.checkSheets.findMany(sheetIds)).map(({ id, content }) => [id, content]));
  const verdicts = await shelf.latest('verdict', tx.verdicts, {
    inspectionId: inspections.map(({ id }) => id),
  });
  await shelf.tell(tx.verdicts, verdicts, {
    kind: 'verdict',
    happenedAt: ({ content, firstRecordedAt }) =>
      content.readingIds
        .flatMap((id) => takenAt.get(id) ?? [])
        .sort()
        .at(-1) ?? firstRecordedAt,
    jobId: ({ identity }) => inspectionById.get(identity.inspectionId)?.identity.jobId ?? null,
    view: (record) => {
      const { checkId, inspectionId } = record.identity;
      const sheet = sheets.get(inspectionById.get(inspectionId)?.identity.checkSheetId ?? '');
      const check = sheet?.definition.checks.find(({ id }) => id === checkId);
      if (check === undefined) throw new RangeError('a verdict on a check that is not on its sheet');
      return { record, check };
    },
  });
}

/** Instruments and their calibrations as they were known at the moment asked about. */
class InstrumentsThen {
  private readonly instruments = new Map<string, InstrumentRecord>();
  private readonly calibrations = new Map<string, Calibration[]>();

  private constructor(
    private readonly timeZone: string,
    private readonly asOf: string | undefined,
  ) {}

  static async of(tx: ShopTransaction, asOf: string | undefined): Promise<InstrumentsThen> {
    return new InstrumentsThen((await settingsOf(tx, asOf)).timeZone, asOf);
  }

  async lookUp(tx: ShopTransaction, readings: readonly ReadingRecord[]): Promise<void> {
    const ids = [...new Set(readings.flatMap(({ content }) => content.instrumentId ?? []))];
    for (const each of await tx.instruments.findMany(ids, this.asOf)) this.instruments.set(each.id, each);
    for (const { identity, content } of await tx.calibrations.all({ instrumentId: ids }, this.asOf)) {
      const known = this.calibrations.get(identity.instrumentId) ?? [];
      this.calibrations.set(identity.instrumentId, [...known, content]);
    }
  }

  withInstrument(record: ReadingRecord): ReadingInHistory {
    const { instrumentId, takenAt } = record.content;
    const instrument = this.instruments.get(instrumentId ?? '');
    if (instrument === undefined) return { record, instrument: null };
    const calibrations = this.calibrations.get(instrument.id) ?? [];
    const standing = calibrationStandingOn(calibrations, localDay(takenAt, this.timeZone));
    return { record, instrument: { record: instrument, standing } };
  }
}
