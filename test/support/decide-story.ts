import type { Reply, TestApi, TestShop, TestUser } from './api.js';

/** A shop with a van, a customer's job and instruments, driven over HTTP only. */
export interface StoryShop {
  readonly shop: TestShop;
  readonly desk: TestUser;
  readonly technician: TestUser;
  readonly customerId: string;
  readonly dialId: string;
  readonly bladesId: string;
  readonly sheetId: string;
  post(url: string, body: object, as?: TestUser, ifMatch?: string): Promise<Reply>;
  get(url: string, as?: TestUser): Promise<Reply>;
  newVan(customerId?: string): Promise<string>;
  /** a complaint and the job that deals with it */
  newJob(
    vehicleId: string,
    receivedAt: string,
  ): Promise<{ readonly jobId: string; readonly complaint: Reply }>;
  inspect(vehicleId: string, jobId: string | null, startedAt: string): Promise<string>;
  /** as-found readings; linkage is passed first unless told */
  read(inspectionId: string, entries: readonly ReadingInput[]): Promise<void>;
  offer(change: object): Promise<string>;
  assess(vehicleId: string, jobId: string | null, change?: object): Promise<Reply>;
}

export interface ReadingInput {
  readonly checkId: string;
  readonly result: object;
  readonly takenAt: string;
  readonly instrumentId?: string | null;
}

export const yes = { kind: 'yesNo', answer: true };
export const no = { kind: 'yesNo', answer: false };
export const pair = (largestClosed: string, smallestOpen: string) => ({
  kind: 'bladePair',
  largestClosed,
  smallestOpen,
  unit: 'mm',
});
export const millimetres = (shown: string) => ({ kind: 'number', shown, unit: 'mm' });

/** The linkage as it must be before anything on the shaft is judged. */
export const freeLinkage = (takenAt: string): ReadingInput[] => [
  { checkId: 'linkage-return', result: yes, takenAt },
  { checkId: 'linkage-free-play', result: yes, takenAt },
];

const must = (reply: Reply): Reply => {
  if (reply.status >= 300) throw new Error(`${String(reply.status)} ${JSON.stringify(reply.body)}`);
  return reply;
};

const invented = {
  offer: {
    componentType: 'throttle-housing',
    supplier: 'Birchmoor Castings',
    partNumber: null,
    coreDeposit: null,
    promisedLeadDays: 0,
    warrantyMonths: null,
    validUntil: null,
  },
  van: {
    chassisNumber: null,
    plate: null,
    label: 'Van 14',
    firstUsedOn: '1992-06-01',
    application: null,
    attributes: {},
    expectedKmPerYear: null,
    observedSpans: [],
    retiredOn: null,
  },
  complaint: {
    jobId: null,
    words: 'the revs go up when I put the air on',
    symptoms: { 'idle-rises-with-ac': 'present' },
    conditions: {},
    troubleCodes: [],
    reproduced: true,
    stopScrewMovedByOthers: null,
    reportedByDriver: false,
    components: ['throttle-housing'],
    beganAfterRepair: false,
    distanceKm: null,
  },
};

/** Opens an invented shop with people, a customer, a dial and a set of blades. */
export async function openStoryShop(api: TestApi): Promise<StoryShop> {
  const shop = await api.openShop();
  const desk = await shop.user(['desk']);
  const technician = await shop.user(['technician']);
  const post = (url: string, body: object, as: TestUser = shop.owner, ifMatch?: string): Promise<Reply> =>
    api.call('POST', url, { as, body, ifMatch });
  const idOf = async (reply: Promise<Reply>): Promise<string> => must(await reply).body.id as string;
  const newCustomer = post('/v1/customers', {
    kind: 'person',
    contact: { name: 'Ottoline Farrow' },
    downtimeCostPerDay: null,
    planningDistanceKm: null,
  });
  const customerId = await idOf(newCustomer);
  const instrument = (kind: string, name: string, errorModel: object) =>
    idOf(
      post('/v1/instruments', {
        kind,
        name,
        errorModel,
        resolution: { value: '0.01', unit: 'mm' },
        serial: null,
        retiredOn: null,
      }),
    );
  const dialId = await instrument('dialIndicator', 'dial 3', {
    kind: 'maximumPermissibleError',
    limit: { value: '0.015', unit: 'mm' },
  });
  const bladesId = await instrument('feelerBlades', 'blades 1', {
    kind: 'bladeSet',
    blades: ['0.05', '0.06', '0.07', '0.08', '0.10'].map((value) => ({ value, unit: 'mm' })),
    permissibleError: { value: '0.005', unit: 'mm' },
  });
  const sheets = await api.call('GET', '/v1/check-sheets', { as: shop.owner });
  const sheetId = (sheets.body.items as { id: string; code: string }[]).find(
    ({ code }) => code === 'throttle-housing',
  )!.id;
  return {
    shop,
    desk,
    technician,
    customerId,
    dialId,
    bladesId,
    sheetId,
    post,
    get: (url, as = shop.owner) => api.call('GET', url, { as }),
    newVan: (owner = customerId) =>
      idOf(post('/v1/vehicles', { ...invented.van, customerId: owner, ownedFrom: '2020-01-01T00:00:00Z' })),
    newJob: async (vehicleId, receivedAt) => {
      const complaint = must(await post('/v1/complaints', { ...invented.complaint, vehicleId, receivedAt }));
      const jobId = await idOf(
        post('/v1/jobs', {
          openedAt: receivedAt,
          assignedTo: null,
          diagnosedBy: null,
          causeId: null,
          note: null,
          vehicleId,
          complaintIds: [complaint.body.id],
          odometer: null,
        }),
      );
      return { jobId, complaint };
    },
    inspect: (vehicleId, jobId, startedAt) =>
      idOf(
        post('/v1/inspections', {
          vehicleId,
          jobId,
          checkSheetId: sheetId,
          startedAt,
          technicianId: technician.id,
        }),
      ),
    read: async (inspectionId, entries) => {
      const readings = entries.map(({ checkId, result, takenAt, instrumentId = null }) => ({
        checkId,
        result,
        takenAt,
        instrumentId,
        phase: 'asFound',
        position: null,
        place: null,
        conditions: {},
        note: null,
      }));
      must(await post(`/v1/inspections/${inspectionId}/reading-sets`, { readings }, technician));
    },
    offer: (change) => idOf(post('/v1/offers', { ...invented.offer, ...change })),
    assess: (vehicleId, jobId, change = {}) =>
      post(
        '/v1/assessments',
        { vehicleId, jobId, componentType: 'throttle-housing', position: 'intake', ...change },
        desk,
      ),
  };
}
