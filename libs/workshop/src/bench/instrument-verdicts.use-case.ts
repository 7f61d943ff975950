import type { Check } from '@endfloat/catalogue';
import type { Clock } from '../ports/clock.port.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { requiredRecord } from '../recording/required-record.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { lastGoodCalibration } from './calibration-standing.js';
import { localDay } from './local-day.js';
import type { VerdictView } from './reading-view.js';

export interface InstrumentVerdicts {
  readonly instrumentId: string;
  /** day of the last passed calibration; null: never, so all verdicts are listed */
  readonly lastGoodCalibrationOn: string | null;
  readonly verdicts: readonly (VerdictView & { readonly vehicleId: string; readonly takenAt: string })[];
}

/** Which verdicts rested on an instrument since its last passed calibration: what to look at again if it proves wrong. */
export class InstrumentVerdictsUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    query: { readonly instrumentId: string; readonly asOf?: string | undefined; readonly limit: number },
  ): Promise<InstrumentVerdicts> {
    const { instrumentId, asOf } = query;
    return this.work.read(caller.shopId, async (tx) => {
      await requiredRecord(tx.instruments, 'instrument', instrumentId, asOf);
      const { timeZone } = await settingsOf(tx, asOf);
      const calibrations = await tx.calibrations.all({ instrumentId }, asOf);
      const since =
        lastGoodCalibration(
          calibrations.map(({ content }) => content),
          localDay(asOf ?? this.clock.now(), timeZone),
        )?.calibratedOn ?? null;
      const readings = (await tx.readings.all({ instrumentId }, asOf)).filter(
        ({ content }) => since === null || localDay(content.takenAt, timeZone) >= since,
      );
      const takenAt = new Map(readings.map(({ id, content }) => [id, content.takenAt]));
      const inspectionIds = [...new Set(readings.map(({ identity }) => identity.inspectionId))];
      if (inspectionIds.length === 0) return { instrumentId, lastGoodCalibrationOn: since, verdicts: [] };
      const inspections = new Map(
        (await tx.inspections.findMany(inspectionIds)).map((each) => [each.id, each]),
      );
      const sheets = new Map(
        (
          await tx.checkSheets.findMany([
            ...new Set([...inspections.values()].map(({ identity }) => identity.checkSheetId)),
          ])
        ).map(({ id, content }) => [id, content.definition]),
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
      return { instrumentId, lastGoodCalibrationOn: since, verdicts: verdicts.slice(0, query.limit) };
    });
  }
}
