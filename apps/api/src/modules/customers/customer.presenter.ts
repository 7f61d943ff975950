import type { ContactDto, CustomerContent, CustomerResponse } from '@endfloat/contracts';
import type { CustomerEntry, CustomerView } from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';

export function toCustomerEntry(request: CustomerContent): CustomerEntry {
  const { kind, downtimeCostPerDay, planningDistanceKm, contact } = request;
  const { name, telephone, email, address } = contact;
  return { kind, downtimeCostPerDay, planningDistanceKm, contact: { name, telephone, email, address } };
}

export function presentCustomer({ record, contact, erasedAt }: CustomerView): CustomerResponse {
  const { kind, downtimeCostPerDay, planningDistanceKm } = record.content;
  return {
    ...presentRecorded(record),
    kind,
    downtimeCostPerDay,
    planningDistanceKm,
    contact: presentContact(contact),
    erasedAt,
  };
}

function presentContact(contact: CustomerView['contact']): ContactDto | null {
  return contact === null ? null : { ...contact, name: contact['name'] ?? '' };
}
