import { DomainError } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Recorded } from '../ports/record-store.port.js';
import type { CheckSheetRecord } from '../bench/check-sheets.use-case.js';
import { componentTypesOf } from '../bench/component-types-of.js';
import type { ArrivalInspection, ArrivalInspectionIdentity } from '../ports/records/stock.records.js';
import type { Caller } from '../ports/roles.js';
import { sameContent } from '../ports/same-content.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { refuseFuture } from '../recording/happened-at.js';
import { referencedRecord, requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import type { ComponentType } from '@endfloat/catalogue';
import type { ArrivalEntry } from './arrival-entry.js';
import { judgeArrival, sheetForPart } from './judge-arrival.js';

export type ArrivalInspectionRecord = Recorded<ArrivalInspectionIdentity, ArrivalInspection>;

/** A record with the sheet it followed, cut down to what can be looked at on the part alone. */
export interface ArrivalInspectionView {
  readonly record: ArrivalInspectionRecord;
  readonly sheet: ArrivalSheet;
}

export interface ArrivalSheet {
  readonly record: CheckSheetRecord;
  readonly componentTypes: readonly ComponentType[];
}

/** Records what a part was like on arrival, before it is fitted, by the sheet it will be checked by on a van. */
export class RecordArrivalInspectionUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id?: string | undefined;
      readonly identity: ArrivalInspectionIdentity;
      readonly entry: ArrivalEntry;
    },
  ): Promise<AddedRecord<ArrivalInspectionIdentity, ArrivalInspection> & { readonly sheet: ArrivalSheet }> {
    const stamp = stampOf(this.clock, caller);
    const { identity, entry } = command;
    refuseFuture(entry.inspectedAt, stamp.at, '/inspectedAt');
    const id = command.id ?? this.ids.next();
    return this.work.run(caller.shopId, async (tx) => {
      const sheet = await arrivalSheetOf(tx, identity);
      const first = (await tx.arrivalInspections.history(id))[0];
      const judged = await judgeArrival(tx, sheet.record.content.definition, entry, stamp.at);
      // Verdicts rest on limits as they were: the same readings sent again are the first inspection.
      const isSame = first !== undefined && sameContent(first.content.readings, judged.readings);
      const content = contentOf(entry, isSame ? first.content : judged);
      const record = { id, identity, content };
      const added = await addRecord(tx.arrivalInspections, 'inspection on arrival', record, stamp);
      if (added.created)
        await tx.announce({
          type: 'endfloat.arrivalInspection.recorded.v1',
          subjectId: id,
          at: stamp.at,
          payload: {
            partId: identity.partId,
            outcomes: content.verdicts.map((each) => each.content.outcome),
          },
        });
      return { ...added, sheet };
    });
  }
}

/** Corrects an inspection on arrival; all readings are given again and judged anew. */
export class CorrectArrivalInspectionUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly entry: ArrivalEntry;
      readonly reason: string;
    },
  ): Promise<ArrivalInspectionView> {
    const stamp = stampOf(this.clock, caller, command.reason);
    refuseFuture(command.entry.inspectedAt, stamp.at, '/inspectedAt');
    return this.work.run(caller.shopId, async (tx) => {
      const { identity } = await requiredRecord(tx.arrivalInspections, 'inspection on arrival', command.id);
      const sheet = await arrivalSheetOf(tx, identity);
      const judged = await judgeArrival(tx, sheet.record.content.definition, command.entry, stamp.at);
      const content = contentOf(command.entry, judged);
      const change = { id: command.id, expected: command.expected, content };
      return {
        record: await correctRecord(tx.arrivalInspections, 'inspection on arrival', change, stamp),
        sheet,
      };
    });
  }
}

export class ListArrivalInspectionsUseCase {
  constructor(private readonly work: UnitOfWork) {}

  async execute(
    caller: Caller,
    query: {
      readonly partId?: string | undefined;
      readonly serial?: string | undefined;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<{ readonly items: readonly ArrivalInspectionView[]; readonly next?: ListPosition | undefined }> {
    const { partId, serial, ...page } = query;
    return this.work.read(caller.shopId, async (tx) => {
      const list: ListPage<ArrivalInspectionIdentity, ArrivalInspection> = await tx.arrivalInspections.list({
        where: { partId, serial },
        ...page,
      });
      const items: ArrivalInspectionView[] = [];
      for (const record of list.items)
        items.push({ record, sheet: await arrivalSheetOf(tx, record.identity) });
      return { items, next: list.next };
    });
  }

  one(caller: Caller, id: string, asOf?: string): Promise<ArrivalInspectionView> {
    return this.work.read(caller.shopId, async (tx) => {
      const record = await requiredRecord(tx.arrivalInspections, 'inspection on arrival', id, asOf);
      return { record, sheet: await arrivalSheetOf(tx, record.identity) };
    });
  }

  revisions(caller: Caller, id: string): Promise<readonly ArrivalInspectionView[]> {
    return this.work.read(caller.shopId, async (tx) => {
      const { identity } = await requiredRecord(tx.arrivalInspections, 'inspection on arrival', id);
      const sheet = await arrivalSheetOf(tx, identity);
      return (await tx.arrivalInspections.history(id)).map((record) => ({ record, sheet }));
    });
  }

  /** The sheets a part can be looked at by on the bench: the latest version of each, without what needs a van. */
  sheets(caller: Caller, partId: string): Promise<readonly ArrivalSheet[]> {
    return this.work.read(caller.shopId, async (tx) => {
      const part = await requiredRecord(tx.parts, 'part', partId);
      const latest = new Map<string, CheckSheetRecord>();
      for (const sheet of await tx.checkSheets.all({})) {
        const known = latest.get(sheet.identity.code);
        if (known === undefined || known.identity.sheetVersion < sheet.identity.sheetVersion)
          latest.set(sheet.identity.code, sheet);
      }
      const componentTypes = await componentTypesOf(tx);
      return [...latest.values()]
        .map((record) => cutDown(record, componentTypes, part.content.componentType))
        .filter(({ record }) => record.content.definition.checks.length > 0);
    });
  }
}

function cutDown(
  record: CheckSheetRecord,
  componentTypes: readonly ComponentType[],
  componentType: string,
): ArrivalSheet {
  const definition = sheetForPart(record.content.definition, componentType);
  return { record: { ...record, content: { ...record.content, definition } }, componentTypes };
}

async function arrivalSheetOf(
  tx: ShopTransaction,
  { partId, checkSheetId, stockMoveId }: ArrivalInspectionIdentity,
): Promise<ArrivalSheet> {
  const part = await referencedRecord(tx.parts, 'part', partId, '/partId');
  const record = await referencedRecord(tx.checkSheets, 'check sheet', checkSheetId, '/checkSheetId');
  if (stockMoveId !== null) {
    const move = await referencedRecord(tx.stockMoves, 'stock move', stockMoveId, '/stockMoveId');
    if (move.identity.partId !== partId)
      throw new DomainError('input.invalid', 'This stock move is about another part.', [
        { pointer: '/stockMoveId', rule: 'samePart', detail: move.identity.partId },
      ]);
  }
  const sheet = cutDown(record, await componentTypesOf(tx), part.content.componentType);
  if (sheet.record.content.definition.checks.length > 0) return sheet;
  throw new DomainError('input.invalid', `This sheet has no check of a ${part.content.componentType}.`, [
    { pointer: '/checkSheetId', rule: 'sameKind', detail: part.content.componentType },
  ]);
}

function contentOf(
  { inspectedAt, serial, condition, note }: ArrivalEntry,
  { readings, verdicts }: Pick<ArrivalInspection, 'readings' | 'verdicts'>,
): ArrivalInspection {
  return { inspectedAt, serial, condition, readings, verdicts, note };
}
