import {
  publishedLimits,
  shippedCheckSheets,
  throttleHousingLimits,
  type Characteristic,
} from '@endfloat/catalogue';
import { parseLimit, type Limit } from '@endfloat/metrology';
import { DomainError, invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPosition, Recorded } from '../ports/record-store.port.js';
import type { ShopLimit } from '../ports/records/bench.records.js';
import type { NoReferences } from '../ports/records/shop.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { componentTypesOf } from './component-types-of.js';
import { invalidData } from './component-types.use-case.js';

export type ShopLimitRecord = Recorded<NoReferences, ShopLimit>;

/** A limit as it holds in this shop. */
export interface LimitView {
  readonly limit: Limit;
  /** null for a shipped limit the shop has neither set nor confirmed */
  readonly record: ShopLimitRecord | null;
}

/** Every shipped limit by id: of the sheets, and the published ones of other wearing items. */
export const shippedLimits: ReadonlyMap<string, Limit> = new Map(
  [
    ...Object.values(throttleHousingLimits),
    ...publishedLimits.flatMap(({ limits }) => limits),
    ...shippedCheckSheets.flatMap(({ checks }) => checks.flatMap(({ limits }) => limits)),
  ].map((limit: Limit) => [limit.id, limit]),
);

/**
 * Sets a limit of the shop's own, or confirms a shipped one after its source was read: the same id with `judging`
 * allowed stands in the place of the shipped one.
 */
export class RecordLimitUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly limit: unknown },
  ): Promise<AddedRecord<NoReferences, ShopLimit>> {
    const stamp = stampOf(this.clock, caller);
    const limit = readLimit(command.limit);
    return this.work.run(caller.shopId, async (tx) => {
      await refuseUnfit(tx, limit);
      const id = command.id ?? this.ids.next();
      const same = (await tx.shopLimits.all({ characteristic: limit.characteristic })).find(
        (other) => other.id !== id && other.content.limit.id === limit.id,
      );
      if (same !== undefined) {
        throw new DomainError(
          'record.idTaken',
          `The shop has a limit "${limit.id}" already. Correct that one, or choose another id.`,
          [{ pointer: '/limit/id', rule: 'unique', detail: same.id }],
        );
      }
      const content = { characteristic: limit.characteristic, limit };
      return addRecord(tx.shopLimits, 'limit', { id, identity: {}, content }, stamp);
    });
  }
}

/** Corrects a limit of the shop. Verdicts made before keep the edition they used. */
export class CorrectLimitUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly limit: unknown;
      readonly reason: string;
    },
  ): Promise<ShopLimitRecord> {
    const stamp = stampOf(this.clock, caller, command.reason);
    const limit = readLimit(command.limit);
    return this.work.run(caller.shopId, async (tx) => {
      const before = await requiredRecord(tx.shopLimits, 'limit', command.id);
      if (before.content.limit.id !== limit.id || before.content.characteristic !== limit.characteristic) {
        throw invalidInput(
          '/limit/id',
          'unchanged',
          'A correction keeps the id of the limit and what it limits. Set another limit instead.',
        );
      }
      await refuseUnfit(tx, limit);
      const content = { characteristic: limit.characteristic, limit };
      const change = { id: command.id, expected: command.expected, content };
      return correctRecord(tx.shopLimits, 'limit', change, stamp);
    });
  }
}

export class ListLimitsUseCase {
  constructor(private readonly work: UnitOfWork) {}

  /** Limits as they hold in this shop, by id; the shop's stands in the place of a shipped one with the same id. */
  execute(
    caller: Caller,
    query: {
      readonly characteristic?: string | undefined;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<{ readonly items: readonly LimitView[]; readonly next?: ListPosition | undefined }> {
    const { characteristic, asOf, after, limit } = query;
    return this.work.read(caller.shopId, async (tx) => {
      const views = [...(await limitsById(tx, characteristic, asOf)).values()]
        .filter((view) => characteristic === undefined || view.limit.characteristic === characteristic)
        .filter((view) => after === undefined || view.limit.id > after.id)
        .sort((a, b) => (a.limit.id < b.limit.id ? -1 : 1));
      const items = views.slice(0, limit);
      const last = items.at(-1);
      if (last === undefined || views.length <= limit) return { items };
      return { items, next: { sortValue: last.limit.id, id: last.limit.id } };
    });
  }

  one(caller: Caller, id: string, asOf?: string): Promise<ShopLimitRecord> {
    return this.work.read(caller.shopId, (tx) => requiredRecord(tx.shopLimits, 'limit', id, asOf));
  }

  revisions(caller: Caller, id: string): Promise<readonly ShopLimitRecord[]> {
    return this.work.read(caller.shopId, async (tx) => {
      await requiredRecord(tx.shopLimits, 'limit', id);
      return tx.shopLimits.history(id);
    });
  }
}

/** Limits of a shop by their own id. */
export async function limitsById(
  tx: ShopTransaction,
  characteristic?: string,
  asOf?: string,
): Promise<ReadonlyMap<string, LimitView>> {
  const own = await tx.shopLimits.all({ characteristic }, asOf);
  return new Map<string, LimitView>([
    ...[...shippedLimits].map(([id, limit]) => [id, { limit, record: null }] as const),
    ...own.map((record) => [record.content.limit.id, { limit: record.content.limit, record }] as const),
  ]);
}

function readLimit(data: unknown): Limit {
  const read = parseLimit(data);
  if (read.kind !== 'limit') throw invalidData('limit', '/limit', read.issues);
  return read.limit;
}

/** A limit is for a characteristic that some kind of part has, and of the same kind of quantity. */
async function refuseUnfit(tx: ShopTransaction, limit: Limit): Promise<void> {
  const known = (await componentTypesOf(tx)).flatMap(({ characteristics }) => characteristics);
  const alike: readonly Characteristic[] = known.filter(({ id }) => id === limit.characteristic);
  if (alike.length === 0) {
    throw invalidInput(
      '/limit/characteristic',
      'reference',
      `No kind of part has a characteristic "${limit.characteristic}". GET /v1/component-types lists them.`,
    );
  }
  if (alike.some(({ quantityKind }) => quantityKind === limit.quantityKind)) return;
  throw new DomainError('unit.mismatch', 'The limit is of another kind of quantity than what it limits.', [
    { pointer: '/limit/quantityKind', rule: 'sameKind', detail: alike[0]?.quantityKind ?? 'null' },
  ]);
}
