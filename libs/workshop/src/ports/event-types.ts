/** What a member of an event's data is: the id of a record, a whole number, a short text such as a code, or several. */
export type EventMember = 'id' | 'idOrNull' | 'count' | 'text' | 'texts';

export interface EventType {
  /** when it happens, in one line */
  readonly summary: string;
  /** the kind of record that `subject` names */
  readonly subject: string;
  readonly data: Readonly<Record<string, EventMember>>;
}

/**
 * Every type of event the workshop announces. No personal data: an event says what happened to which record, and who
 * may read the record reads the rest there. Held equal to what the use cases announce by a test.
 */
export const eventTypes: Readonly<Record<string, EventType>> = {
  'endfloat.arrivalInspection.recorded.v1': {
    summary: 'A part was inspected on arrival.',
    subject: 'inspection on arrival',
    data: { partId: 'id', outcomes: 'texts' },
  },
  'endfloat.assessment.made.v1': {
    summary: 'A repair-or-replace calculation was stored.',
    subject: 'assessment',
    data: { vehicleId: 'id', jobId: 'idOrNull', componentType: 'text', recommendation: 'text' },
  },
  'endfloat.comeback.confirmed.v1': {
    summary: 'Somebody confirmed that a complaint is a comeback of an earlier job.',
    subject: 'comeback',
    data: { jobId: 'id', complaintId: 'id' },
  },
  'endfloat.comeback.refused.v1': {
    summary: 'Somebody refused a proposed comeback.',
    subject: 'comeback',
    data: { jobId: 'id', complaintId: 'id' },
  },
  'endfloat.complaint.taken.v1': {
    summary: 'A complaint was taken.',
    subject: 'complaint',
    data: { vehicleId: 'id' },
  },
  'endfloat.core.owed.v1': {
    summary: 'A core is owed to a supplier.',
    subject: 'core',
    data: { componentType: 'text', returnBy: 'text' },
  },
  'endfloat.core.stepped.v1': {
    summary: 'A core that is owed went a step further.',
    subject: 'core',
    data: { state: 'text', on: 'text' },
  },
  'endfloat.customer.erased.v1': {
    summary: "A customer's personal data was erased.",
    subject: 'customer',
    data: { erased: 'count' },
  },
  'endfloat.decision.recorded.v1': {
    summary: 'Somebody chose what to do.',
    subject: 'decision',
    data: { assessmentId: 'id', vehicleId: 'id', jobId: 'idOrNull', chosen: 'text' },
  },
  'endfloat.fleetHistory.imported.v1': {
    summary: 'The history of a fleet was taken over.',
    subject: 'customer',
    data: { vehicles: 'count' },
  },
  'endfloat.gaugeStudy.recorded.v1': {
    summary: 'A gauge study was recorded.',
    subject: 'gauge study',
    data: { characteristic: 'text', instrumentKind: 'text' },
  },
  'endfloat.inspection.read.v1': {
    summary: 'Readings of an inspection were recorded.',
    subject: 'inspection',
    data: { readings: 'count' },
  },
  'endfloat.job.opened.v1': {
    summary: 'A job was opened.',
    subject: 'job',
    data: { vehicleId: 'id' },
  },
  'endfloat.job.released.v1': {
    summary: 'A vehicle was released; its watch window begins.',
    subject: 'job',
    data: { vehicleId: 'id' },
  },
  'endfloat.offer.recorded.v1': {
    summary: 'An offer of a part was recorded.',
    subject: 'offer',
    data: { componentType: 'text', condition: 'text' },
  },
  'endfloat.reading.corrected.v1': {
    summary: 'A reading was corrected.',
    subject: 'reading',
    data: { inspectionId: 'id' },
  },
  'endfloat.reading.withdrawn.v1': {
    summary: 'A reading was taken back: it stays in the history and counts for nothing.',
    subject: 'reading',
    data: { inspectionId: 'id' },
  },
  'endfloat.service.recorded.v1': {
    summary: 'An item of the service plan was recorded as done.',
    subject: 'service record',
    data: { vehicleId: 'id', planItemId: 'id' },
  },
  'endfloat.servicePlanItem.recorded.v1': {
    summary: 'Something the shop does at intervals was recorded.',
    subject: 'item of the service plan',
    data: {},
  },
  'endfloat.stock.moved.v1': {
    summary: 'A part moved in the stock.',
    subject: 'part',
    data: { partId: 'id', condition: 'text', kind: 'text', onHand: 'count', reserved: 'count' },
  },
  'endfloat.vehicle.handedOverUnrepaired.v1': {
    summary: 'A vehicle was handed over unrepaired, not for the road.',
    subject: 'vehicle',
    data: { jobId: 'id' },
  },
  'endfloat.vehicle.recorded.v1': {
    summary: 'A vehicle was recorded.',
    subject: 'vehicle',
    data: { customerId: 'id' },
  },
  'endfloat.warrantyClaim.recorded.v1': {
    summary: 'A warranty was claimed.',
    subject: 'warranty claim',
    data: { giver: 'text', cover: 'text' },
  },
  'endfloat.warrantyClaim.stepped.v1': {
    summary: 'A warranty claim went a step further.',
    subject: 'warranty claim',
    data: { state: 'text', on: 'text' },
  },
  'endfloat.webhookEndpoint.changed.v1': {
    summary: 'An endpoint of webhooks was recorded, changed, or said that it is gone.',
    subject: 'webhook endpoint',
    data: { state: 'text' },
  },
};
