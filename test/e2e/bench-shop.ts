import type { WorkAction } from '@endfloat/workshop';
import {
  StandingClock,
  startTestApi,
  type Reply,
  type TestApi,
  type TestShop,
  type TestUser,
} from '../support/api.js';

/** The throttle-housing bench of an invented shop: a van on a job, a dial, a set of blades, an inspection under way. */
export interface Bench {
  readonly api: TestApi;
  readonly clock: StandingClock;
  readonly shop: TestShop;
  readonly technician: TestUser;
  readonly sheetId: string;
  readonly dialId: string;
  readonly bladesId: string;
  /** a van of its own for every test, with an owner */
  van(attributes?: Record<string, string>, customerId?: string): Promise<string>;
  job(vehicleId: string, symptoms?: Record<string, 'present' | 'absent'>): Promise<string>;
  inspection(vehicleId: string, jobId?: string | null, more?: object): Promise<string>;
  read(inspectionId: string, checkId: string, result: object, more?: object): Promise<Reply>;
  /** linkage passed, as a prerequisite of everything behind it */
  linkagePassed(inspectionId: string): Promise<void>;
  work(jobId: string, action: WorkAction, doneAt: string): Promise<void>;
  checks(inspectionId: string): Promise<Record<string, Progress>>;
}

export interface Progress {
  readonly state: string;
  readonly outrankedBy: string | null;
  readonly asLeftDue: boolean;
  readonly openPrerequisites: string[];
}

export const startedAt = '2031-05-04T08:00:00.000Z';
const mm = (value: string) => ({ value, unit: 'mm' });
export const millimetres = (shown: string) => ({ kind: 'number', shown, unit: 'mm' });
export const yesNo = (answer: boolean) => ({ kind: 'yesNo', answer });
export const blades = (largestClosed: string | null, smallestOpen: string | null) => ({
  kind: 'bladePair',
  largestClosed,
  smallestOpen,
  unit: 'mm',
});

export async function openBench(): Promise<Bench> {
  const clock = new StandingClock('2031-05-04T09:00:00.000Z');
  const api = await startTestApi({ clock });
  const shop = await api.openShop();
  const technician = await shop.user(['technician']);
  const post = (url: string, body: object) => api.call('POST', url, { as: shop.owner, body });
  const customer = await post('/v1/customers', {
    kind: 'person',
    contact: { name: 'Ottoline Farrow' },
    downtimeCostPerDay: null,
    planningDistanceKm: null,
  });
  const sheets = await api.call('GET', '/v1/check-sheets?code=throttle-housing', { as: shop.owner });
  const dial = await post('/v1/instruments', {
    kind: 'dialIndicator',
    name: 'dial 3 on magnetic base',
    serial: null,
    retiredOn: null,
    errorModel: { kind: 'maximumPermissibleError', limit: mm('0.015') },
    resolution: mm('0.01'),
  });
  const set = await post('/v1/instruments', {
    kind: 'feelerBlades',
    name: 'blades 1',
    serial: null,
    retiredOn: null,
    errorModel: {
      kind: 'bladeSet',
      blades: [mm('0.05'), mm('0.07'), mm('0.10')],
      permissibleError: mm('0.005'),
    },
    resolution: null,
  });
  for (const { body } of [dial, set]) {
    await post(`/v1/instruments/${body.id}/calibrations`, {
      calibratedOn: '2031-01-10',
      dueOn: '2032-01-10',
      passed: true,
      certificate: 'C 114',
      note: null,
    });
  }
  const stamp = () => ({ at: clock.now(), by: shop.owner.id });
  const read: Bench['read'] = (inspectionId, checkId, result, more = {}) =>
    api.call('POST', `/v1/inspections/${inspectionId}/readings`, {
      as: technician,
      body: {
        checkId,
        phase: 'asFound',
        position: null,
        place: null,
        result,
        instrumentId: null,
        takenAt: clock.now(),
        conditions: {},
        note: null,
        ...more,
      },
    });
  return {
    api,
    clock,
    shop,
    technician,
    sheetId: sheets.body.items[0].id,
    dialId: dial.body.id,
    bladesId: set.body.id,
    read,
    van: async (attributes = {}, customerId = customer.body.id) => {
      const made = await post('/v1/vehicles', {
        chassisNumber: null,
        plate: null,
        label: 'Van 14',
        firstUsedOn: '1991-04-02',
        application: null,
        attributes,
        expectedKmPerYear: null,
        observedSpans: [],
        retiredOn: null,
        customerId,
        ownedFrom: '2030-01-01T00:00:00Z',
      });
      return made.body.id;
    },
    job: async (vehicleId, symptoms = {}) => {
      const jobId = api.ids.next();
      await api.work.run(shop.id, async (tx) => {
        const job = {
          openedAt: startedAt,
          assignedTo: null,
          diagnosedBy: null,
          causeId: null,
          bay: null,
          note: null,
        };
        await tx.jobs.add(jobId, { vehicleId }, job, stamp());
        const complaint = {
          jobId,
          receivedAt: startedAt,
          personalRecordId: null,
          symptoms,
          conditions: {},
          troubleCodes: [],
          reproduced: true,
          stopScrewMovedByOthers: null,
          reportedByDriver: false,
          components: [],
          beganAfterRepair: false,
          distanceKm: null,
        };
        await tx.complaints.add(api.ids.next(), { vehicleId }, complaint, stamp());
      });
      return jobId;
    },
    inspection: async (vehicleId, jobId = null, more = {}) => {
      const made = await api.call('POST', '/v1/inspections', {
        as: technician,
        body: {
          vehicleId,
          jobId,
          checkSheetId: sheets.body.items[0].id,
          startedAt,
          technicianId: technician.id,
          ...more,
        },
      });
      return made.body.id;
    },
    linkagePassed: async (inspectionId) => {
      await read(inspectionId, 'linkage-return', yesNo(true));
      await read(inspectionId, 'linkage-free-play', yesNo(true));
    },
    work: async (jobId, action, doneAt) => {
      const line = {
        action,
        componentType: 'throttle-housing',
        position: 'intake',
        fittedPartId: null,
        state: 'done' as const,
        technicianId: technician.id,
        doneAt,
        minutes: 20,
        description: null,
        from: null,
        to: null,
        protectedPurpose: null,
        protectedReason: null,
        part: null,
      };
      await api.work.run(shop.id, (tx) => tx.workLines.add(api.ids.next(), { jobId }, line, stamp()));
    },
    checks: async (inspectionId) => {
      const { body } = await api.call('GET', `/v1/inspections/${inspectionId}/checks`, { as: technician });
      return Object.fromEntries(
        body.checks.map((check: Progress & { checkId: string }) => [check.checkId, check]),
      );
    },
  };
}

/** The verdict against one limit in the answer to a reading. */
export function against(reply: Reply, limitId: string): Reply['body'] {
  const verdicts = reply.body.judgement?.verdicts ?? reply.body.verdicts ?? [];
  return verdicts.find((verdict: { limit: { id: string } }) => verdict.limit.id === limitId);
}
