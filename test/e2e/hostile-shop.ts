import { randomBytes } from 'node:crypto';
import { addParts } from './hostile-parts.js';
import { addPlans } from './hostile-plans.js';
import type { Reply, TestApi, TestShop, TestUser } from '../support/api.js';

type Entry = Readonly<Record<string, unknown>>;

/** A shop in which one of everything exists, and a valid body for every operation that takes one. */
export interface FullShop {
  readonly shop: TestShop;
  readonly roles: Readonly<Record<string, TestUser>>;
  /** ids by the names that path parameters have */
  readonly ids: Readonly<Record<string, string>>;
  /** made anew for each call, by operation */
  readonly bodies: Readonly<Record<string, () => Entry>>;
  post(url: string, body: object, as?: TestUser, ifMatch?: string): Promise<Reply>;
}

const day = 86_400_000;
const mm = (value: string): Entry => ({ value, unit: 'mm' });
const eur = (amount: string): Entry => ({ amount, currency: 'EUR' });

/** An id that a client could choose. */
export function newId(): string {
  const bytes = randomBytes(16);
  bytes.writeUIntBE(Date.now(), 0, 6);
  bytes[6] = (bytes[6]! & 15) | 0x70;
  bytes[8] = (bytes[8]! & 63) | 0x80;
  return bytes.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}

/** @param mark - stands in every name and word of the shop, so that a leak is recognised */
export async function openFullShop(api: TestApi, mark: string): Promise<FullShop> {
  const shop = await api.openShop({ name: `${mark} works` });
  const now = Date.now();
  const ago = (days: number, minutes = 0): string =>
    new Date(now - days * day + minutes * 60_000).toISOString();
  const ids: Record<string, string> = {};
  const bodies: Record<string, () => Entry> = {};
  const post: FullShop['post'] = (url, body, as = shop.owner, ifMatch) =>
    api.call('POST', url, { as, body, ifMatch });
  const made = async (url: string, body: object): Promise<Reply['body']> => {
    const reply = await post(url, body);
    if (reply.status !== 201) throw new Error(`${url}: ${JSON.stringify(reply.body)}`);
    return reply.body;
  };

  bodies['createCustomer'] = () => ({
    kind: 'fleetOperator',
    contact: { name: `${mark} customer`, telephone: '555 0100' },
    downtimeCostPerDay: null,
    planningDistanceKm: null,
  });
  ids['customerId'] = (await made('/v1/customers', bodies['createCustomer']())).id;
  ids['otherCustomerId'] = (await made('/v1/customers', bodies['createCustomer']())).id;
  const roles: Record<string, TestUser> = { owner: shop.owner };
  for (const role of ['desk', 'technician', 'parts', 'developer', 'auditor'] as const)
    roles[role] = await shop.user([role]);
  roles['fleetManager'] = await shop.user(['fleetManager'], ids['customerId']);
  roles['otherManager'] = await shop.user(['fleetManager'], ids['otherCustomerId']);
  const technicianId = roles['technician']!.id;
  ids['userId'] = technicianId;
  bodies['createApiKey'] = () => ({
    userId: technicianId,
    name: 'key',
    roles: ['technician'],
    expiresAt: null,
  });
  bodies['rotateApiKey'] = () => ({ overlapMinutes: 60, expiresAt: null });
  ids['keyId'] = (await made('/v1/api-keys', bodies['createApiKey']())).id;
  bodies['createUser'] = () => ({
    displayName: `${mark} person`,
    roles: ['desk'],
    customerId: null,
    active: true,
  });

  bodies['createInstrument'] = () => ({
    kind: 'dialIndicator',
    name: `${mark} dial`,
    serial: 'S 1',
    errorModel: { kind: 'maximumPermissibleError', limit: mm('0.015') },
    resolution: mm('0.01'),
    retiredOn: null,
  });
  ids['instrumentId'] = (await made('/v1/instruments', bodies['createInstrument']())).id;
  bodies['createCalibration'] = () => ({
    calibratedOn: ago(30).slice(0, 10),
    dueOn: ago(-300).slice(0, 10),
    passed: true,
    certificate: 'C 1',
    note: null,
  });
  await made(`/v1/instruments/${ids['instrumentId']}/calibrations`, bodies['createCalibration']());
  bodies['createOffer'] = () => ({
    componentType: 'throttle-housing',
    condition: 'remanufactured',
    supplier: `${mark} supplier`,
    partNumber: null,
    price: eur('310.00'),
    coreDeposit: eur('80.00'),
    promisedLeadDays: 2,
    warrantyMonths: 12,
    validUntil: null,
  });
  ids['offerId'] = (await made('/v1/offers', bodies['createOffer']())).id;
  bodies['createDelivery'] = () => ({
    orderedOn: ago(20).slice(0, 10),
    promisedOn: ago(18).slice(0, 10),
    arrivedOn: ago(17).slice(0, 10),
  });
  ids['deliveryId'] = (await made(`/v1/offers/${ids['offerId']}/deliveries`, bodies['createDelivery']())).id;

  bodies['createWebhookEndpoint'] = () => ({
    id: newId(),
    url: 'https://hooks.example.com/workshop',
    description: `${mark} hook`,
    eventTypes: null,
  });
  ids['endpointId'] = (await made('/v1/webhook-endpoints', bodies['createWebhookEndpoint']())).id;
  bodies['updateWebhookEndpoint'] = () => ({ description: `${mark} hook`, state: 'active' });

  bodies['createVehicle'] = () => ({
    customerId: ids['customerId'],
    ownedFrom: ago(1000),
    chassisNumber: 'ZZZTEST7XZA000014',
    plate: 'QX 14 LTN',
    label: `${mark} van`,
    firstUsedOn: '1991-04-02',
    application: null,
    attributes: {},
    expectedKmPerYear: '22000',
    observedSpans: [],
    retiredOn: null,
  });
  ids['vehicleId'] = (await made('/v1/vehicles', bodies['createVehicle']())).id;
  bodies['createOdometerEntry'] = () => ({
    shown: '184200',
    unit: 'km',
    readAt: ago(50),
    readBy: null,
    note: null,
  });
  ids['odometerEntryId'] = (
    await made(`/v1/vehicles/${ids['vehicleId']}/odometer-entries`, bodies['createOdometerEntry']())
  ).id;
  bodies['createOdometerSegment'] = () => ({
    cause: 'displayReplaced',
    startedAt: ago(3),
    shown: '10',
    unit: 'km',
    digits: 6,
    distanceKm: '187000',
    note: null,
  });
  bodies['createOwnership'] = () => ({ customerId: ids['customerId'], fromAt: ago(1) });
  bodies['createFittedPart'] = () => ({
    vehicleId: ids['vehicleId'],
    componentType: 'throttle-housing',
    position: 'spare',
    condition: 'new',
    fittedAt: ago(30),
    fittedKm: null,
    removedAt: null,
    removedKm: null,
    serial: null,
    batch: 'B 1',
    supplier: `${mark} supplier`,
    partNumber: null,
    removalReason: null,
  });
  ids['fittedPartId'] = (await made('/v1/fitted-parts', bodies['createFittedPart']())).id;
  bodies['createFleetHistory'] = () => ({
    customerId: ids['customerId'],
    componentType: 'throttle-housing',
    position: 'intake',
    vehicles: [1, 2].map((number) => ({
      id: newId(),
      label: `${mark} engine ${String(number)}`,
      chassisNumber: null,
      plate: null,
      firstUsedOn: '2001-01-01',
      observedFrom: '2001-02-01T00:00:00Z',
      observedUntil: '2003-02-01T00:00:00Z',
      replacements: [{ at: '2002-01-01T00:00:00Z', condition: 'new', supplier: null }],
    })),
  });

  bodies['createComplaint'] = () => ({
    vehicleId: ids['vehicleId'],
    jobId: null,
    receivedAt: ago(5),
    words: `${mark} words of the customer`,
    symptoms: { 'idle-rises-with-ac': 'present' },
    conditions: { engineState: 'hot' },
    troubleCodes: [],
    reproduced: true,
    stopScrewMovedByOthers: null,
    reportedByDriver: false,
    components: ['throttle-housing'],
    beganAfterRepair: false,
    distanceKm: null,
  });
  const first = await made('/v1/complaints', { ...bodies['createComplaint'](), receivedAt: ago(40) });
  bodies['createJob'] = () => ({
    vehicleId: ids['vehicleId'],
    complaintIds: [],
    odometer: null,
    openedAt: ago(4),
    assignedTo: technicianId,
    diagnosedBy: null,
    causeId: null,
    note: null,
  });
  const released = await made('/v1/jobs', {
    ...bodies['createJob'](),
    openedAt: ago(39),
    complaintIds: [first.id],
  });
  const { body: proof } = await api.call('GET', `/v1/jobs/${released.id}/proof`, { as: shop.owner });
  bodies['createProofPoint'] = () => ({
    point: proof.wanted[0],
    outcome: 'passed',
    testedAt: ago(3),
    testedBy: technicianId,
    notTestedBecause: null,
    recheckOn: null,
    note: null,
  });
  for (const point of proof.wanted as string[]) {
    const passed = { ...bodies['createProofPoint'](), point, testedAt: ago(38) };
    await made(`/v1/jobs/${released.id}/proof-points`, passed);
  }
  bodies['createRelease'] = () => ({
    releasedAt: ago(2),
    releasedBy: technicianId,
    statement: 'tested and good',
  });
  await made(`/v1/jobs/${released.id}/releases`, { ...bodies['createRelease'](), releasedAt: ago(37) });
  const second = await made('/v1/complaints', bodies['createComplaint']());
  ids['complaintId'] = second.id;
  ids['comebackId'] = second.comebacks[0].id;
  bodies['createComeback'] = () => ({ complaintId: second.id, jobId: released.id, note: null });
  ids['jobId'] = (await made('/v1/jobs', { ...bodies['createJob'](), complaintIds: [second.id] })).id;
  bodies['createWorkLine'] = () => ({
    action: 'adjustStop',
    componentType: 'throttle-housing',
    position: 'intake',
    state: 'planned',
    technicianId: null,
    doneAt: null,
    minutes: 18,
    description: null,
    from: 'turned in',
    to: 'grips paper',
    protectedPurpose: 'movedByOthers',
    protectedReason: 'paint broken',
    part: null,
  });
  ids['workLineId'] = (await made(`/v1/jobs/${ids['jobId']}/work-lines`, bodies['createWorkLine']())).id;
  bodies['createEstimate'] = () => ({
    ceilingAmount: null,
    lines: [
      {
        workLineId: ids['workLineId'],
        description: 'adjust',
        partsAmount: '0.00',
        labourHours: '0.30',
        partCondition: null,
      },
    ],
  });
  const estimate = await made(`/v1/jobs/${ids['jobId']}/estimates`, bodies['createEstimate']());
  bodies['createConsent'] = () => ({
    estimateId: estimate.id,
    answer: 'given',
    answeredAt: ago(3),
    way: 'byTelephone',
    declinedWork: null,
    name: `${mark} consenter`,
  });
  bodies['createJobEvent'] = () => ({ kind: 'waitingForPart', happenedAt: ago(3), note: null });
  bodies['createUnrepairedHandover'] = () => ({
    handedOverAt: ago(1),
    name: `${mark} taker`,
    warningGiven: 'not for the road',
  });

  const sheets = await api.call('GET', '/v1/check-sheets?code=throttle-housing', { as: shop.owner });
  ids['checkSheetId'] = sheets.body.items[0].id;
  bodies['createInspection'] = () => ({
    vehicleId: ids['vehicleId'],
    jobId: ids['jobId'],
    checkSheetId: ids['checkSheetId'],
    startedAt: ago(4, 10),
    technicianId,
    asFoundNotTaken: [],
    notDone: [],
    note: null,
  });
  ids['inspectionId'] = (await made('/v1/inspections', bodies['createInspection']())).id;
  bodies['createReading'] = () => ({
    checkId: 'shaft-radial-play-lower',
    phase: 'asFound',
    position: null,
    place: null,
    result: { kind: 'number', shown: '0.15', unit: 'mm' },
    instrumentId: ids['instrumentId'],
    measuredBy: technicianId,
    takenAt: ago(4, 20),
    conditions: {},
    note: null,
  });
  bodies['createReadingSet'] = () => ({ readings: [bodies['createReading']!()] });
  ids['readingId'] = (
    await made(`/v1/inspections/${ids['inspectionId']}/readings`, bodies['createReading']())
  ).id;
  bodies['createAssessment'] = () => ({
    vehicleId: ids['vehicleId'],
    jobId: ids['jobId'],
    componentType: 'throttle-housing',
    position: 'intake',
  });
  ids['assessmentId'] = (await made('/v1/assessments', bodies['createAssessment']())).id;
  bodies['createDecision'] = () => ({
    chosen: 'adjust',
    decidedAt: ago(0, -1),
    decidedBy: technicianId,
    choiceReason: 'the customer wants it',
  });
  ids['decisionId'] = (
    await made(`/v1/assessments/${ids['assessmentId']}/decisions`, bodies['createDecision']())
  ).id;
  bodies['createErasure'] = () => ({ reason: 'asked for it' });

  const limit = {
    id: 'chain-own',
    characteristic: 'chain-stretch',
    quantityKind: 'length',
    criterion: { kind: 'maximum', bound: { comparator: 'atMost', value: mm('516') } },
    advisory: null,
    severity: 'major',
    jurisdiction: null,
    applicability: {},
    conditions: {},
    exclusions: [],
    correction: null,
    edition: { validFrom: null, validTo: null, source: 'shop rule', citation: 'bench book' },
    origin: 'shop',
    judging: 'allowed',
    thresholds: { inside: 0.95, outside: 0.05 },
    asWritten: 'replace above 516 mm',
    note: null,
  };
  const chain = {
    id: 'chain-stretch',
    name: 'length of forty links',
    resultKind: 'number',
    quantityKind: 'length',
    canonicalUnit: 'mm',
    wearDirection: 'up',
    trend: 'wear',
  };
  bodies['createComponentType'] = () => ({
    componentType: {
      id: 'lift-gate',
      name: `${mark} gate`,
      edition: 1,
      positions: ['rear'],
      characteristics: [chain],
    },
  });
  await made('/v1/component-types', bodies['createComponentType']());
  ids['componentTypeCode'] = 'lift-gate';
  const check = {
    id: 'chain-stretch',
    title: 'length of forty links',
    section: 'search',
    steps: ['Measure forty links.'],
    componentTypeId: 'lift-gate',
    characteristicId: 'chain-stretch',
    resultKind: 'number',
    instrumentKind: 'caliper',
    minutes: 5,
    limits: [{ ...limit, id: 'chain-stretch-max' }],
    outsideMeans: 'chain worn',
    whatToDo: 'Replace the chain.',
  };
  bodies['createCheckSheet'] = () => ({
    checkSheet: {
      id: 'lift-gate-chain',
      title: `${mark} chain`,
      componentTypeIds: ['lift-gate'],
      checks: [check],
    },
  });
  await made('/v1/check-sheets', bodies['createCheckSheet']());
  bodies['createLimit'] = () => ({ limit });
  ids['limitRecordId'] = (await made('/v1/limits', bodies['createLimit']())).id;
  bodies['evaluateReadings'] = () => ({
    limitId: 'shaft-radial-play-lower-wear',
    readings: [{ kind: 'number', shown: '0.15', unit: 'mm' }],
    instrumentId: ids['instrumentId'],
  });

  await addParts({ mark, ids, bodies, made, ago });
  await addPlans({ mark, ids, bodies, made, ago });

  const corrected =
    (operation: string, ...without: string[]) =>
    (): Entry => ({
      ...Object.fromEntries(
        Object.entries(bodies[operation]!()).filter(([member]) => !without.includes(member)),
      ),
      reason: 'digits swapped',
    });
  bodies['correctGaugeStudy'] = corrected('createGaugeStudy');
  bodies['correctServicePlanItem'] = corrected('createServicePlanItem');
  bodies['correctServiceRecord'] = corrected('createServiceRecord', 'vehicleId', 'planItemId');
  bodies['correctPart'] = corrected('createPart');
  bodies['correctCore'] = corrected('createCore', 'partId', 'jobId');
  bodies['correctWarrantyClaim'] = corrected('createWarrantyClaim', 'partId', 'fittedPartId', 'jobId');
  bodies['correctArrivalInspection'] = corrected(
    'createArrivalInspection',
    'partId',
    'checkSheetId',
    'stockMoveId',
  );
  bodies['correctCustomer'] = corrected('createCustomer');
  bodies['correctDelivery'] = corrected('createDelivery');
  bodies['correctFittedPart'] = corrected('createFittedPart', 'vehicleId');
  bodies['correctInspection'] = corrected('createInspection', 'vehicleId', 'jobId', 'checkSheetId');
  bodies['correctInstrument'] = corrected('createInstrument');
  bodies['correctJob'] = corrected('createJob', 'vehicleId', 'complaintIds', 'odometer');
  bodies['correctLimit'] = corrected('createLimit');
  bodies['correctOdometerEntry'] = corrected('createOdometerEntry');
  bodies['correctOffer'] = corrected('createOffer');
  bodies['correctReading'] = () => ({ ...corrected('createReading')(), valueConfirmed: false });
  bodies['correctVehicle'] = corrected('createVehicle', 'customerId', 'ownedFrom');
  bodies['correctWorkLine'] = corrected('createWorkLine');
  bodies['correctComplaint'] = corrected('createComplaint', 'vehicleId');
  bodies['correctDecision'] = corrected('createDecision');
  bodies['correctComeback'] = () => ({
    state: 'confirmed',
    attribution: 'wrongRootCause',
    note: null,
    reason: 'looked at it',
  });
  bodies['updateSettings'] = () => ({ name: `${mark} works` });
  bodies['updateUser'] = () => ({ displayName: `${mark} person` });
  return { shop, roles, ids, bodies, post };
}
