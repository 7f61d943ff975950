import { EndfloatClient, ProblemError, type Fetch, type Operations, type Schemas } from '@endfloat/client';
import { StandingClock, startTestApi, type TestApi, type TestUser } from '../support/api.js';
import { checkAnswer, documentOf } from '../support/document-checker.js';

type Reading = Operations['createReadingSet']['body']['readings'][number];
type Line = Operations['createWorkLine']['body'];

/**
 * One van from the complaint to the proof, and back after six weeks, by the typed client alone: over a socket, with a
 * key of the shop, knowing nothing but the document. Each answer is checked against the document on its way.
 */
describe('the story of van 14, by the client', () => {
  let api: TestApi;
  let clock: StandingClock;
  let clientOf: (user: TestUser) => EndfloatClient;
  let owner: EndfloatClient;
  let desk: EndfloatClient;
  let technician: EndfloatClient;
  let technicianId: string;
  let deskId: string;
  let sent = 0;
  let losesNextAnswer = false;
  const ids: Record<string, string> = {};
  const idOf = (name: string): string => ids[name] ?? `nothing is called ${name}`;
  const later = (minutes = 5): string => {
    clock.moveOn(minutes * 60_000);
    return clock.now();
  };
  const eur = (amount: string) => ({ amount, currency: 'EUR' });
  const mm = (value: string) => ({ value, unit: 'mm' as const });
  const refusalOf = async (work: Promise<unknown>): Promise<ProblemError> => {
    const error: unknown = await work.then(
      () => undefined,
      (reason: unknown) => reason,
    );
    if (error instanceof ProblemError) return error;
    throw new Error(`no problem was thrown: ${String(error)}`);
  };

  const reading = (
    checkId: string,
    result: Reading['result'],
    phase: Reading['phase'],
    instrument: string,
  ): Reading => ({
    checkId,
    phase,
    position: null,
    place: null,
    result,
    instrumentId: idOf(instrument),
    measuredBy: technicianId,
    takenAt: later(1),
    conditions: {},
    note: null,
  });
  const yes = (checkId: string, answer = true, phase: Reading['phase'] = 'asFound'): Reading =>
    reading(checkId, { kind: 'yesNo', answer }, phase, 'dial');
  const play = (shown: string, checkId = 'shaft-radial-play-lower'): Reading =>
    reading(checkId, { kind: 'number', shown, unit: 'mm' }, 'asFound', 'dial');
  const record = async (inspection: string, readings: readonly Reading[]) =>
    (
      await technician.call('createReadingSet', {
        path: { inspectionId: idOf(inspection) },
        body: { readings },
      })
    ).data;
  const outcomesOf = async (inspection: string, checkId: string): Promise<readonly string[]> => {
    const { data } = await technician.call('showInspectionChecks', {
      path: { inspectionId: idOf(inspection) },
    });
    const check = data.checks.find((each) => each.checkId === checkId);
    return (check?.phases ?? []).flatMap(({ verdicts }) => verdicts.map(({ outcome }) => outcome));
  };

  const complain = async (words: string, distanceKm: string): Promise<Schemas.ComplaintResponse> =>
    (
      await desk.call('createComplaint', {
        body: {
          vehicleId: idOf('van'),
          jobId: null,
          receivedAt: later(),
          words,
          symptoms: { 'idle-rises-with-ac': 'present', 'bucks-at-light-throttle': 'present' },
          conditions: { engineState: 'hot' },
          troubleCodes: [],
          reproduced: true,
          stopScrewMovedByOthers: null,
          reportedByDriver: false,
          components: [],
          beganAfterRepair: false,
          distanceKm,
        },
      })
    ).data;
  const open = async (job: string, inspection: string, complaintId: string, shown: string): Promise<void> => {
    const openedAt = later();
    const made = await desk.call('createJob', {
      body: {
        vehicleId: idOf('van'),
        complaintIds: [complaintId],
        odometer: { shown, unit: 'km', readAt: openedAt },
        openedAt,
        assignedTo: technicianId,
        diagnosedBy: technicianId,
        causeId: null,
        note: null,
      },
    });
    ids[job] = made.data.id;
    const begun = await technician.call('createInspection', {
      body: {
        vehicleId: idOf('van'),
        jobId: idOf(job),
        checkSheetId: idOf('sheet'),
        startedAt: later(),
        technicianId,
        asFoundNotTaken: [],
        notDone: [],
        note: null,
      },
    });
    ids[inspection] = begun.data.id;
  };
  const blank: Omit<Line, 'action' | 'minutes'> = {
    componentType: 'throttle-housing',
    position: 'intake',
    state: 'planned',
    technicianId: null,
    doneAt: null,
    description: null,
    from: null,
    to: null,
    protectedPurpose: null,
    protectedReason: null,
    part: null,
  };
  const workAndRelease = async (job: string, line: Line, partsAmount: string): Promise<void> => {
    const path = { jobId: idOf(job) };
    const planned = await technician.call('createWorkLine', { path, body: line });
    const estimate = await desk.call('createEstimate', {
      path,
      body: {
        ceilingAmount: null,
        lines: [
          {
            workLineId: planned.data.id,
            description: 'as spoken about',
            partsAmount,
            labourHours: '1.80',
            partCondition: line.part?.condition ?? null,
          },
        ],
      },
    });
    await desk.call('createConsent', {
      path,
      body: {
        estimateId: estimate.data.id,
        answer: 'given',
        answeredAt: later(20),
        way: 'byTelephone',
        declinedWork: null,
        name: 'Agathe Brindle',
      },
    });
    await technician.call('correctWorkLine', {
      path: { workLineId: planned.data.id },
      ifMatch: planned.etag ?? '',
      body: { ...line, state: 'done', technicianId, doneAt: later(108), reason: 'done' },
    });
    const proof = await technician.call('getProof', { path });
    for (const point of proof.data.wanted)
      await technician.call('createProofPoint', {
        path,
        body: {
          point,
          outcome: 'passed',
          testedAt: later(3),
          testedBy: technicianId,
          notTestedBecause: null,
          recheckOn: null,
          note: null,
        },
      });
    await technician.call('createRelease', {
      path,
      body: {
        releasedAt: later(),
        releasedBy: technicianId,
        statement: 'Visual check and road test passed.',
      },
    });
  };

  beforeAll(async () => {
    clock = new StandingClock('2026-03-02T08:00:00Z');
    api = await startTestApi({ clock });
    const shop = await api.openShop({ name: 'Quillmarsh Van Works' });
    const checker = await documentOf(api.app);
    await api.app.listen(0, '127.0.0.1');
    const baseUrl = await api.app.getUrl();
    const checkedFetch: Fetch = async (url, request) => {
      sent += 1;
      const answer = await fetch(url, request);
      const text = await answer.text();
      const type = answer.headers.get('content-type') ?? '';
      const body: unknown = type.includes('json') && text !== '' ? JSON.parse(text) : text;
      checkAnswer(checker, {
        method: request.method,
        url: url.slice(baseUrl.length),
        status: answer.status,
        type,
        body,
      });
      if (losesNextAnswer) {
        losesNextAnswer = false;
        throw new TypeError('the connection was lost after the request was done');
      }
      return { status: answer.status, headers: answer.headers, text: () => Promise.resolve(text) };
    };
    clientOf = ({ authorization }) =>
      new EndfloatClient({
        baseUrl,
        apiKey: authorization.replace('Bearer ', ''),
        fetch: checkedFetch,
        wait: () => Promise.resolve(),
      });
    const [deskUser, technicianUser] = [await shop.user(['desk']), await shop.user(['technician'])];
    [deskId, technicianId] = [deskUser.id, technicianUser.id];
    [owner, desk, technician] = [clientOf(shop.owner), clientOf(deskUser), clientOf(technicianUser)];

    const dial = await owner.call('createInstrument', {
      body: {
        kind: 'dialIndicator',
        name: 'dial',
        serial: null,
        errorModel: { kind: 'maximumPermissibleError', limit: mm('0.015') },
        resolution: mm('0.01'),
        retiredOn: null,
      },
    });
    ids['dial'] = dial.data.id;
    await owner.call('createCalibration', {
      path: { instrumentId: dial.data.id },
      body: { calibratedOn: '2026-02-02', dueOn: '2027-02-02', passed: true, certificate: null, note: null },
    });
    await owner.call('createOffer', {
      body: {
        componentType: 'throttle-housing',
        partNumber: null,
        validUntil: null,
        condition: 'remanufactured',
        supplier: 'Rill & Daughters',
        price: eur('310.00'),
        coreDeposit: eur('80.00'),
        promisedLeadDays: 2,
        warrantyMonths: 12,
      },
    });
    const sheets = await desk.call('listCheckSheets', { query: { code: 'throttle-housing' } });
    ids['sheet'] = sheets.data.items[0]?.id ?? '';
    const customer = await desk.call('createCustomer', {
      body: {
        kind: 'fleetOperator',
        contact: { name: 'Brindle Parcels' },
        downtimeCostPerDay: '60.00',
        planningDistanceKm: null,
      },
    });
    ids['customer'] = customer.data.id;
  });
  afterAll(() => api.close());

  const described = (number: number): Omit<Operations['createVehicle']['body'], 'customerId' | 'id'> => ({
    chassisNumber: `ZZZTEST7XZA0000${String(number)}`,
    plate: `QX ${String(number)} LTN`,
    label: `Van ${String(number)}`,
    firstUsedOn: '1991-04-02',
    application: 'panel-van-petrol',
    attributes: {},
    expectedKmPerYear: '22000',
    observedSpans: [],
    retiredOn: null,
  });
  const van = (number: number): Operations['createVehicle']['body'] => ({
    ...described(number),
    customerId: idOf('customer'),
  });

  it('records the van once, though the first answer is lost', async () => {
    losesNextAnswer = true;
    const before = sent;
    const made = await desk.call('createVehicle', { body: van(14) });
    expect(sent - before).toBe(2);
    expect(made.isReplayed).toBe(true);
    ids['van'] = made.data.id;
    const all = await desk.call('listVehicles');
    expect(all.data.items.map(({ id }) => id)).toEqual([made.data.id]);
  });

  it('goes through a list page by page', async () => {
    for (const number of [15, 16, 17, 18]) await desk.call('createVehicle', { body: van(number) });
    const labels: string[] = [];
    const before = sent;
    for await (const { label } of desk.items('listVehicles', { query: { pageSize: '2' } }))
      labels.push(String(label));
    expect(labels).toEqual(['Van 18', 'Van 17', 'Van 16', 'Van 15', 'Van 14']);
    expect(sent - before).toBe(3);
  });

  it('reads again only what has changed', async () => {
    const path = { vehicleId: idOf('van') };
    const { etag } = await desk.call('showVehicle', { path });
    expect(await desk.callIfChanged('showVehicle', etag ?? '', { path })).toBeUndefined();
    await desk.call('correctVehicle', {
      path,
      ifMatch: etag ?? '',
      body: { ...described(14), label: 'Van 14, white', reason: 'as its driver calls it' },
    });
    const changed = await desk.callIfChanged('showVehicle', etag ?? '', { path });
    expect(changed?.data.label).toBe('Van 14, white');
  });

  it('day 1: the complaint becomes a job and an inspection, and a mistyped reading is corrected by its tag', async () => {
    const taken = await complain('The revs go up when I put the air on, and it kicks in town.', '184200');
    expect(taken.comebacks).toEqual([]);
    await open('job1', 'inspection1', taken.id, '184200');
    const next = await technician.call('showNextCheck', { path: { inspectionId: idOf('inspection1') } });
    expect(next.data.step.kind).toBe('next');
    await record('inspection1', [yes('linkage-return'), yes('linkage-free-play')]);
    const typed = await record('inspection1', [play('0.51'), play('0.14'), play('0.15')]);
    const path = { readingId: typed.readings[0]?.id ?? '' };
    const { data, etag } = await technician.call('showReading', { path });
    const correction = {
      path,
      ifMatch: etag ?? '',
      body: {
        ...play('0.15'),
        takenAt: data.takenAt,
        valueConfirmed: false,
        reason: 'digits swapped: the dial showed 0.15',
      },
    };
    await technician.call('correctReading', correction);
    const tooLate = await refusalOf(technician.call('correctReading', correction));
    expect([tooLate.status, tooLate.type, tooLate.code]).toEqual([
      412,
      'version-mismatch',
      'record.changedMeanwhile',
    ]);
    expect(await outcomesOf('inspection1', 'shaft-radial-play-lower')).toContain('inside');
  });

  it('is told what is wrong and where', async () => {
    const refusal = await refusalOf(
      technician.call('createReadingSet', {
        path: { inspectionId: idOf('inspection1') },
        body: { readings: [{ ...play('0.15'), result: { kind: 'number', shown: '0.15', unit: 'kPa' } }] },
      }),
    );
    expect([refusal.status, refusal.type]).toEqual([422, 'unit-mismatch']);
    expect(refusal.faults[0]?.pointer).toMatch(/^\/readings\/0\/result/);
  });

  it('day 1: the stop is adjusted with a reason and consent, proved and released', async () => {
    await workAndRelease(
      'job1',
      {
        ...blank,
        action: 'adjustStop',
        minutes: 18,
        from: 'turned in',
        to: 'grips a strip of paper',
        protectedPurpose: 'movedByOthers',
        protectedReason: 'paint broken, vacuum at the purge port at idle',
      },
      '0.00',
    );
    const job = await desk.call('getJob', { path: { jobId: idOf('job1') } });
    expect(job.data.state).toBe('released');
  });

  it('week six: it comes back, the play is outside, and the advice can be replayed', async () => {
    clock.moveTo('2026-04-13T09:00:00Z');
    const taken = await complain('Same as before, it never quite went away.', '186950');
    const [proposed] = taken.comebacks;
    expect(proposed).toMatchObject({ jobId: idOf('job1'), state: 'proposed', insideWindow: true });
    await open('job2', 'inspection2', taken.id, '186950');
    const comeback = { comebackId: proposed?.id ?? '' };
    const { etag } = await desk.call('getComeback', { path: comeback });
    later();
    await desk.call('correctComeback', {
      path: comeback,
      ifMatch: etag ?? '',
      body: {
        state: 'confirmed',
        attribution: 'wrongRootCause',
        note: null,
        reason: 'the shaft had been left in',
      },
    });
    await record('inspection2', [yes('linkage-return'), yes('linkage-free-play')]);
    await record(
      'inspection2',
      ['0.27', '0.26', '0.27', '0.27', '0.27'].map((shown) => play(shown)),
    );
    expect(await outcomesOf('inspection2', 'shaft-radial-play-lower')).toContain('outside');
    const assessed = await desk.call('createAssessment', {
      body: {
        vehicleId: idOf('van'),
        jobId: idOf('job2'),
        componentType: 'throttle-housing',
        position: 'intake',
      },
    });
    const path = { assessmentId: assessed.data.id };
    await desk.call('createDecision', {
      path,
      body: {
        chosen: 'fitRemanufactured',
        decidedAt: later(),
        decidedBy: deskId,
        choiceReason: 'to be done with it',
      },
    });
    const replay = await desk.call('replayAssessment', { path });
    expect(replay.data.isEqual).toBe(true);
  });

  it('the exchange housing goes in, and the record as of week five does not know it', async () => {
    const part = {
      condition: 'remanufactured' as const,
      supplier: 'Rill & Daughters',
      partNumber: null,
      serial: 'RD-20417',
      batch: 'B3',
      price: eur('310.00'),
    };
    await workAndRelease('job2', { ...blank, action: 'replace', minutes: 108, part }, '310.00');
    const fitted = async (asOf?: string): Promise<readonly string[]> => {
      const query = { vehicleId: idOf('van'), ...(asOf === undefined ? {} : { asOf }) };
      const found: string[] = [];
      for await (const each of desk.items('listFittedParts', { query }))
        if (each.removedAt === null) found.push(each.condition);
      return found;
    };
    expect(await fitted()).toEqual(['remanufactured']);
    expect(await fitted('2026-04-06T09:00:00Z')).toEqual(['original']);
  });

  it('another shop is told that there is no such van', async () => {
    const stranger = await api.openShop({ name: 'Tarnbrook Garage' });
    const refusal = await refusalOf(
      clientOf(stranger.owner).call('showVehicle', { path: { vehicleId: idOf('van') } }),
    );
    expect([refusal.status, refusal.code]).toEqual([404, 'record.notFound']);
  });
});
