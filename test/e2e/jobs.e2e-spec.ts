import { startTestApi, type Reply, type TestApi, type TestShop, type TestUser } from '../support/api.js';

const complaint = {
  jobId: null,
  receivedAt: '2026-03-02T08:00:00Z',
  words: 'the revs go up when I put the air on',
  symptoms: { 'idle-rises-with-ac': 'present', 'stalls-cold': 'absent' },
  conditions: { engineState: 'hot' },
  troubleCodes: [],
  reproduced: true,
  stopScrewMovedByOthers: null,
  reportedByDriver: false,
  components: [],
  beganAfterRepair: false,
  distanceKm: null,
};
const job = {
  openedAt: '2026-03-02T08:30:00Z',
  assignedTo: null,
  diagnosedBy: null,
  causeId: null,
  note: null,
};
const line = {
  action: 'adjustSwitch',
  componentType: 'throttle-housing',
  position: 'intake',
  state: 'planned',
  technicianId: null,
  doneAt: null,
  minutes: null,
  description: 'set the idle switch',
  from: null,
  to: null,
  protectedPurpose: null,
  protectedReason: null,
  part: null,
};

describe('a job from complaint to release', () => {
  let api: TestApi;
  let shop: TestShop;
  let technician: TestUser;
  let desk: TestUser;
  let customerId: string;

  const post = (url: string, body: object, as: TestUser = desk, ifMatch?: string): Promise<Reply> =>
    api.call('POST', url, { as, body, ifMatch });

  beforeAll(async () => {
    api = await startTestApi();
    shop = await api.openShop();
    technician = await shop.user(['technician']);
    desk = await shop.user(['desk']);
    const made = await post('/v1/customers', {
      kind: 'person',
      contact: { name: 'Ottoline Farrow' },
      downtimeCostPerDay: null,
      planningDistanceKm: null,
    });
    customerId = made.body.id;
  });
  afterAll(() => api.close());

  const newVan = async (): Promise<string> => {
    const made = await post('/v1/vehicles', {
      chassisNumber: null,
      plate: null,
      label: 'a van',
      firstUsedOn: '1992-06-01',
      application: null,
      attributes: {},
      expectedKmPerYear: null,
      observedSpans: [],
      retiredOn: null,
      customerId,
      ownedFrom: '2020-01-01T00:00:00Z',
    });
    return made.body.id;
  };
  const newJob = async (vehicleId: string, at: Partial<typeof complaint> = {}): Promise<string> => {
    const taken = await post('/v1/complaints', { ...complaint, ...at, vehicleId });
    const opened = await post('/v1/jobs', {
      ...job,
      openedAt: at.receivedAt ?? job.openedAt,
      vehicleId,
      complaintIds: [taken.body.id],
      odometer: null,
    });
    expect(opened.status).toBe(201);
    return opened.body.id;
  };
  const consented = async (jobId: string, workLineId: string): Promise<void> => {
    const estimate = await post(`/v1/jobs/${jobId}/estimates`, {
      lines: [
        { workLineId, description: 'work', partsAmount: '0.00', labourHours: '1.2', partCondition: null },
      ],
      ceilingAmount: null,
    });
    expect(estimate.body.totalAmount).toBe('96.00');
    const consent = await post(`/v1/jobs/${jobId}/consents`, {
      estimateId: estimate.body.id,
      answer: 'given',
      answeredAt: '2026-03-02T09:30:00Z',
      way: 'byTelephone',
      declinedWork: null,
      name: 'Ottoline Farrow',
    });
    expect(consent.status).toBe(201);
  };
  const prove = async (jobId: string, outcomes: Record<string, string> = {}): Promise<void> => {
    const proof = await api.call('GET', `/v1/jobs/${jobId}/proof`, { as: technician });
    for (const point of proof.body.wanted as string[]) {
      await post(
        `/v1/jobs/${jobId}/proof-points`,
        {
          point,
          outcome: outcomes[point] ?? 'passed',
          testedAt: '2026-03-02T11:00:00Z',
          testedBy: technician.id,
          notTestedBecause: outcomes[point] === 'notTested' ? 'no hill near' : null,
          recheckOn: outcomes[point] === 'notTested' ? '2026-03-16' : null,
          note: null,
        },
        technician,
      );
    }
  };
  const release = (jobId: string, releasedAt = '2026-03-02T12:00:00Z'): Promise<Reply> =>
    post(
      `/v1/jobs/${jobId}/releases`,
      { releasedAt, releasedBy: technician.id, statement: 'Proved on the road.' },
      technician,
    );

  it('JOB rule 12: a symptom that was not asked is in no answer, and a cause is no symptom', async () => {
    const vehicleId = await newVan();
    const taken = await post('/v1/complaints', { ...complaint, vehicleId });
    expect(taken.body.symptoms).toEqual({ 'idle-rises-with-ac': 'present', 'stalls-cold': 'absent' });
    const refused = await post('/v1/complaints', {
      ...complaint,
      vehicleId,
      symptoms: { 'shaft-worn': 'present' },
    });
    expect([refused.status, refused.body.errors[0].pointer]).toEqual([422, '/symptoms/shaft-worn']);
  });

  it('JOB rule 13: work is refused without consent to an estimate that contains it', async () => {
    const jobId = await newJob(await newVan());
    const planned = await post(`/v1/jobs/${jobId}/work-lines`, line, technician);
    const done = {
      ...line,
      state: 'done',
      technicianId: technician.id,
      doneAt: '2026-03-02T10:00:00Z',
      minutes: 30,
      reason: 'done',
    };
    const refused = await post(`/v1/work-lines/${planned.body.id}/corrections`, done, technician, '"1"');
    expect([refused.status, refused.body.code]).toEqual([409, 'work.notConsented']);
    await consented(jobId, planned.body.id);
    const accepted = await post(`/v1/work-lines/${planned.body.id}/corrections`, done, technician, '"1"');
    expect(accepted).toMatchObject({ status: 201, body: { state: 'done' } });
    const more = await post(
      `/v1/jobs/${jobId}/work-lines`,
      { ...line, ...done, reason: undefined, action: 'clean' },
      technician,
    );
    expect([more.status, more.body.code]).toEqual([409, 'work.notConsented']);
  });

  it('JOB rule 13: consent to a version that was replaced is refused', async () => {
    const jobId = await newJob(await newVan());
    const lines = [
      {
        workLineId: null,
        description: 'diagnosis',
        partsAmount: '0.00',
        labourHours: '0.5',
        partCondition: null,
      },
    ];
    const first = await post(`/v1/jobs/${jobId}/estimates`, { lines, ceilingAmount: null });
    const second = await post(`/v1/jobs/${jobId}/estimates`, { lines, ceilingAmount: '80.00' });
    expect([first.body.estimateVersion, second.body.estimateVersion]).toEqual([1, 2]);
    const answer = {
      answer: 'given',
      answeredAt: '2026-03-02T09:30:00Z',
      way: 'inPerson',
      declinedWork: null,
      name: null,
    };
    const late = await post(`/v1/jobs/${jobId}/consents`, { ...answer, estimateId: first.body.id });
    expect([late.status, late.body.code]).toEqual([409, 'consent.otherVersion']);
  });

  it('JOB rule 7: adjusting the plate stop needs a reason, and is never allowed to set the switch', async () => {
    const jobId = await newJob(await newVan());
    const stop = { ...line, action: 'adjustStop' };
    const bare = await post(`/v1/jobs/${jobId}/work-lines`, stop, technician);
    expect([bare.status, bare.body.code]).toEqual([422, 'work.reasonNeeded']);
    const forSwitch = { ...stop, protectedPurpose: 'toSetSwitch', protectedReason: 'switch closes late' };
    const wrong = await post(`/v1/jobs/${jobId}/work-lines`, forSwitch, technician);
    expect([wrong.status, wrong.body.code]).toEqual([422, 'work.stopNotForSwitch']);
    const right = { ...stop, protectedPurpose: 'movedByOthers', protectedReason: 'screw found two turns in' };
    expect((await post(`/v1/jobs/${jobId}/work-lines`, right, technician)).status).toBe(201);
  });

  it('JOB rule 8: a job is not released without proof, and the points that prove its complaint must pass', async () => {
    const jobId = await newJob(await newVan());
    const early = await release(jobId);
    expect([early.status, early.body.code]).toEqual([409, 'release.proofIncomplete']);
    expect(early.body.errors.map((fault: { detail: string }) => fault.detail).join()).toContain(
      'linkage-and-pedal',
    );
    await prove(jobId, { 'ac-load-at-hot-idle': 'notTested', 'light-throttle-steady': 'notTested' });
    const without = await release(jobId);
    expect(without.body.errors).toEqual([expect.objectContaining({ rule: 'mandatoryNotTested' })]);
    await prove(jobId, { 'light-throttle-steady': 'notTested' });
    expect((await release(jobId)).status).toBe(201);
    const shown = await api.call('GET', `/v1/jobs/${jobId}`, { as: desk });
    expect(shown.body.state).toBe('released');
  });

  it('API row 40: two who release one job at once make one release', async () => {
    const jobId = await newJob(await newVan());
    await prove(jobId);
    const answers = await Promise.all(Array.from({ length: 6 }, () => release(jobId)));
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 409, 409, 409, 409, 409]);
  });

  it('proposes a comeback with its reasons, never links silently, and keeps what people say of it', async () => {
    const vehicleId = await newVan();
    const jobId = await newJob(vehicleId);
    await prove(jobId);
    await release(jobId);
    const again = await post('/v1/complaints', {
      ...complaint,
      vehicleId,
      receivedAt: '2026-04-13T08:00:00Z',
    });
    expect(again.body.comebacks).toHaveLength(1);
    const [proposed] = again.body.comebacks;
    expect(proposed).toMatchObject({
      jobId,
      state: 'proposed',
      insideWindow: true,
      daysSinceRelease: 41,
      attribution: null,
    });
    expect(proposed.reasons.map((reason: { code: string }) => reason.code)).toEqual([
      'sameSymptoms',
      'insideWindow',
      'distanceUnreliable',
    ]);
    const word = {
      state: 'confirmed',
      attribution: 'wrongRootCause',
      note: null,
      reason: 'same fault, shaft worn',
    };
    const settled = await post(`/v1/comebacks/${proposed.id}/corrections`, word, desk, '"1"');
    expect(settled).toMatchObject({ status: 201, body: { state: 'confirmed', version: 2 } });
    const before = await api.call('GET', `/v1/complaints/${again.body.id}?asOf=${again.body.recordedAt}`, {
      as: desk,
    });
    expect(before.body.comebacks[0].state).toBe('proposed');
  });

  it('JOB rule 10: a job is watched for the window of its complaint’s family where the shop has given one', async () => {
    const { owner } = shop;
    const settings = await api.call('GET', '/v1/settings', { as: owner });
    const change = (comebackFamilyWindows: object[], ifMatch: string) =>
      api.call('PATCH', '/v1/settings', { as: owner, body: { comebackFamilyWindows }, ifMatch });
    const own = { familyId: 'idle-speed', days: 200, km: '9000' };
    expect((await change([own], String(settings.headers['etag']))).status).toBe(200);
    const jobId = await newJob(await newVan());
    await prove(jobId);
    const released = await release(jobId);
    expect([released.status, released.body.windowDays, released.body.windowKm]).toEqual([201, 200, '9000']);
    const tag = (await api.call('GET', '/v1/settings', { as: owner })).headers['etag'];
    expect((await change([], String(tag))).status).toBe(200);
  });

  it('JOB rule 16: a fleet manager sees jobs and complaints of their own vans only', async () => {
    const jobId = await newJob(await newVan());
    const fleet = await post('/v1/customers', {
      kind: 'fleetOperator',
      contact: { name: 'Brindle Parcels' },
      downtimeCostPerDay: null,
      planningDistanceKm: null,
    });
    const manager = await shop.user(['fleetManager'], fleet.body.id);
    expect((await api.call('GET', `/v1/jobs/${jobId}`, { as: manager })).status).toBe(404);
    for (const list of ['jobs', 'complaints', 'comebacks', 'fitted-parts']) {
      const answer = await api.call('GET', `/v1/${list}`, { as: manager });
      expect([list, answer.body.items]).toEqual([list, []]);
    }
  });
});
