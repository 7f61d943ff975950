import { parseMoney, type Money } from '@endfloat/metrology';
import { DomainError, invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Recorded } from '../ports/record-store.port.js';
import type { Offer } from '../ports/records/decide.records.js';
import type { NoReferences } from '../ports/records/shop.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { referencedRecord, requiredRecord } from '../recording/required-record.js';
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
      await refuseForeignPart(tx, content);
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
    return this.work.run(caller.shopId, async (tx) => {
      await refuseForeignPart(tx, content);
      const change = { id: command.id, expected: command.expected, content };
      return correctRecord(tx.offers, 'offer', change, stamp);
    });
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
  return { ...offer, price, coreDeposit, ...checkedBreaks(offer) };
}

/** Price breaks stand in the currency of the price, each from another number of pieces on. */
function checkedBreaks({ price, priceBreaks }: Offer): Pick<Offer, 'priceBreaks'> {
  if (priceBreaks === undefined || priceBreaks === null) return {};
  if (priceBreaks.length > 0 && price === null)
    throw invalidInput('/price', 'required', 'Price breaks need the price of one piece.');
  return {
    priceBreaks: priceBreaks.map(({ fromQuantity, price: each }, index) => {
      const at = `/priceBreaks/${String(index)}`;
      if (priceBreaks.findIndex((other) => other.fromQuantity === fromQuantity) !== index)
        throw invalidInput(`${at}/fromQuantity`, 'unique', 'Another break begins at this number.');
      if (each.currency !== price?.currency)
        throw new DomainError(
          'currency.mismatch',
          `The price is in ${price?.currency ?? ''}, this break in ${each.currency}. Give all in one currency.`,
          [{ pointer: `${at}/price/currency`, rule: 'oneCurrency', detail: price?.currency ?? '' }],
        );
      return { fromQuantity, price: notNegative(each, `${at}/price`) };
    }),
  };
}

/** The number of the shop's list that is offered: of the same kind, or none. */
async function refuseForeignPart(tx: ShopTransaction, { partId, componentType }: Offer): Promise<void> {
  if (partId === undefined || partId === null) return;
  const part = await referencedRecord(tx.parts, 'part', partId, '/partId');
  if (part.content.componentType !== componentType)
    throw invalidInput(
      '/partId',
      'sameKind',
      `This part is a ${part.content.componentType}, not a ${componentType}.`,
    );
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
