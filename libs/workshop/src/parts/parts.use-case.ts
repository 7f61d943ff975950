import { closesCircle, substitutesOf, type PartRelations, type PartSubstitutes } from '@endfloat/stock';
import { componentTypesOf } from '../bench/component-types-of.js';
import { DomainError, invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Recorded } from '../ports/record-store.port.js';
import type { NoReferences } from '../ports/records/shop.records.js';
import type { Part } from '../ports/records/stock.records.js';
import type { Caller } from '../ports/roles.js';
import type { StockLine } from '../ports/stock-queries.port.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';

export type PartRecord = Recorded<NoReferences, Part>;

/** Records a number under which something can be ordered. */
export class RecordPartUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly part: Part },
  ): Promise<AddedRecord<NoReferences, Part>> {
    const stamp = stampOf(this.clock, caller);
    const id = command.id ?? this.ids.next();
    return this.work.run(caller.shopId, async (tx) => {
      const known = await tx.parts.find(id);
      if (known === undefined) await refuseWrongPart(tx, id, command.part);
      return addRecord(tx.parts, 'part', { id, identity: {}, content: command.part }, stamp);
    });
  }
}

/** Corrects a part: its successor, what it interchanges with, or a number typed wrongly. */
export class CorrectPartUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly part: Part;
      readonly reason: string;
    },
  ): Promise<PartRecord> {
    const stamp = stampOf(this.clock, caller, command.reason);
    return this.work.run(caller.shopId, async (tx) => {
      await requiredRecord(tx.parts, 'part', command.id);
      await refuseWrongPart(tx, command.id, command.part);
      const change = { id: command.id, expected: command.expected, content: command.part };
      return correctRecord(tx.parts, 'part', change, stamp);
    });
  }
}

export interface PartQuery {
  readonly componentType?: string | undefined;
  readonly partNumber?: string | undefined;
  /** only what fits the application of this vehicle */
  readonly vehicleId?: string | undefined;
  readonly asOf?: string | undefined;
  readonly after?: ListPosition | undefined;
  readonly limit: number;
}

/** A part with what may stand in for it and what of all that lies on the shelf. */
export interface PartView {
  readonly part: PartRecord;
  readonly substitutes: PartSubstitutes;
  /** of the part and of its substitutes */
  readonly lines: readonly StockLine[];
}

export class ListPartsUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(caller: Caller, query: PartQuery): Promise<ListPage<NoReferences, Part>> {
    const { componentType, partNumber, vehicleId, ...page } = query;
    return this.work.read(caller.shopId, async (tx) => {
      const where = { componentType, partNumber };
      if (vehicleId === undefined) return tx.parts.list({ where, ...page });
      const vehicle = await requiredRecord(tx.vehicles, 'vehicle', vehicleId, query.asOf);
      const { application } = vehicle.content;
      const fitting = (await tx.parts.all(where, query.asOf)).filter(
        ({ content: { applications } }) =>
          applications.length === 0 || (application !== null && applications.includes(application)),
      );
      const ids = fitting.map(({ id }) => id);
      return ids.length === 0 ? { items: [] } : tx.parts.list({ where: { id: ids }, ...page });
    });
  }

  /** One part, now or as it was known at a moment. */
  one(caller: Caller, id: string, asOf?: string): Promise<PartView> {
    return this.work.read(caller.shopId, async (tx) => {
      const part = await requiredRecord(tx.parts, 'part', id, asOf);
      const substitutes = substitutesOf(id, await relationsOf(tx, part.content.componentType, asOf));
      const partIds = [...new Set([id, ...substitutes.chain, ...substitutes.substitutes])];
      return { part, substitutes, lines: await tx.stock.lines({ partIds, asOf }) };
    });
  }

  revisions(caller: Caller, id: string): Promise<readonly PartRecord[]> {
    return this.work.read(caller.shopId, async (tx) => {
      await requiredRecord(tx.parts, 'part', id);
      return tx.parts.history(id);
    });
  }
}

/** How the parts of one kind stand to each other. */
export async function relationsOf(
  tx: ShopTransaction,
  componentType: string,
  asOf?: string,
): Promise<readonly PartRelations[]> {
  return (await tx.parts.all({ componentType }, asOf)).map(relationOf);
}

export const relationOf = ({ id, content }: PartRecord): PartRelations => ({
  id,
  supersededBy: content.supersededById,
  interchangesWith: content.interchangesWith,
});

async function refuseWrongPart(tx: ShopTransaction, id: string, part: Part): Promise<void> {
  // Successors are named one after the other, so that two at once make no circle.
  await tx.takeTurn(`parts ${part.componentType}`);
  const known = (await componentTypesOf(tx)).some((type) => type.id === part.componentType);
  if (!known)
    throw invalidInput(
      '/componentType',
      'reference',
      `This shop knows no kind of part "${part.componentType}".`,
    );
  const named = [
    ...(part.supersededById === null ? [] : [{ id: part.supersededById, pointer: '/supersededById' }]),
    ...part.interchangesWith.map((other, at) => ({ id: other, pointer: `/interchangesWith/${String(at)}` })),
    ...part.alsoOrder.map((other, at) => ({ id: other, pointer: `/alsoOrder/${String(at)}` })),
  ];
  const found = new Map(
    (named.length === 0 ? [] : await tx.parts.findMany(named.map((each) => each.id))).map((record) => [
      record.id,
      record.content,
    ]),
  );
  for (const { id: other, pointer } of named) {
    if (other === id) throw invalidInput(pointer, 'otherPart', 'A part is not named as its own companion.');
    const content = found.get(other);
    if (content === undefined) throw unknownPart(pointer);
    if (!pointer.startsWith('/alsoOrder') && content.componentType !== part.componentType)
      throw invalidInput(
        pointer,
        'sameKind',
        `This part is a ${content.componentType}, not a ${part.componentType}.`,
      );
  }
  const others = await tx.parts.all({ componentType: part.componentType });
  const twin = others.find((other) => other.id !== id && other.content.partNumber === part.partNumber);
  if (twin !== undefined)
    throw new DomainError(
      'record.idTaken',
      `The number ${part.partNumber} is recorded already for this kind of part, as ${twin.id}. Correct that one.`,
      [{ pointer: '/partNumber', rule: 'unique', detail: `part ${twin.id}` }],
    );
  if (part.supersededById !== null && closesCircle(id, part.supersededById, others.map(relationOf)))
    throw invalidInput(
      '/supersededById',
      'noCircle',
      'This part is, further on, superseded by the first one.',
    );
}

function unknownPart(pointer: string): DomainError {
  return new DomainError(
    'record.unknownReference',
    `The part named at ${pointer} does not exist in this shop.`,
    [{ pointer, rule: 'reference', detail: 'no such part' }],
  );
}
