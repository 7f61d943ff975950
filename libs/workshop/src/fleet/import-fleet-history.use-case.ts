import { examineVehicleNumber, plateKey } from '@endfloat/catalogue';
import { DomainError, invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { FittedCondition, FittedPart, Vehicle } from '../ports/records/vehicles.records.js';
import type { Caller } from '../ports/roles.js';
import { sameContent } from '../ports/same-content.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { againWhenTaken } from '../recording/again-when-taken.js';
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
  /** false: the same history had been taken over before, nothing was written */
  readonly created: boolean;
}

/**
 * Takes over the history of a fleet in one piece: all of it is recorded, or nothing is. Sent again under the same ids
 * it is answered as the first time, so that an answer lost on the way is no reason to look what was kept.
 */
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
    const take = async (tx: ShopTransaction): Promise<ImportedFleetHistory> => {
      await referencedRecord(tx.customers, 'customer', command.customerId, '/customerId');
      const vehicleIds = vehicles.map(({ id }) => id);
      if (await wasTakenOver(tx, command, vehicles, parts))
        return { vehicleIds, fittedParts: parts.length, created: false };
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
      return { vehicleIds, fittedParts: parts.length, created: true };
    };
    return againWhenTaken(() => this.work.run(caller.shopId, take));
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

type GivenVehicle = VehicleHistoryEntry & { readonly id: string };
type GivenPart = { readonly identity: { readonly vehicleId: string }; readonly content: FittedPart };

/**
 * Whether all of this was recorded before, in one piece: later corrections and transfers change nothing about it.
 *
 * @throws DomainError `record.idTaken` when only some of the vehicles are recorded, or one of them otherwise
 */
async function wasTakenOver(
  tx: ShopTransaction,
  command: ImportFleetHistoryCommand,
  vehicles: readonly GivenVehicle[],
  parts: readonly GivenPart[],
): Promise<boolean> {
  const vehicleId = vehicles.map(({ id }) => id);
  const [known] = await tx.vehicles.findMany(vehicleId);
  if (known === undefined) return false;
  const then = known.firstRecordedAt;
  const { componentType, position, customerId } = command;
  const found = new Map((await tx.vehicles.findMany(vehicleId, then)).map((each) => [each.id, each.content]));
  const owners = await tx.ownerships.all({ vehicleId }, then);
  const ownerOf = new Map(owners.map(({ identity, content }) => [identity.vehicleId, content]));
  const stored = await tx.fittedParts.all({ vehicleId, componentType, position }, then);
  for (const [index, entry] of vehicles.entries()) {
    const isSame =
      sameContent(found.get(entry.id), vehicleOf(entry)) &&
      sameContent(ownerOf.get(entry.id), { customerId, fromAt: entry.observedFrom }) &&
      sameContent(chainOf(stored, entry.id), chainOf(parts, entry.id));
    if (!isSame) throw idTaken(index);
  }
  return true;
}

/** The fittings of one vehicle, without the ids that each run gives anew. */
function chainOf(parts: readonly GivenPart[], vehicleId: string): readonly (readonly (string | null)[])[] {
  return parts
    .filter(({ identity }) => identity.vehicleId === vehicleId)
    .map(({ content }) => [content.fittedAt, content.removedAt, content.condition, content.supplier])
    .sort((a, b) => JSON.stringify(a).localeCompare(JSON.stringify(b)));
}

function idTaken(index: number): DomainError {
  return new DomainError(
    'record.idTaken',
    'A vehicle is recorded already under this id with other content. Leave the id out to get a new one, or leave the vehicle out.',
    [{ pointer: `/vehicles/${String(index)}/id`, rule: 'unique', detail: 'taken by other content' }],
  );
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
