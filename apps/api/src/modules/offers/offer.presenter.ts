import type { DeliveryContent, DeliveryResponse, OfferContent, OfferResponse } from '@endfloat/contracts';
import type { Delivery, DeliveryRecord, Offer, OfferRecord } from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';

function offerMembers(content: OfferContent | Offer): Offer {
  const { componentType, condition, supplier, partNumber, price, coreDeposit } = content;
  const { promisedLeadDays, warrantyMonths, validUntil } = content;
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
  };
}

export function toOffer(request: OfferContent): Offer {
  return offerMembers(request);
}

export function presentOffer(record: OfferRecord): OfferResponse {
  return { ...presentRecorded(record), ...offerMembers(record.content) };
}

export function toDelivery({ orderedOn, promisedOn, arrivedOn }: DeliveryContent): Delivery {
  return { orderedOn, promisedOn, arrivedOn };
}

export function presentDelivery(record: DeliveryRecord): DeliveryResponse {
  const { orderedOn, promisedOn, arrivedOn } = record.content;
  return {
    ...presentRecorded(record),
    offerId: record.identity.offerId,
    orderedOn,
    promisedOn,
    arrivedOn,
  };
}
