import { notFound } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Recorded } from '../ports/record-store.port.js';
import type { Customer, NoReferences, PersonalRecord } from '../ports/records/shop.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord } from '../recording/add-record.js';
import { againWhenTaken } from '../recording/again-when-taken.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { requiredRecord } from '../recording/required-record.js';
import { sameContent } from '../ports/same-content.js';
import { stampOf } from '../recording/stamp.js';

/** Name and ways to reach a customer: personal data that may be erased. */
export interface CustomerContact {
  readonly name: string;
  readonly telephone?: string | undefined;
  readonly email?: string | undefined;
  readonly address?: string | undefined;
}

export interface CustomerEntry {
  readonly kind: Customer['kind'];
  readonly contact: CustomerContact;
  readonly downtimeCostPerDay: string | null;
  readonly planningDistanceKm: string | null;
}

/** A customer with the contact as it now stands; `contact` is null once it was erased. */
export interface CustomerView {
  readonly record: Recorded<NoReferences, Customer>;
  readonly contact: Readonly<Record<string, string>> | null;
  readonly erasedAt: string | null;
}

export class RecordCustomerUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly customer: CustomerEntry },
  ): Promise<CustomerView & { readonly created: boolean }> {
    const stamp = stampOf(this.clock, caller);
    const id = command.id ?? this.ids.next();
    const record = async (tx: ShopTransaction): Promise<CustomerView & { readonly created: boolean }> => {
      // A customer sent twice keeps the contact of the first time, whatever was corrected since.
      const [known] = await tx.customers.history(id);
      const sameContact =
        known !== undefined &&
        sameContent((await viewOf(tx, known)).contact, contactOf(command.customer.contact));
      const personalRecordId = (sameContact ? known.content.personalRecordId : null) ?? this.ids.next();
      const content = contentOf(command.customer, personalRecordId);
      const added = await addRecord(tx.customers, 'customer', { id, identity: {}, content }, stamp);
      if (added.created) await addContact(tx, id, personalRecordId, command.customer.contact, stamp);
      return { ...(await viewOf(tx, added.record)), created: added.created };
    };
    return againWhenTaken(() => this.work.run(caller.shopId, record));
  }
}

/** Corrects a customer; the earlier contact stays until it is erased. */
export class CorrectCustomerUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly customer: CustomerEntry;
      readonly reason: string;
    },
  ): Promise<CustomerView> {
    const stamp = stampOf(this.clock, caller, command.reason);
    return this.work.run(caller.shopId, async (tx) => {
      const personalRecordId = this.ids.next();
      const record = await correctRecord(
        tx.customers,
        'customer',
        {
          id: command.id,
          expected: command.expected,
          content: contentOf(command.customer, personalRecordId),
        },
        stamp,
      );
      await addContact(tx, command.id, personalRecordId, command.customer.contact, stamp);
      return viewOf(tx, record);
    });
  }
}

export class ShowCustomerUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(
    caller: Caller,
    query: { readonly id: string; readonly asOf?: string | undefined },
  ): Promise<CustomerView> {
    return this.work.read(caller.shopId, async (tx) => {
      if (caller.customerId !== undefined && caller.customerId !== query.id) throw notFound('customer');
      return viewOf(tx, await requiredRecord(tx.customers, 'customer', query.id, query.asOf));
    });
  }
}

export class ListCustomersUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(
    caller: Caller,
    query: {
      readonly limit: number;
      readonly after?: ListPosition | undefined;
      readonly asOf?: string | undefined;
    },
  ): Promise<{ readonly items: readonly CustomerView[]; readonly next?: ListPosition | undefined }> {
    return this.work.read(caller.shopId, async (tx) => {
      const page: ListPage<NoReferences, Customer> = await tx.customers.list({
        ...query,
        where: { id: caller.customerId },
      });
      return { items: await viewsOf(tx, page.items), next: page.next };
    });
  }
}

/**
 * Erases a customer's personal data: contact, words of complaints, names on consents. The vehicles and their history
 * stay. What a retention rule still holds is for the shop to judge before asking; the erasing itself is recorded.
 */
export class EraseCustomerUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id: string; readonly reason: string },
  ): Promise<{ readonly erased: number; readonly erasedAt: string }> {
    const stamp = stampOf(this.clock, caller, command.reason);
    return this.work.run(caller.shopId, async (tx) => {
      await requiredRecord(tx.customers, 'customer', command.id);
      const held = await tx.personal.ofCustomer(command.id);
      const erased = await tx.personal.erase(
        held.map((record) => record.id),
        stamp.by,
        stamp.at,
        command.reason,
      );
      await tx.announce({
        type: 'endfloat.customer.erased.v1',
        subjectId: command.id,
        at: stamp.at,
        payload: { erased },
      });
      return { erased, erasedAt: stamp.at };
    });
  }
}

function contentOf(entry: CustomerEntry, personalRecordId: string): Customer {
  return {
    kind: entry.kind,
    personalRecordId,
    downtimeCostPerDay: entry.downtimeCostPerDay,
    planningDistanceKm: entry.planningDistanceKm,
  };
}

function contactOf(contact: CustomerContact): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(contact).filter((entry): entry is [string, string] => typeof entry[1] === 'string'),
  );
}

function addContact(
  tx: ShopTransaction,
  customerId: string,
  id: string,
  contact: CustomerContact,
  stamp: { at: string; by: string },
): Promise<void> {
  const content = contactOf(contact);
  return tx.personal.add(
    { id, customerId, kind: 'customerContact', content, recordedAt: stamp.at },
    stamp.by,
  );
}

async function viewOf(tx: ShopTransaction, record: Recorded<NoReferences, Customer>): Promise<CustomerView> {
  const [view] = await viewsOf(tx, [record]);
  if (view === undefined) throw notFound('customer');
  return view;
}

async function viewsOf(
  tx: ShopTransaction,
  records: readonly Recorded<NoReferences, Customer>[],
): Promise<CustomerView[]> {
  const ids = records
    .map((record) => record.content.personalRecordId)
    .filter((id): id is string => id !== null);
  const personal = new Map<string, PersonalRecord>(
    (await tx.personal.findMany(ids)).map((each) => [each.id, each]),
  );
  return records.map((record) => {
    const contact = personal.get(record.content.personalRecordId ?? '');
    return { record, contact: contact?.content ?? null, erasedAt: contact?.erasedAt ?? null };
  });
}
