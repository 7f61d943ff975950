import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPosition, Recorded } from '../ports/record-store.port.js';
import type { Calibration, Instrument, OfInstrument } from '../ports/records/bench.records.js';
import type { NoReferences } from '../ports/records/shop.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { invalidInput } from '../errors/domain.errors.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { calibrationStandingOn, type CalibrationStanding } from './calibration-standing.js';
import { instrumentFault } from './instrument-properties.js';
import { localDay } from './local-day.js';

export type InstrumentRecord = Recorded<NoReferences, Instrument>;
export type CalibrationRecord = Recorded<OfInstrument, Calibration>;

export interface CalibrationsOfInstrument {
  readonly standing: CalibrationStanding;
  readonly calibrations: readonly CalibrationRecord[];
}

export interface InstrumentView {
  readonly record: InstrumentRecord;
  readonly standing: CalibrationStanding;
}

/** Records an instrument: what kind it is, what it can resolve, how far it may be off. */
export class RecordInstrumentUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly instrument: Instrument },
  ): Promise<AddedRecord<NoReferences, Instrument>> {
    const stamp = stampOf(this.clock, caller);
    refuseUnusable(command.instrument);
    const record = { id: command.id ?? this.ids.next(), identity: {}, content: command.instrument };
    return this.work.run(caller.shopId, (tx) => addRecord(tx.instruments, 'instrument', record, stamp));
  }
}

/** Corrects what is recorded about an instrument, its retirement included. Verdicts already made keep what they used. */
export class CorrectInstrumentUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly instrument: Instrument;
      readonly reason: string;
    },
  ): Promise<InstrumentRecord> {
    const stamp = stampOf(this.clock, caller, command.reason);
    refuseUnusable(command.instrument);
    const change = { id: command.id, expected: command.expected, content: command.instrument };
    return this.work.run(caller.shopId, (tx) => correctRecord(tx.instruments, 'instrument', change, stamp));
  }
}

/** Records that an instrument was calibrated, and whether it passed. */
export class RecordCalibrationUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id?: string | undefined;
      readonly instrumentId: string;
      readonly calibration: Calibration;
    },
  ): Promise<AddedRecord<OfInstrument, Calibration>> {
    const stamp = stampOf(this.clock, caller);
    const { calibration, instrumentId } = command;
    if (calibration.dueOn !== null && calibration.dueOn <= calibration.calibratedOn)
      throw invalidInput('/dueOn', 'order', 'The next calibration is due after this one.');
    return this.work.run(caller.shopId, async (tx) => {
      await requiredRecord(tx.instruments, 'instrument', instrumentId);
      const { timeZone } = await settingsOf(tx);
      if (calibration.calibratedOn > localDay(stamp.at, timeZone))
        throw invalidInput('/calibratedOn', 'notInFuture', 'A calibration is recorded once it was done.');
      return addRecord(
        tx.calibrations,
        'calibration',
        { id: command.id ?? this.ids.next(), identity: { instrumentId }, content: calibration },
        stamp,
      );
    });
  }

  /** The calibrations of an instrument and what they make of it today, or at the moment asked about. */
  list(caller: Caller, instrumentId: string, asOf?: string): Promise<CalibrationsOfInstrument> {
    return this.work.read(caller.shopId, async (tx) => {
      const record = await requiredRecord(tx.instruments, 'instrument', instrumentId, asOf);
      const { standing } = await viewOf(tx, record, asOf ?? this.clock.now(), asOf);
      return { standing, calibrations: await tx.calibrations.all({ instrumentId }, asOf) };
    });
  }
}

export class ShowInstrumentUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  /** One instrument, now or as it was known at a moment. */
  execute(
    caller: Caller,
    query: { readonly id: string; readonly asOf?: string | undefined },
  ): Promise<InstrumentRecord> {
    return this.work.read(caller.shopId, (tx) =>
      requiredRecord(tx.instruments, 'instrument', query.id, query.asOf),
    );
  }

  /** Every revision, oldest first. */
  revisions(caller: Caller, id: string): Promise<readonly InstrumentRecord[]> {
    return this.work.read(caller.shopId, async (tx) => {
      await requiredRecord(tx.instruments, 'instrument', id);
      return tx.instruments.history(id);
    });
  }

  list(
    caller: Caller,
    query: {
      readonly kind?: string | undefined;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<{ readonly items: readonly InstrumentView[]; readonly next?: ListPosition | undefined }> {
    const { kind, ...page } = query;
    return this.work.read(caller.shopId, async (tx) => {
      const found = await tx.instruments.list({ where: { kind }, ...page });
      const calibrations =
        found.items.length === 0
          ? []
          : await tx.calibrations.all({ instrumentId: found.items.map(({ id }) => id) }, query.asOf);
      const { timeZone } = await settingsOf(tx);
      const day = localDay(query.asOf ?? this.clock.now(), timeZone);
      const items = found.items.map((record) => ({
        record,
        standing: calibrationStandingOn(
          calibrations
            .filter(({ identity }) => identity.instrumentId === record.id)
            .map(({ content }) => content),
          day,
        ),
      }));
      return { items, next: found.next };
    });
  }
}

async function viewOf(
  tx: ShopTransaction,
  record: InstrumentRecord,
  at: string,
  asOf?: string,
): Promise<InstrumentView> {
  const calibrations = await tx.calibrations.all({ instrumentId: record.id }, asOf);
  const { timeZone } = await settingsOf(tx);
  const standing = calibrationStandingOn(
    calibrations.map(({ content }) => content),
    localDay(at, timeZone),
  );
  return { record, standing };
}

function refuseUnusable({ properties }: Instrument): void {
  const fault = instrumentFault(properties);
  if (fault !== null) throw invalidInput(fault.pointer, fault.rule, fault.detail);
}
