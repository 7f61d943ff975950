import type { PartCondition } from '@endfloat/catalogue';
import type { DeliveredOrder } from '@endfloat/stock';
import { daysBetween } from '../decide/days-between.js';
import type { OfferRecord } from '../decide/offers.use-case.js';
import type { StockLine } from '../ports/stock-queries.port.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import type { PartGroup } from './part-groups.js';

/** What there is of a group of parts, what is coming, and from whom more can be had. */
export interface Supply {
  readonly onHand: number;
  readonly reserved: number;
  /** ordered and not yet there */
  readonly onOrder: number;
  /** of them, promised for a day that has passed */
  readonly overdue: number;
  readonly lines: readonly StockLine[];
  readonly offers: readonly { readonly offer: OfferRecord; readonly delivered: readonly DeliveredOrder[] }[];
  /** of the shop */
  readonly currency: string;
}

export async function gatherSupply(
  tx: ShopTransaction,
  group: PartGroup,
  asked: {
    readonly today: string;
    readonly condition: PartCondition | undefined;
    readonly asOf: string;
  },
): Promise<Supply> {
  const { today, condition, asOf } = asked;
  const lines = (await tx.stock.lines({ partIds: group.parts.map(({ id }) => id), asOf })).filter(
    (line) => condition === undefined || line.condition === condition,
  );
  const all = await tx.offers.all({ componentType: group.current.content.componentType }, asOf);
  const own = all.filter(
    (offer) =>
      isOf(group, offer) &&
      offer.content.condition !== 'repairedOwnPart' &&
      (condition === undefined || offer.content.condition === condition),
  );
  const suppliers = [...new Set(own.map(({ content }) => content.supplier))];
  const ofSuppliers = suppliers.length === 0 ? [] : await tx.offers.all({ supplier: suppliers }, asOf);
  const offerId = ofSuppliers.map(({ id }) => id);
  const deliveries = offerId.length === 0 ? [] : await tx.deliveries.all({ offerId }, asOf);
  const ownIds = new Set(own.map(({ id }) => id));
  const open = deliveries.filter(
    ({ identity, content }) => ownIds.has(identity.offerId) && content.arrivedOn === null,
  );
  const pieces = (some: typeof open): number =>
    some.reduce((sum, { content }) => sum + (content.quantity ?? 1), 0);
  const supplierOf = new Map(ofSuppliers.map(({ id, content }) => [id, content.supplier]));
  const { currency } = await settingsOf(tx);
  return {
    onHand: lines.reduce((sum, line) => sum + line.onHand, 0),
    reserved: lines.reduce((sum, line) => sum + line.reserved, 0),
    onOrder: pieces(open),
    overdue: pieces(open.filter(({ content: { promisedOn } }) => promisedOn !== null && promisedOn < today)),
    lines,
    offers: own
      .filter(({ content: { validUntil } }) => validUntil === null || validUntil >= today)
      .map((offer) => ({
        offer,
        // How a supplier keeps promises shows on all that was ordered there; without a promise only like parts count.
        delivered: deliveries.flatMap(({ identity, content }): DeliveredOrder[] => {
          const isLike =
            supplierOf.get(identity.offerId) === offer.content.supplier &&
            (offer.content.promisedLeadDays === null
              ? ownIds.has(identity.offerId)
              : content.promisedOn !== null);
          if (!isLike || content.arrivedOn === null) return [];
          const { orderedOn, promisedOn, arrivedOn } = content;
          const promisedDays = promisedOn === null ? null : daysBetween(orderedOn, promisedOn);
          return [{ promisedDays, actualDays: daysBetween(orderedOn, arrivedOn) }];
        }),
      })),
    currency,
  };
}

/** By the number of the shop's list, or by the number the supplier gives it; one that names none is of the kind. */
function isOf(group: PartGroup, { content }: OfferRecord): boolean {
  const partId = content.partId ?? null;
  if (partId !== null) return group.parts.some(({ id }) => id === partId);
  return (
    content.partNumber === null || group.parts.some((part) => part.content.partNumber === content.partNumber)
  );
}
