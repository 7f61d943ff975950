import {
  OpenJobUseCase,
  RecordFittedPartUseCase,
  RecordInspectionUseCase,
  RecordReadingsUseCase,
  RecordVehicleUseCase,
  TakeComplaintUseCase,
  type Caller,
  type ComplaintView,
  type NewReading,
  type SymptomAnswer,
  type UnitOfWork,
} from '@endfloat/workshop';
import type { HistoryClock, SeededIds } from './history-clock.js';
import { demoShopId, desk, type DemoUser } from './people.js';

export const housing = { componentType: 'throttle-housing', position: 'intake' } as const;

export const callerOf = (user: DemoUser): Caller => ({
  shopId: demoShopId,
  userId: user.id,
  roles: [user.role],
  ...(user.customer === null ? {} : { customerId: user.customer }),
});

/**
 * What people of the demo shop do, through the same use cases as the API, each step a few minutes after the last.
 * Nothing is written past the use cases.
 */
export class DemoIntake {
  protected readonly ports: readonly [UnitOfWork, HistoryClock, SeededIds];

  constructor(
    readonly work: UnitOfWork,
    readonly clock: HistoryClock,
    readonly ids: SeededIds,
    private readonly sheetId: string,
  ) {
    this.ports = [work, clock, ids];
  }

  async vehicle(command: Parameters<RecordVehicleUseCase['execute']>[1]): Promise<string> {
    const { record } = await new RecordVehicleUseCase(...this.ports).execute(callerOf(desk), command);
    return record.id;
  }

  async originalHousing(vehicleId: string, id?: string): Promise<void> {
    const part = {
      ...housing,
      condition: 'original' as const,
      fittedAt: null,
      fittedKm: null,
      removedAt: null,
      removedKm: null,
    };
    const rest = { serial: null, batch: null, supplier: null, partNumber: null, removalReason: null };
    await new RecordFittedPartUseCase(...this.ports).execute(callerOf(desk), {
      id,
      vehicleId,
      part: { ...part, ...rest },
    });
  }

  complaint(
    vehicleId: string,
    said: {
      readonly words: string;
      readonly symptoms: Readonly<Record<string, SymptomAnswer>>;
      readonly km: string;
      readonly id?: string;
      readonly beganAfterRepair?: boolean;
    },
  ): Promise<ComplaintView> {
    const complaint = {
      jobId: null,
      receivedAt: this.clock.after(5),
      words: said.words,
      symptoms: said.symptoms,
      conditions: { engineState: 'hot' },
      troubleCodes: [],
      reproduced: null,
      stopScrewMovedByOthers: null,
      reportedByDriver: false,
      components: [],
      beganAfterRepair: said.beganAfterRepair ?? false,
      distanceKm: said.km,
    };
    return new TakeComplaintUseCase(...this.ports).execute(callerOf(desk), {
      id: said.id,
      vehicleId,
      complaint,
    });
  }

  async job(
    vehicleId: string,
    visit: {
      readonly complaintIds: readonly string[];
      readonly km: string;
      readonly technician: DemoUser;
      readonly id?: string;
    },
  ): Promise<string> {
    const openedAt = this.clock.after(10);
    const { record } = await new OpenJobUseCase(...this.ports).execute(callerOf(desk), {
      id: visit.id,
      vehicleId,
      complaintIds: visit.complaintIds,
      odometer: { shown: visit.km, unit: 'km', readAt: openedAt, readBy: desk.id, note: null },
      job: {
        openedAt,
        assignedTo: visit.technician.id,
        diagnosedBy: visit.technician.id,
        causeId: null,
        note: null,
      },
    });
    return record.id;
  }

  async inspection(
    vehicleId: string,
    jobId: string | null,
    technician: DemoUser,
    id?: string,
  ): Promise<string> {
    const { record } = await new RecordInspectionUseCase(...this.ports).execute(callerOf(technician), {
      id,
      vehicleId,
      jobId,
      checkSheetId: this.sheetId,
      inspection: {
        startedAt: this.clock.after(10),
        technicianId: technician.id,
        asFoundNotTaken: [],
        notDone: [],
        note: null,
      },
    });
    return record.id;
  }

  /** Records readings of an inspection in one piece; each a minute after the last. */
  readings(
    inspectionId: string,
    technician: DemoUser,
    readings: readonly Omit<
      NewReading['entry'],
      'takenAt' | 'measuredBy' | 'position' | 'place' | 'note' | 'conditions'
    >[],
  ) {
    const entries = readings.map((reading) => ({
      entry: {
        ...reading,
        takenAt: this.clock.after(1),
        measuredBy: technician.id,
        position: null,
        place: null,
        note: null,
        conditions: {},
      },
    }));
    return new RecordReadingsUseCase(...this.ports).execute(
      callerOf(technician),
      { inspectionId, readings: entries },
      (index) => `/readings/${String(index)}`,
    );
  }
}
