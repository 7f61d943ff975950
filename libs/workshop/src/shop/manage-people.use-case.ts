import { invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Recorded } from '../ports/record-store.port.js';
import type { NoReferences, ShopUser } from '../ports/records/shop.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { changesNothing, correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { referencedRecord, requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';

export type UserRecord = Recorded<NoReferences, ShopUser>;

/** Records a person who works with the records. */
export class RecordUserUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly user: ShopUser },
  ): Promise<AddedRecord<NoReferences, ShopUser>> {
    return this.work.run(caller.shopId, async (tx) => {
      await refuseMixedUser(tx, command.user);
      const id = command.id ?? this.ids.next();
      return addRecord(
        tx.users,
        'user',
        { id, identity: {}, content: command.user },
        stampOf(this.clock, caller),
      );
    });
  }
}

/** Changes a person's name, roles or whether they may still work here. */
export class ChangeUserUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id: string; readonly expected: ExpectedRevision; readonly user: Partial<ShopUser> },
  ): Promise<UserRecord> {
    return this.work.run(caller.shopId, async (tx) => {
      const current = await requiredRecord(tx.users, 'user', command.id);
      const user = { ...current.content, ...command.user };
      await refuseMixedUser(tx, user);
      if (changesNothing(current, command.expected, user)) return current;
      return correctRecord(
        tx.users,
        'user',
        { id: command.id, expected: command.expected, content: user },
        stampOf(this.clock, caller),
      );
    });
  }
}

export class ListUsersUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(
    caller: Caller,
    query: { readonly limit: number; readonly after?: ListPosition | undefined },
  ): Promise<ListPage<NoReferences, ShopUser>> {
    return this.work.read(caller.shopId, (tx) => tx.users.list(query));
  }

  one(caller: Caller, id: string, asOf?: string): Promise<UserRecord> {
    return this.work.read(caller.shopId, (tx) => requiredRecord(tx.users, 'user', id, asOf));
  }
}

/** A fleet manager belongs to a customer, and to nothing else; all others belong to the shop. */
async function refuseMixedUser(tx: ShopTransaction, user: ShopUser): Promise<void> {
  const ofCustomer = user.roles.includes('fleetManager');
  if (ofCustomer && user.roles.length > 1) {
    throw invalidInput(
      '/roles',
      'rolesApart',
      'A fleet manager belongs to a customer and can have no role in the shop. Record two users instead.',
    );
  }
  if (ofCustomer !== (user.customerId !== null)) {
    throw invalidInput(
      '/customerId',
      'customerOfFleetManager',
      'A fleet manager needs the customer whose vehicles they may see; nobody else may have one.',
    );
  }
  if (user.customerId !== null)
    await referencedRecord(tx.customers, 'customer', user.customerId, '/customerId');
}
