import { examineVehicleNumber, plateKey } from '@endfloat/catalogue';
import { invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { FittedCondition, FittedPart, Vehicle } from '../ports/records/vehicles.records.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { referencedRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';

/** One vehicle of a fleet with the replacements of one kind of part that somebody kept. */
export interface VehicleHistoryEntry {
  readonly id?: string | undefined;
  readonly label: string;
  readonly chassisNumber: string | null;
  readonly plate: string | null;
  /** local date; ages are counted from its midnight in UTC */
  readonly firstUsedOn: string;
  /** instants between which a replacement would have been seen */
  readonly observedFrom: string;
  readonly observedUntil: string;
  readonly replacements: readonly {
    readonly at: string;
    readonly condition: FittedCondition;
    readonly supplier: string | null;
  }[];
}

export interface ImportFleetHistoryCommand {
  readonly customerId: string;
  readonly componentType: string;
  readonly position: string;
  readonly vehicles: readonly VehicleHistoryEntry[];
}

export interface ImportedFleetHistory {
  readonly vehicleIds: readonly string[];
  readonly fittedParts: number;
}

/** Takes over the history of a fleet in one piece: all of it is recorded, or nothing is. */
export class ImportFleetHistoryUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(caller: Caller, command: ImportFleetHistoryCommand): Promise<ImportedFleetHistory> {
    const stamp = stampOf(this.clock, caller);
    command.vehicles.forEach((entry, index) => refuseImpossible(entry, index, stamp.at));
    const vehicles = command.vehicles.map((entry) => ({ ...entry, id: entry.id ?? this.ids.next() }));
    refuseDoubleIds(vehicles.map(({ id }) => id));
    const parts = vehicles.flatMap((entry) => this.partsOf(entry, command));
    return this.work.run(caller.shopId, async (tx) => {
      await referencedRecord(tx.customers, 'customer', command.customerId, '/customerId');
      const taken = (await tx.vehicles.findMany(vehicles.map(({ id }) => id)))[0];
      if (taken !== undefined) {
        const index = vehicles.findIndex(({ id }) => id === taken.id);
        throw invalidInput(
          `/vehicles/${String(index)}/id`,
          'unique',
          'A vehicle with this id is recorded already. Leave the id out to get a new one, or leave the vehicle out.',
        );
      }
      await tx.vehicles.addMany(
        vehicles.map((entry) => ({ id: entry.id, identity: {}, content: vehicleOf(entry) })),
        stamp,
      );
      await tx.ownerships.addMany(
        vehicles.map((entry) => ({
          id: this.ids.next(),
          identity: { vehicleId: entry.id },
          content: { customerId: command.customerId, fromAt: entry.observedFrom },
        })),
        stamp,
      );
      await tx.fittedParts.addMany(parts, stamp);
      await tx.announce({
        type: 'endfloat.fleetHistory.imported.v1',
        subjectId: command.customerId,
        at: stamp.at,
        payload: { vehicles: vehicles.length },
      });
      return { vehicleIds: vehicles.map(({ id }) => id), fittedParts: parts.length };
    });
  }

  /** The chain of parts at one place: each replacement removes the one before and fits the next. */
  private partsOf(entry: VehicleHistoryEntry & { readonly id: string }, command: ImportFleetHistoryCommand) {
    const replacements = [...entry.replacements].sort((a, b) => a.at.localeCompare(b.at));
    const fitted = [{ at: null, condition: 'original' as const, supplier: null }, ...replacements];
    let before: string | null = null;
    return fitted.map(({ at, condition, supplier }, index) => {
      const id = this.ids.next();
      const next = fitted[index + 1];
      const content: FittedPart = {
        componentType: command.componentType,
        position: command.position,
        condition,
        fittedAt: at,
        fittedKm: null,
        removedAt: next?.at ?? null,
        removedKm: null,
        serial: null,
        batch: null,
        supplier,
        partNumber: null,
        removalReason: next === undefined ? null : 'replaced',
        replacesPartId: before,
        workLineId: null,
      };
      before = id;
      return { id, identity: { vehicleId: entry.id }, content };
    });
  }
}

function refuseImpossible(entry: VehicleHistoryEntry, index: number, now: string): void {
  const at = (member: string) => `/vehicles/${String(index)}/${member}`;
  if (entry.observedFrom < entry.firstUsedOn) {
    throw invalidInput(
      at('observedFrom'),
      'order',
      'The observation cannot begin before the vehicle was first used.',
    );
  }
  if (entry.observedUntil < entry.observedFrom) {
    throw invalidInput(at('observedUntil'), 'order', 'The observation must end at or after its beginning.');
  }
  if (entry.observedUntil > now)
    throw invalidInput(at('observedUntil'), 'past', 'The observation cannot end in the future.');
  entry.replacements.forEach((replacement, place) => {
    if (replacement.at < entry.observedFrom || replacement.at > entry.observedUntil) {
      throw invalidInput(
        at(`replacements/${String(place)}/at`),
        'observed',
        'A replacement must lie inside the observation of its vehicle.',
      );
    }
  });
}

function refuseDoubleIds(ids: readonly string[]): void {
  const index = ids.findIndex((id, place) => ids.indexOf(id) !== place);
  if (index >= 0)
    throw invalidInput(`/vehicles/${String(index)}/id`, 'unique', 'This id stands twice in the request.');
}

function vehicleOf(entry: VehicleHistoryEntry): Vehicle {
  return {
    chassisNumber: entry.chassisNumber,
    numberSearch:
      entry.chassisNumber === null ? null : examineVehicleNumber({ asRead: entry.chassisNumber }).normalised,
    plate: entry.plate,
    plateSearch: entry.plate === null ? null : plateKey(entry.plate),
    label: entry.label,
    firstUsedOn: entry.firstUsedOn,
    application: null,
    attributes: {},
    expectedKmPerYear: null,
    observedSpans: [{ from: entry.observedFrom, until: entry.observedUntil }],
    retiredOn: null,
  };
}
