import { parseCheckSheet, type CheckSheet, type ComponentType } from '@endfloat/catalogue';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Recorded } from '../ports/record-store.port.js';
import type { CheckSheetContent, CheckSheetIdentity } from '../ports/records/bench.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord } from '../recording/add-record.js';
import { requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { componentTypesOf } from './component-types-of.js';
import { invalidData } from './component-types.use-case.js';

export type CheckSheetRecord = Recorded<CheckSheetIdentity, CheckSheetContent>;

export interface CheckSheetView {
  readonly record: CheckSheetRecord;
  /** kinds of part the sheet names, for units and plausible ranges */
  readonly componentTypes: readonly ComponentType[];
}

/** Records a check sheet of the shop. The same code again makes the next version; a version is never changed. */
export class RecordCheckSheetUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly definition: Readonly<Record<string, unknown>> },
  ): Promise<CheckSheetView & { readonly created: boolean }> {
    const stamp = stampOf(this.clock, caller);
    return this.work.run(caller.shopId, async (tx) => {
      const types = await componentTypesOf(tx);
      const id = command.id ?? this.ids.next();
      const known = await tx.checkSheets.find(id);
      const code = command.definition['id'];
      const versions =
        typeof code === 'string' && code.length <= 64 ? await tx.checkSheets.all({ code }) : [];
      const sheetVersion =
        known?.identity.sheetVersion ??
        Math.max(0, ...versions.map(({ identity }) => identity.sheetVersion)) + 1;
      const read = parseCheckSheet({ ...command.definition, edition: sheetVersion }, types);
      if (read.kind !== 'checkSheet') throw invalidData('check sheet', '/checkSheet', read.issues);
      const definition = read.checkSheet;
      const identity = { code: definition.id, sheetVersion };
      const { record, created } = await addRecord(
        tx.checkSheets,
        'check sheet',
        { id, identity, content: { definition } },
        stamp,
      );
      return { ...viewOf(record, types), created };
    });
  }
}

export class ShowCheckSheetUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(
    caller: Caller,
    query: { readonly id: string; readonly asOf?: string | undefined },
  ): Promise<CheckSheetView> {
    return this.work.read(caller.shopId, async (tx) => {
      const record = await requiredRecord(tx.checkSheets, 'check sheet', query.id, query.asOf);
      return viewOf(record, await componentTypesOf(tx));
    });
  }

  list(
    caller: Caller,
    query: {
      readonly code?: string | undefined;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<ListPage<CheckSheetIdentity, CheckSheetContent>> {
    const { code, ...page } = query;
    return this.work.read(caller.shopId, (tx: ShopTransaction) =>
      tx.checkSheets.list({ where: { code }, ...page }),
    );
  }
}

function viewOf(record: CheckSheetRecord, types: readonly ComponentType[]): CheckSheetView {
  const { componentTypeIds }: CheckSheet = record.content.definition;
  return { record, componentTypes: types.filter(({ id }) => componentTypeIds.includes(id)) };
}
