import type {
  DeliveryContent,
  DeliveryResponse,
  MoneyDto,
  OfferContent,
  OfferResponse,
} from '@endfloat/contracts';
import type { Delivery, DeliveryRecord, Offer, OfferRecord } from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';

function offerMembers(content: OfferContent | Offer): Offer {
  const { componentType, condition, supplier, partNumber, price, coreDeposit } = content;
  const { promisedLeadDays, warrantyMonths, validUntil, partId, warrantyKm, coreReturnDays } = content;
  const priceBreaks = content.priceBreaks ?? null;
  return {
    componentType,
    condition,
    supplier,
    partNumber,
    price: price === null ? null : { amount: price.amount, currency: price.currency },
    coreDeposit: coreDeposit === null ? null : { amount: coreDeposit.amount, currency: coreDeposit.currency },
    promisedLeadDays,
    warrantyMonths,
    validUntil,
    // Absent is kept absent: an offer sent again as it was first is the same offer.
    ...(partId === undefined ? {} : { partId }),
    ...(warrantyKm === undefined ? {} : { warrantyKm }),
    ...(coreReturnDays === undefined ? {} : { coreReturnDays }),
    ...(content.priceBreaks === undefined ? {} : { priceBreaks: priceBreaks?.map(presentBreak) ?? null }),
  };
}

const presentBreak = ({ fromQuantity, price }: { fromQuantity: number; price: MoneyDto }) => ({
  fromQuantity,
  price: { amount: price.amount, currency: price.currency },
});

export function toOffer(request: OfferContent): Offer {
  return offerMembers(request);
}

export function presentOffer(record: OfferRecord): OfferResponse {
  const { priceBreaks, ...content } = offerMembers(record.content);
  const breaks = priceBreaks == null ? priceBreaks : [...priceBreaks];
  return {
    ...presentRecorded(record),
    ...content,
    ...(breaks === undefined ? {} : { priceBreaks: breaks }),
  };
}

export function toDelivery({ orderedOn, promisedOn, arrivedOn, quantity }: DeliveryContent): Delivery {
  return { orderedOn, promisedOn, arrivedOn, ...(quantity === undefined ? {} : { quantity }) };
}

export function presentDelivery(record: DeliveryRecord): DeliveryResponse {
  const { orderedOn, promisedOn, arrivedOn, quantity } = record.content;
  return {
    ...presentRecorded(record),
    offerId: record.identity.offerId,
    orderedOn,
    promisedOn,
    arrivedOn,
    ...(quantity === undefined ? {} : { quantity }),
  };
}
