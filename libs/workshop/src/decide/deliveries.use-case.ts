import { localDay } from '../bench/local-day.js';
import { invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Recorded } from '../ports/record-store.port.js';
import type { Delivery, OfOffer } from '../ports/records/decide.records.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { settingsOf } from '../shop/open-shop.use-case.js';

export type DeliveryRecord = Recorded<OfOffer, Delivery>;

/** Records an order on an offer, with the day promised and, once it is there, the day it came. */
export class RecordDeliveryUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly offerId: string; readonly delivery: Delivery },
  ): Promise<AddedRecord<OfOffer, Delivery>> {
    const stamp = stampOf(this.clock, caller);
    const { offerId, delivery } = command;
    return this.work.run(caller.shopId, async (tx) => {
      await requiredRecord(tx.offers, 'offer', offerId);
      refuseWrongDays(delivery, localDay(stamp.at, (await settingsOf(tx)).timeZone));
      const record = { id: command.id ?? this.ids.next(), identity: { offerId }, content: delivery };
      return addRecord(tx.deliveries, 'delivery', record, stamp);
    });
  }
}

/** Corrects a delivery; the usual one is that the part has come. */
export class CorrectDeliveryUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly delivery: Delivery;
      readonly reason: string;
    },
  ): Promise<DeliveryRecord> {
    const stamp = stampOf(this.clock, caller, command.reason);
    return this.work.run(caller.shopId, async (tx) => {
      refuseWrongDays(command.delivery, localDay(stamp.at, (await settingsOf(tx)).timeZone));
      const change = { id: command.id, expected: command.expected, content: command.delivery };
      return correctRecord(tx.deliveries, 'delivery', change, stamp);
    });
  }
}

export class ListDeliveriesUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(
    caller: Caller,
    query: {
      readonly offerId: string;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<ListPage<OfOffer, Delivery>> {
    const { offerId, ...page } = query;
    return this.work.read(caller.shopId, async (tx) => {
      await requiredRecord(tx.offers, 'offer', offerId, query.asOf);
      return tx.deliveries.list({ where: { offerId }, ...page });
    });
  }

  /** One delivery, now or as it was known at a moment. */
  one(caller: Caller, id: string, asOf?: string): Promise<DeliveryRecord> {
    return this.work.read(caller.shopId, (tx) => requiredRecord(tx.deliveries, 'delivery', id, asOf));
  }

  revisions(caller: Caller, id: string): Promise<readonly DeliveryRecord[]> {
    return this.work.read(caller.shopId, async (tx) => {
      await requiredRecord(tx.deliveries, 'delivery', id);
      return tx.deliveries.history(id);
    });
  }
}

function refuseWrongDays({ orderedOn, promisedOn, arrivedOn }: Delivery, today: string): void {
  const refuse = (pointer: string, rule: string, detail: string): never => {
    throw invalidInput(pointer, rule, detail);
  };
  if (orderedOn > today) refuse('/orderedOn', 'notInFuture', 'This day lies in the future.');
  if (arrivedOn !== null && arrivedOn > today)
    refuse(
      '/arrivedOn',
      'notInFuture',
      'This day lies in the future. Leave it null until the part is there.',
    );
  if (promisedOn !== null && promisedOn < orderedOn)
    refuse('/promisedOn', 'order', 'A part cannot be promised for a day before it was ordered.');
  if (arrivedOn !== null && arrivedOn < orderedOn)
    refuse('/arrivedOn', 'order', 'A part cannot arrive before it was ordered.');
}
