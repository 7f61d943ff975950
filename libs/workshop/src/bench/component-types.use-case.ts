import { parseComponentType, shippedComponentTypes, type ComponentType } from '@endfloat/catalogue';
import { DomainError, notFound, type Fault } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { Recorded } from '../ports/record-store.port.js';
import type { ByCode, ShopComponentType } from '../ports/records/bench.records.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord } from '../recording/add-record.js';
import { stampOf } from '../recording/stamp.js';

export interface ComponentTypeView {
  readonly definition: ComponentType;
  /** null for a kind of part that is shipped */
  readonly record: Recorded<ByCode, ShopComponentType> | null;
}

/** Adds a kind of part of the shop's own, with what can be measured on it. No code is needed for it. */
export class RecordComponentTypeUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly definition: unknown },
  ): Promise<ComponentTypeView & { readonly created: boolean }> {
    const stamp = stampOf(this.clock, caller);
    const read = parseComponentType(command.definition);
    if (read.kind !== 'componentType') throw invalidData('kind of part', '/componentType', read.issues);
    const definition = read.componentType;
    if (shippedComponentTypes.some(({ id }) => id === definition.id)) {
      throw new DomainError(
        'record.idTaken',
        `"${definition.id}" is a kind of part that is shipped. Choose another id for your own.`,
        [{ pointer: '/componentType/id', rule: 'unique', detail: 'shipped' }],
      );
    }
    return this.work.run(caller.shopId, async (tx) => {
      const record = {
        id: command.id ?? this.ids.next(),
        identity: { code: definition.id },
        content: { definition },
      };
      const added = await addRecord(tx.componentTypes, 'kind of part', record, stamp);
      return { definition: added.record.content.definition, record: added.record, created: added.created };
    });
  }
}

export class ListComponentTypesUseCase {
  constructor(private readonly work: UnitOfWork) {}

  /** The shipped kinds of part and the shop's own. */
  execute(caller: Caller, asOf?: string): Promise<readonly ComponentTypeView[]> {
    return this.work.read(caller.shopId, async (tx) => {
      const own = await tx.componentTypes.all({}, asOf);
      return [
        ...shippedComponentTypes.map((definition) => ({ definition, record: null })),
        ...own.map((record) => ({ definition: record.content.definition, record })),
      ];
    });
  }

  async one(caller: Caller, code: string, asOf?: string): Promise<ComponentTypeView> {
    const found = (await this.execute(caller, asOf)).find(({ definition }) => definition.id === code);
    if (found === undefined) throw notFound('kind of part');
    return found;
  }
}

/** A refusal of data from outside with every finding at its place in the request. */
export function invalidData(
  what: string,
  prefix: string,
  issues: readonly { readonly pointer: string; readonly code: string; readonly detail: string }[],
): DomainError {
  const faults: readonly Fault[] = issues.map(({ pointer, code, detail }) => ({
    pointer: `${prefix}${pointer}`,
    rule: code,
    detail: detail === '' ? code : detail.slice(0, 300),
  }));
  const first = faults[0];
  const place = first === undefined ? '' : ` The first finding is at ${first.pointer}: ${first.rule}.`;
  return new DomainError('sheet.invalid', `This is no valid ${what}.${place}`, faults);
}
