import type { Check } from '@endfloat/catalogue';
import { readingLinks } from '../decide/evidence.js';
import type { Clock } from '../ports/clock.port.js';
import type { Recorded } from '../ports/record-store.port.js';
import type {
  Assessment,
  AssessmentIdentity,
  Decision,
  OfAssessment,
} from '../ports/records/decide.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { requiredRecord } from '../recording/required-record.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { lastGoodCalibration } from './calibration-standing.js';
import type { ReadingRecord } from './judging/bench-case.js';
import { localDay } from './local-day.js';
import type { VerdictView } from './reading-view.js';

export interface InstrumentVerdicts {
  readonly instrumentId: string;
  /** day of the last passed calibration; null: never, so all verdicts are listed */
  readonly lastGoodCalibrationOn: string | null;
  readonly verdicts: readonly (VerdictView & { readonly vehicleId: string; readonly takenAt: string })[];
}

/** An assessment that read what the instrument had shown. */
export interface RestingAssessment {
  readonly record: Recorded<AssessmentIdentity, Assessment>;
  readonly readingIds: readonly string[];
}

/** A person's decision on such an assessment. */
export interface RestingDecision {
  readonly record: Recorded<OfAssessment, Decision>;
  readonly assessment: RestingAssessment;
}

export interface InstrumentConsequences extends InstrumentVerdicts {
  /** readings since then, withdrawn ones among them */
  readonly readings: number;
  readonly assessments: readonly RestingAssessment[];
  readonly decisions: readonly RestingDecision[];
}

interface InstrumentQuery {
  readonly instrumentId: string;
  readonly asOf?: string | undefined;
  readonly limit: number;
}

/** Which verdicts rested on an instrument since its last passed calibration: what to look at again if it proves wrong. */
export class InstrumentVerdictsUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, query: InstrumentQuery): Promise<InstrumentVerdicts> {
    return this.work.read(caller.shopId, async (tx) => {
      const since = await readingsSince(tx, query, this.clock.now());
      return { ...(await verdictsOn(tx, since, query)), instrumentId: query.instrumentId };
    });
  }

  /** The same with the assessments that read these readings and the decisions made on them; each list the latest first. */
  consequences(caller: Caller, query: InstrumentQuery): Promise<InstrumentConsequences> {
    const { instrumentId, asOf, limit } = query;
    return this.work.read(caller.shopId, async (tx) => {
      const since = await readingsSince(tx, query, this.clock.now());
      const verdicts = await verdictsOn(tx, since, query);
      const assessments = await assessmentsOn(tx, since.readings, verdicts.vehicleIds, asOf);
      const byId = new Map(assessments.map((each) => [each.record.id, each]));
      const decisions =
        byId.size === 0 ? [] : await tx.decisions.all({ assessmentId: [...byId.keys()] }, asOf);
      return {
        ...verdicts,
        instrumentId,
        readings: since.readings.length,
        assessments: assessments.slice(0, limit),
        decisions: decisions
          .map((record) => ({ record, assessment: byId.get(record.identity.assessmentId)! }))
          .sort((a, b) => b.record.content.decidedAt.localeCompare(a.record.content.decidedAt))
          .slice(0, limit),
      };
    });
  }
}

interface ReadingsSince {
  readonly lastGoodCalibrationOn: string | null;
  readonly readings: readonly ReadingRecord[];
}

async function readingsSince(
  tx: ShopTransaction,
  { instrumentId, asOf }: InstrumentQuery,
  now: string,
): Promise<ReadingsSince> {
  await requiredRecord(tx.instruments, 'instrument', instrumentId, asOf);
  const { timeZone } = await settingsOf(tx, asOf);
  const calibrations = await tx.calibrations.all({ instrumentId }, asOf);
  const since =
    lastGoodCalibration(
      calibrations.map(({ content }) => content),
      localDay(asOf ?? now, timeZone),
    )?.calibratedOn ?? null;
  const readings = (await tx.readings.all({ instrumentId }, asOf)).filter(
    ({ content }) => since === null || localDay(content.takenAt, timeZone) >= since,
  );
  return { lastGoodCalibrationOn: since, readings };
}

async function verdictsOn(
  tx: ShopTransaction,
  { readings, lastGoodCalibrationOn }: ReadingsSince,
  { asOf, limit }: InstrumentQuery,
): Promise<
  Pick<InstrumentVerdicts, 'lastGoodCalibrationOn' | 'verdicts'> & { readonly vehicleIds: readonly string[] }
> {
  const takenAt = new Map(readings.map(({ id, content }) => [id, content.takenAt]));
  const inspectionIds = [...new Set(readings.map(({ identity }) => identity.inspectionId))];
  if (inspectionIds.length === 0) return { lastGoodCalibrationOn, verdicts: [], vehicleIds: [] };
  const inspections = new Map((await tx.inspections.findMany(inspectionIds)).map((each) => [each.id, each]));
  const sheetIds = [...new Set([...inspections.values()].map(({ identity }) => identity.checkSheetId))];
  const sheets = new Map(
    (await tx.checkSheets.findMany(sheetIds)).map(({ id, content }) => [id, content.definition]),
  );
  const verdicts = (await tx.verdicts.all({ inspectionId: inspectionIds }, asOf)).flatMap((record) => {
    const times = record.content.readingIds.flatMap((id) => takenAt.get(id) ?? []).sort();
    const inspection = inspections.get(record.identity.inspectionId);
    const check: Check | undefined = sheets
      .get(inspection?.identity.checkSheetId ?? '')
      ?.checks.find(({ id }) => id === record.identity.checkId);
    const last = times.at(-1);
    if (last === undefined || inspection === undefined || check === undefined) return [];
    return [{ record, check, vehicleId: inspection.identity.vehicleId, takenAt: last }];
  });
  verdicts.sort((a, b) => b.takenAt.localeCompare(a.takenAt));
  const vehicleIds = [...new Set([...inspections.values()].map(({ identity }) => identity.vehicleId))];
  return { lastGoodCalibrationOn, verdicts: verdicts.slice(0, limit), vehicleIds };
}

/** Assessments of these vehicles whose input names one of the readings, the latest first. */
async function assessmentsOn(
  tx: ShopTransaction,
  readings: readonly ReadingRecord[],
  vehicleIds: readonly string[],
  asOf: string | undefined,
): Promise<readonly RestingAssessment[]> {
  if (vehicleIds.length === 0) return [];
  const own = new Set(readings.map(({ id }) => id));
  return (await tx.assessments.all({ vehicleId: vehicleIds }, asOf))
    .map((record) => ({ record, readingIds: readingLinks(record.content.input).filter((id) => own.has(id)) }))
    .filter(({ readingIds }) => readingIds.length > 0)
    .sort((a, b) => b.record.firstRecordedAt.localeCompare(a.record.firstRecordedAt));
}
