import { parseMoney, type Money } from '@endfloat/metrology';
import { DomainError, invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Recorded } from '../ports/record-store.port.js';
import type { Offer } from '../ports/records/decide.records.js';
import type { NoReferences } from '../ports/records/shop.records.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';

export type OfferRecord = Recorded<NoReferences, Offer>;

/** Records what a supplier asks for a part. A price in another currency is kept as quoted and never summed. */
export class RecordOfferUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly offer: Offer },
  ): Promise<AddedRecord<NoReferences, Offer>> {
    const stamp = stampOf(this.clock, caller);
    const content = checkedOffer(command.offer);
    const id = command.id ?? this.ids.next();
    return this.work.run(caller.shopId, async (tx) => {
      const added = await addRecord(tx.offers, 'offer', { id, identity: {}, content }, stamp);
      if (added.created) {
        const payload = { componentType: content.componentType, condition: content.condition };
        await tx.announce({ type: 'endfloat.offer.recorded.v1', subjectId: id, at: stamp.at, payload });
      }
      return added;
    });
  }
}

/** Corrects an offer: another price, a promise, or that it holds no longer. */
export class CorrectOfferUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly offer: Offer;
      readonly reason: string;
    },
  ): Promise<OfferRecord> {
    const stamp = stampOf(this.clock, caller, command.reason);
    const content = checkedOffer(command.offer);
    return this.work.run(caller.shopId, (tx) =>
      correctRecord(tx.offers, 'offer', { id: command.id, expected: command.expected, content }, stamp),
    );
  }
}

export class ListOffersUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(
    caller: Caller,
    query: {
      readonly componentType?: string | undefined;
      readonly supplier?: string | undefined;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<ListPage<NoReferences, Offer>> {
    const { componentType, supplier, ...page } = query;
    return this.work.read(caller.shopId, (tx) =>
      tx.offers.list({ where: { componentType, supplier }, ...page }),
    );
  }

  /** One offer, now or as it was known at a moment. */
  one(caller: Caller, id: string, asOf?: string): Promise<OfferRecord> {
    return this.work.read(caller.shopId, (tx) => requiredRecord(tx.offers, 'offer', id, asOf));
  }

  revisions(caller: Caller, id: string): Promise<readonly OfferRecord[]> {
    return this.work.read(caller.shopId, async (tx) => {
      await requiredRecord(tx.offers, 'offer', id);
      return tx.offers.history(id);
    });
  }
}

/** Price and deposit are paid together, so they stand in one currency; neither is negative. */
function checkedOffer(offer: Offer): Offer {
  const price = offer.price === null ? null : notNegative(offer.price, '/price');
  const coreDeposit = offer.coreDeposit === null ? null : notNegative(offer.coreDeposit, '/coreDeposit');
  if (price !== null && coreDeposit !== null && price.currency !== coreDeposit.currency) {
    throw new DomainError(
      'currency.mismatch',
      `The price is in ${price.currency}, the deposit in ${coreDeposit.currency}. Both are paid together: give both in one currency.`,
      [{ pointer: '/coreDeposit/currency', rule: 'oneCurrency', detail: price.currency }],
    );
  }
  return { ...offer, price, coreDeposit };
}

/** An amount as the currency writes it, refused where it is negative or has decimals the currency does not have. */
export function notNegative(money: Money, pointer: string): Money {
  const parsed = parseMoney(money.amount, money.currency);
  if (parsed.kind !== 'money' || parsed.money.amount.startsWith('-')) {
    throw invalidInput(
      `${pointer}/amount`,
      'money',
      `Give an amount of ${money.currency} that is not negative, with no more decimals than the currency has.`,
    );
  }
  return parsed.money;
}
