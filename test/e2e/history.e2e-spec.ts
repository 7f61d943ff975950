import { StandingClock, startTestApi, type Reply, type TestApi, type TestUser } from '../support/api.js';
import {
  freeLinkage,
  millimetres,
  openStoryShop,
  pair,
  yes,
  type StoryShop,
} from '../support/decide-story.js';

const eur = (amount: string) => ({ amount, currency: 'EUR' });
const wear = 'shaft-radial-play-lower-wear';

interface Entry {
  readonly kind: string;
  readonly happenedAt: string | null;
  readonly jobId: string | null;
  // eslint-disable-next-line @typescript-eslint/no-explicit-any -- answers are checked against the document, then looked into freely
  readonly record: any;
  // eslint-disable-next-line @typescript-eslint/no-explicit-any -- as above
  readonly otherRevisions: any[];
}

/**
 * Everything about one van in one answer. The whole visit is recorded first, then the van changes hands and a reading
 * is corrected a month later.
 */
describe('the history of a vehicle', () => {
  let api: TestApi;
  let clock: StandingClock;
  let story: StoryShop;
  let auditor: TestUser;
  const named: Record<string, string> = {};
  let users: Record<string, TestUser>;
  let afterVisit: string;

  const ask = (query = '', as: TestUser = auditor): Promise<Reply> =>
    api.call('GET', `/v1/vehicles/${named['van']}/history${query}`, { as });
  const of = ({ body }: Reply, kind: string): Entry[] =>
    (body.entries as Entry[]).filter((entry) => entry.kind === kind);
  const only = (reply: Reply, kind: string): Entry => {
    const [entry, ...more] = of(reply, kind);
    expect([kind, entry === undefined, more.length]).toEqual([kind, false, 0]);
    return entry!;
  };
  const must = async (reply: Promise<Reply>): Promise<Reply['body']> => {
    const { status, body } = await reply;
    expect([status, status < 300 ? '' : body]).toEqual([201, '']);
    return body;
  };
  const post = (url: string, body: object, as?: TestUser, ifMatch?: string) =>
    must(story.post(url, body, as, ifMatch));
  const customer = async (name: string): Promise<string> =>
    (
      await post('/v1/customers', {
        kind: 'fleetOperator',
        contact: { name },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      })
    ).id;

  const recordPartAndDials = async (): Promise<void> => {
    const part = await post('/v1/fitted-parts', {
      vehicleId: named['van'],
      componentType: 'throttle-housing',
      position: 'intake',
      condition: 'original',
      fittedAt: null,
      fittedKm: null,
      removedAt: null,
      removedKm: null,
      serial: null,
      batch: null,
      supplier: null,
      partNumber: null,
      removalReason: null,
    });
    named['part'] = part.id;
    const calibrate = (instrumentId: string, calibratedOn: string, dueOn: string) =>
      post(`/v1/instruments/${instrumentId}/calibrations`, {
        calibratedOn,
        dueOn,
        passed: true,
        certificate: null,
        note: null,
      });
    await calibrate(story.dialId, '2026-01-10', '2027-01-10');
    await calibrate(story.bladesId, '2025-01-10', '2026-01-10');
  };

  const measure = async (): Promise<void> => {
    named['inspection'] = await story.inspect(named['van']!, named['job']!, '2026-03-02T09:00:00Z');
    await story.read(named['inspection'], [
      ...freeLinkage('2026-03-02T09:10:00Z'),
      {
        checkId: 'shaft-radial-play-lower',
        result: millimetres('0.25'),
        takenAt: '2026-03-02T09:20:00Z',
        instrumentId: story.dialId,
      },
      {
        checkId: 'idle-switch-closing-point',
        result: pair('0.06', '0.08'),
        takenAt: '2026-03-02T09:25:00Z',
        instrumentId: story.bladesId,
      },
      { checkId: 'shaft-moves-switch', result: yes, takenAt: '2026-03-02T09:30:00Z' },
    ]);
    const readings = await api.call('GET', `/v1/readings?inspectionId=${named['inspection']}`, {
      as: story.desk,
    });
    named['reading'] = readings.body.items.find(
      ({ checkId }: { checkId: string }) => checkId === 'shaft-radial-play-lower',
    ).id;
  };

  const decideAndAgree = async (): Promise<void> => {
    await story.offer({ condition: 'remanufactured', price: eur('310.00') });
    const assessment = await must(story.assess(named['van']!, named['job']!));
    named['assessment'] = assessment.id;
    await post(
      `/v1/assessments/${assessment.id}/decisions`,
      {
        chosen: 'fitRemanufactured',
        decidedAt: '2026-03-02T10:00:00Z',
        decidedBy: story.desk.id,
        choiceReason: 'the shaft works the switch',
      },
      story.desk,
    );
    const clean = {
      action: 'clean',
      componentType: 'throttle-housing',
      position: 'intake',
      state: 'planned',
      technicianId: story.technician.id,
      doneAt: null,
      minutes: 40,
      description: 'clean the housing',
      from: null,
      to: null,
      protectedPurpose: null,
      protectedReason: null,
      part: {
        condition: 'new',
        supplier: 'Birchmoor Castings',
        partNumber: null,
        serial: null,
        batch: 'B7',
        price: eur('4.20'),
      },
    };
    const line = await post(`/v1/jobs/${named['job']}/work-lines`, clean, story.technician);
    const estimate = await post(`/v1/jobs/${named['job']}/estimates`, {
      lines: [
        {
          workLineId: line.id,
          description: 'clean',
          partsAmount: '4.20',
          labourHours: '0.5',
          partCondition: null,
        },
      ],
      ceilingAmount: null,
    });
    await post(`/v1/jobs/${named['job']}/consents`, {
      estimateId: estimate.id,
      answer: 'given',
      answeredAt: '2026-03-02T10:30:00Z',
      way: 'byTelephone',
      declinedWork: 'the new housing',
      name: 'Ottoline Farrow',
    });
    const done = { ...clean, state: 'done', doneAt: '2026-03-02T10:40:00Z', reason: 'done' };
    await post(`/v1/work-lines/${line.id}/corrections`, done, story.technician, '"1"');
  };

  const proveAndRelease = async (): Promise<void> => {
    await post(`/v1/jobs/${named['job']}/events`, {
      kind: 'workFinished',
      happenedAt: '2026-03-02T10:50:00Z',
      note: null,
    });
    const { body } = await api.call('GET', `/v1/jobs/${named['job']}/proof`, { as: story.desk });
    for (const point of body.wanted as string[]) {
      await post(
        `/v1/jobs/${named['job']}/proof-points`,
        {
          point,
          outcome: 'passed',
          testedAt: '2026-03-02T11:00:00Z',
          testedBy: story.technician.id,
          notTestedBecause: null,
          recheckOn: null,
          note: null,
        },
        story.technician,
      );
    }
    await post(
      `/v1/jobs/${named['job']}/releases`,
      {
        releasedAt: '2026-03-02T11:30:00Z',
        releasedBy: story.technician.id,
        statement: 'Proved on the road.',
      },
      story.technician,
    );
  };

  beforeAll(async () => {
    clock = new StandingClock('2026-03-02T12:00:00.000Z');
    api = await startTestApi({ clock });
    story = await openStoryShop(api);
    auditor = await story.shop.user(['auditor']);
    users = { desk: story.desk, technician: story.technician, owner: story.shop.owner };
    named['van'] = await story.newVan();
    await recordPartAndDials();
    await post(`/v1/vehicles/${named['van']}/odometer-entries`, {
      shown: '184200',
      unit: 'km',
      readAt: '2026-03-02T08:05:00Z',
    });
    const { jobId: job, complaint } = await story.newJob(named['van'], '2026-03-02T08:00:00Z');
    named['job'] = job;
    named['complaint'] = complaint.body.id;
    await measure();
    await decideAndAgree();
    await proveAndRelease();
    afterVisit = clock.now();

    clock.moveTo('2026-04-02T09:00:00Z');
    const reading = await api.call('GET', `/v1/readings/${named['reading']}`, { as: story.desk });
    const { checkId, phase, position, place, instrumentId, measuredBy, takenAt, conditions, note } =
      reading.body;
    await post(
      `/v1/readings/${named['reading']}/corrections`,
      {
        checkId,
        phase,
        position,
        place,
        instrumentId,
        measuredBy,
        takenAt,
        conditions,
        note,
        result: millimetres('0.05'),
        valueConfirmed: true,
        reason: 'the dial was read in the wrong place',
      },
      story.technician,
      '"1"',
    );
    named['fleet'] = await customer('Brindle Parcels');
    users['manager'] = await story.shop.user(['fleetManager'], named['fleet']);
    users['earlier'] = await story.shop.user(['fleetManager'], story.customerId);
    await post(`/v1/vehicles/${named['van']}/ownerships`, {
      customerId: named['fleet'],
      fromAt: clock.now(),
    });
    clock.moveTo('2026-04-20T09:00:00Z');
    await story.newJob(named['van'], '2026-04-20T08:00:00Z');
  });
  afterAll(() => api.close());

  it('tells everything in one answer, in the order in which it happened, and says who recorded it when', async () => {
    const told = await ask();
    expect(told.status).toBe(200);
    expect(told.body).toMatchObject({
      vehicleId: named['van'],
      asOf: clock.now(),
      vehicle: { record: { label: 'Van 14', version: 1 }, otherRevisions: [] },
      cut: [],
      areRevisionsCut: false,
    });
    const entries = told.body.entries as Entry[];
    const moments = entries.map(({ happenedAt }) => happenedAt ?? '');
    expect(moments).toEqual([...moments].sort());
    expect(new Set(entries.map(({ kind }) => kind))).toEqual(
      new Set([
        'fittedPart',
        'ownership',
        'complaint',
        'comeback',
        'job',
        'odometerSegment',
        'odometerEntry',
        'inspection',
        'reading',
        'verdict',
        'assessment',
        'decision',
        'consent',
        'jobEvent',
        'proofPoint',
        'release',
        'estimate',
        'workLine',
      ]),
    );
    for (const { record, otherRevisions } of entries) {
      expect(Object.keys(record)).toEqual(expect.arrayContaining(['recordedAt', 'recordedBy', 'version']));
      expect(otherRevisions).toEqual([]);
    }
    const names = new Set(told.body.people.map(({ userId }: { userId: string }) => userId));
    for (const { record } of entries) expect(names).toContain(record.recordedBy);
  });

  it('says who measured what, with which instrument, in calibration or not on that day, under which edition of the limit', async () => {
    const told = await ask(`?asOf=${afterVisit}`);
    const readings = of(told, 'reading').map(({ record }) => record);
    const dial = readings.find(({ checkId }) => checkId === 'shaft-radial-play-lower');
    expect(dial).toMatchObject({
      measuredBy: story.technician.id,
      takenAt: '2026-03-02T09:20:00.000Z',
      result: { kind: 'number', shown: '0.25', unit: 'mm' },
      instrument: { id: story.dialId, name: 'dial 3', standing: { kind: 'inCalibration', daysLeft: 314 } },
    });
    const blades = readings.find(({ checkId }) => checkId === 'idle-switch-closing-point');
    expect(blades.instrument.standing).toEqual({ kind: 'overdue', dueOn: '2026-01-10', daysLeft: -51 });
    const verdicts = of(told, 'verdict');
    const ofDial = verdicts.find(({ record }) => record.limit.id === wear)!;
    expect(ofDial).toMatchObject({
      jobId: named['job'],
      happenedAt: '2026-03-02T09:20:00.000Z',
      record: { outcome: 'outside', overdueInstrumentIds: [], limit: { origin: expect.any(String) } },
    });
    const ofBlades = verdicts.find(({ record }) => record.checkId === 'idle-switch-closing-point')!;
    expect(ofBlades.record.overdueInstrumentIds).toEqual([story.bladesId]);
  });

  it('JOB rule 1: tells what was known on a day, and every later correction beside it when asked', async () => {
    const then = await ask(`?asOf=${afterVisit}`);
    const reading = (told: Reply): Entry =>
      of(told, 'reading').find(({ record }) => record.id === named['reading'])!;
    expect(reading(then).record).toMatchObject({ result: { shown: '0.25' }, version: 1 });
    expect(of(then, 'complaint')).toHaveLength(1);
    expect(of(then, 'ownership')).toHaveLength(1);
    expect(only(then, 'job').record).toMatchObject({ state: 'released', version: 1 });

    const both = await ask(`?asOf=${afterVisit}&corrections=all`);
    expect(reading(both).record.version).toBe(1);
    expect(reading(both).otherRevisions).toMatchObject([
      {
        version: 2,
        result: { shown: '0.05' },
        reason: 'the dial was read in the wrong place',
        recordedBy: story.technician.id,
        recordedAt: '2026-04-02T09:00:00.000Z',
        replacedAt: null,
      },
    ]);
    const verdict = of(both, 'verdict').find(({ record }) => record.limit.id === wear)!;
    expect(verdict.record.outcome).toBe('outside');
    expect(verdict.otherRevisions.at(-1)).toMatchObject({ outcome: 'inside' });

    const now = await ask('?corrections=all');
    expect(reading(now).record.version).toBe(2);
    expect(reading(now).otherRevisions).toMatchObject([{ version: 1, result: { shown: '0.25' } }]);
    const before = await ask('?asOf=2026-03-01T00:00:00Z');
    expect(before.status).toBe(404);
  });

  it('says what was recommended, what was chosen and why, and what the customer agreed to', async () => {
    const told = await ask(`?asOf=${afterVisit}`);
    const { record } = only(told, 'assessment');
    expect(record).toMatchObject({
      id: named['assessment'],
      componentType: 'throttle-housing',
      recommendation: { kind: expect.any(String), detail: expect.any(String) },
    });
    expect(record.reasons.length).toBeGreaterThan(0);
    expect(only(told, 'decision').record).toMatchObject({
      chosen: 'fitRemanufactured',
      choiceReason: 'the shaft works the switch',
    });
    expect(only(told, 'consent').record).toMatchObject({ answer: 'given', declinedWork: 'the new housing' });
    expect(only(told, 'estimate').record.totalAmount).toBe('44.20');
    expect(only(told, 'workLine').record.part.price).toEqual(eur('4.20'));
    expect(only(told, 'complaint').record.words).toBe('the revs go up when I put the air on');
    expect(only(told, 'release').record.releasedBy).toBe(story.technician.id);
  });

  it("JOB rule 16: a fleet manager is told of their own van without the shop's money and without an earlier owner's words", async () => {
    const told = await ask('?corrections=all', users['manager']);
    expect(told.status).toBe(200);
    expect(told.body.people).toEqual([]);
    expect(of(told, 'estimate')).toEqual([]);
    expect(of(told, 'consent')).toEqual([]);
    expect(of(told, 'ownership').map(({ record }) => record.customerId)).toEqual([named['fleet']]);
    expect(only(told, 'workLine').record.part).toMatchObject({ supplier: 'Birchmoor Castings', price: null });
    expect(only(told, 'assessment').record.reasons).toBeNull();
    const complaints = of(told, 'complaint');
    expect(complaints.map(({ record }) => record.words)).toEqual([
      null,
      'the revs go up when I put the air on',
    ]);
    expect(complaints[0]!.otherRevisions.map(({ words }) => words)).toEqual([null]);
    expect(of(told, 'reading').length).toBeGreaterThan(0);
    expect(JSON.stringify(told.body)).not.toMatch(/EUR|44\.20|Ottoline|the new housing/);
    const earlier = await ask('', users['earlier']);
    const unknown = await api.call('GET', `/v1/vehicles/${api.ids.next()}/history`, { as: users['earlier'] });
    expect([earlier.status, earlier.body.detail]).toEqual([404, unknown.body.detail]);
  });

  it('JOB rule 1: words that were erased are gone from the history of any moment', async () => {
    await post(`/v1/customers/${story.customerId}/erasures`, { reason: 'the wish of the person' });
    const then = await ask(`?asOf=${afterVisit}&corrections=all`);
    expect(only(then, 'complaint')).toMatchObject({
      record: { words: null },
      otherRevisions: [{ words: null }],
    });
  });

  it('says so where more was recorded than is told, and keeps the latest', async () => {
    const busy = await story.newVan();
    const start = Date.parse('2024-01-01T00:00:00Z');
    await api.work.run(story.shop.id, (tx) =>
      tx.odometerEntries.addMany(
        Array.from({ length: 501 }, (_, day) => ({
          id: api.ids.next(),
          identity: { vehicleId: busy },
          content: {
            shown: String(1000 + day),
            unit: 'km' as const,
            readAt: new Date(start + day * 86_400_000).toISOString(),
            distanceKm: String(1000 + day),
            reliable: true,
            readBy: null,
            operatingHours: null,
            warnings: [],
            note: null,
          },
        })),
        { at: clock.now(), by: story.desk.id },
      ),
    );
    const told = await api.call('GET', `/v1/vehicles/${busy}/history`, { as: auditor });
    expect(told.body.cut).toEqual([{ kind: 'odometerEntry', kept: 500 }]);
    const entries = of(told, 'odometerEntry');
    expect([entries.length, entries[0]!.record.shown, entries.at(-1)!.record.shown]).toEqual([
      500,
      '1001',
      '1500',
    ]);
  });

  it('as a file has a line for each revision that the answer tells, also as of an earlier day, and names who recorded it', async () => {
    const file = async (query: string): Promise<string[]> => {
      const url = `/v1/vehicles/${named['van']}/history${query}`;
      const { status, body } = await api.call('GET', url, { as: auditor, headers: { accept: 'text/csv' } });
      expect(status).toBe(200);
      return (body as string).trimEnd().split('\r\n');
    };
    for (const query of ['', '?corrections=all', `?asOf=${afterVisit}`]) {
      const { body } = await ask(query);
      const told = body.entries as Entry[];
      const others = told.flatMap(({ otherRevisions }) => otherRevisions).length;
      const ofVehicle = (body.vehicle.otherRevisions as unknown[]).length;
      const revisions = 1 + ofVehicle + told.length + others;
      const [names, ...lines] = await file(query);
      expect(names).toBe(
        'kind,happenedAt,isAsKnown,recordId,version,recordedAt,recordedBy,recordedByName,reason,replacedAt,jobId,content',
      );
      expect([query, lines.length]).toEqual([query, revisions]);
      expect(lines[0]).toMatch(/^vehicle,,true,/);
      expect(lines.filter((line) => line.includes('Odile Marrow')).length).toBeGreaterThan(0);
    }
  });

  it.each([
    ['owner', 200],
    ['desk', 200],
    ['technician', 200],
    ['manager', 200],
    ['parts', 403],
    ['developer', 403],
  ] as const)('API row 7: %s is answered with %i', async (role, status) => {
    const as = users[role] ?? (await story.shop.user([role as 'parts']));
    expect((await ask('', as)).status).toBe(status);
  });

  it('API row 1: another shop is told nothing, not even that the van exists', async () => {
    const other = await api.openShop();
    expect((await ask('', other.owner)).status).toBe(404);
  });
});
