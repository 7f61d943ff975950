import type { CheckSheet, ComponentType } from '@endfloat/catalogue';
import type { Recorded } from '../../ports/record-store.port.js';
import type { Inspection, InspectionIdentity } from '../../ports/records/bench.records.js';
import type { ShopTransaction } from '../../ports/unit-of-work.port.js';
import { requiredRecord } from '../../recording/required-record.js';
import { settingsOf } from '../../shop/open-shop.use-case.js';
import { componentTypesOf } from '../component-types-of.js';
import { calibrationStandingOn } from '../calibration-standing.js';
import { studiedRepeatabilitiesOf } from '../gauge-studies/studied-repeatability.js';
import { localDay } from '../local-day.js';
import { counts, type BenchCase, type BenchInstrument, type DoneWork } from './bench-case.js';
import { contextOfVehicle } from './limit-context.js';

export type InspectionRecord = Recorded<InspectionIdentity, Inspection>;

/** The sheet an inspection follows. */
export async function sheetOf(tx: ShopTransaction, inspection: InspectionRecord): Promise<CheckSheet> {
  const sheet = await tx.checkSheets.find(inspection.identity.checkSheetId);
  if (sheet === undefined) throw new RangeError('an inspection without its check sheet');
  return sheet.content.definition;
}

/**
 * The inspection, with the turn of its vehicle: readings of one van are recorded and judged one after the other, so that
 * every verdict rests on all readings, also of other checks, and no part is taken for the original one twice.
 */
export async function inspectionInTurn(tx: ShopTransaction, id: string): Promise<InspectionRecord> {
  const { identity } = await requiredRecord(tx.inspections, 'inspection', id);
  await tx.takeTurn(identity.vehicleId);
  return requiredRecord(tx.inspections, 'inspection', id);
}

/** What stays the same while readings of one inspection are recorded and judged; read once. */
export interface BenchGround {
  readonly inspection: InspectionRecord;
  readonly sheet: CheckSheet;
  readonly types: readonly ComponentType[];
}

export async function groundOf(tx: ShopTransaction, inspection: InspectionRecord): Promise<BenchGround> {
  return { inspection, sheet: await sheetOf(tx, inspection), types: await componentTypesOf(tx) };
}

/** Collects everything the verdicts of an inspection rest on, as it is now. */
export async function gatherBenchCase(
  tx: ShopTransaction,
  { inspection, sheet, types }: BenchGround,
): Promise<BenchCase> {
  const { vehicleId, jobId } = inspection.identity;
  const readings = (await tx.readings.all({ inspectionId: inspection.id })).filter(counts);
  const { timeZone } = await settingsOf(tx);
  const vehicle = await tx.vehicles.find(vehicleId);
  const characteristics = [...new Set(sheet.checks.map(({ characteristicId }) => characteristicId))];
  const limits = await tx.shopLimits.all({ characteristic: characteristics });
  return {
    sheet,
    componentTypes: types,
    readings,
    instruments: await instrumentsOf(
      tx,
      readings.flatMap(({ content: { instrumentId } }) => (instrumentId === null ? [] : [instrumentId])),
    ),
    works: await worksOf(tx, jobId),
    notDone: inspection.content.notDone,
    studies: await studiedRepeatabilitiesOf(tx, characteristics),
    context: vehicle === undefined ? {} : contextOfVehicle(vehicle.content),
    shopLimits: limits.map(({ content }) => content.limit),
    localDay: (at) => localDay(at, timeZone),
  };
}

/** Work recorded as done on a job; none without a job. */
export async function worksOf(
  tx: ShopTransaction,
  jobId: string | null,
  asOf?: string,
): Promise<readonly DoneWork[]> {
  if (jobId === null) return [];
  const lines = await tx.workLines.all({ jobId }, asOf);
  return lines.flatMap(({ content: { action, componentType, state, doneAt } }) =>
    state === 'done' && doneAt !== null ? [{ action, componentType, doneAt }] : [],
  );
}

export async function instrumentsOf(
  tx: ShopTransaction,
  ids: readonly string[],
  asOf?: string,
): Promise<ReadonlyMap<string, BenchInstrument>> {
  const wanted = [...new Set(ids)];
  if (wanted.length === 0) return new Map();
  const instruments = await tx.instruments.findMany(wanted, asOf);
  const calibrations = await tx.calibrations.all({ instrumentId: wanted }, asOf);
  return new Map(
    instruments.map(({ id, content }) => {
      const own = calibrations.filter(({ identity }) => identity.instrumentId === id);
      const isOverdueOn = (day: string): boolean => {
        const { kind } = calibrationStandingOn(
          own.map((calibration) => calibration.content),
          day,
        );
        return kind === 'overdue' || kind === 'neverCalibrated' || kind === 'failed';
      };
      return [id, { instrument: content, isOverdueOn }] as const;
    }),
  );
}
