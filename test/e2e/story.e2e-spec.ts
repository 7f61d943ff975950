import {
  StandingClock,
  startTestApi,
  type Reply,
  type TestApi,
  type TestShop,
  type TestUser,
} from '../support/api.js';

/**
 * One van from the complaint to the proof, and back after six weeks. The same story is walked through in the README.
 * Everything happens under a clock of its own, so "as of week five" is a moment of the story.
 */
describe('the story of van 14', () => {
  let api: TestApi;
  let clock: StandingClock;
  let shop: TestShop;
  let [desk, technician, manager, otherManager]: TestUser[] = [];
  const ids: Record<string, string> = {};
  const at = (day: number, time = '09:00'): string =>
    new Date(Date.parse(`2026-03-02T${time}:00Z`) + day * 86_400_000).toISOString();
  const goTo = (day: number, time?: string): void => clock.moveTo(at(day, time));
  const later = (minutes = 5): string => {
    clock.moveOn(minutes * 60_000);
    return clock.now();
  };

  const post = async (url: string, body: object, as = desk, ifMatch?: string): Promise<Reply> => {
    const reply = await api.call('POST', url, { as, body, ifMatch });
    expect([url, reply.status, reply.status < 300 ? '' : reply.body]).toEqual([url, 201, '']);
    return reply;
  };
  const get = (url: string, as = desk): Promise<Reply> => api.call('GET', url, { as });

  type Entry = Readonly<Record<string, unknown>>;
  const reading = (checkId: string, result: Entry, phase: string, instrument: string | null): Entry => ({
    checkId,
    phase,
    position: null,
    place: null,
    result,
    instrumentId: instrument === null ? null : ids[instrument],
    measuredBy: technician!.id,
    takenAt: later(1),
    conditions: {},
    note: null,
  });
  const yes = (checkId: string, answer = true, phase = 'asFound'): Entry =>
    reading(checkId, { kind: 'yesNo', answer }, phase, 'meter');
  const play = (shown: string, checkId = 'shaft-radial-play-lower', phase = 'asFound'): Entry =>
    reading(checkId, { kind: 'number', shown, unit: 'mm' }, phase, 'dial');
  const vacuum = (shown: string, phase = 'asFound'): Entry =>
    reading('purge-port-vacuum-idle', { kind: 'number', shown, unit: 'kPa' }, phase, 'gauge');
  const blades = (largestClosed: string, smallestOpen: string, phase = 'asFound'): Entry =>
    reading(
      'idle-switch-closing-point',
      { kind: 'bladePair', largestClosed, smallestOpen, unit: 'mm' },
      phase,
      'blades',
    );

  const record = async (inspection: string, readings: readonly Entry[]): Promise<Reply> =>
    post(`/v1/inspections/${ids[inspection]}/reading-sets`, { readings }, technician);
  /** outcome of each limit of a check in a phase, as the inspection now says */
  const outcomes = async (
    inspection: string,
    checkId: string,
    phase = 'asFound',
  ): Promise<Record<string, string>> => {
    const { body } = await get(`/v1/inspections/${ids[inspection]}/checks`, technician);
    const check = body.checks.find((each: { checkId: string }) => each.checkId === checkId);
    const found = check.phases.find((each: { phase: string }) => each.phase === phase);
    return Object.fromEntries(
      found.verdicts.map((verdict: { limit: { id: string }; outcome: string }) => [
        verdict.limit.id,
        verdict.outcome,
      ]),
    );
  };

  const complaint = (words: string, distanceKm: string): Entry => ({
    vehicleId: ids['van'],
    jobId: null,
    receivedAt: later(),
    words,
    symptoms: {
      'idle-rises-with-ac': 'present',
      'bucks-at-light-throttle': 'present',
      'stalls-cold': 'absent',
    },
    conditions: { engineState: 'hot', airConditioning: 'on' },
    troubleCodes: [],
    reproduced: true,
    stopScrewMovedByOthers: null,
    reportedByDriver: false,
    components: [],
    beganAfterRepair: false,
    distanceKm,
  });
  const openJob = async (name: string, complaintId: string, shown: string): Promise<void> => {
    const openedAt = later();
    const reply = await post('/v1/jobs', {
      vehicleId: ids['van'],
      complaintIds: [complaintId],
      odometer: { shown, unit: 'km', readAt: openedAt },
      openedAt,
      assignedTo: technician!.id,
      diagnosedBy: technician!.id,
      causeId: null,
      note: null,
    });
    ids[name] = reply.body.id;
  };
  const inspect = async (name: string, job: string): Promise<void> => {
    const reply = await post(
      '/v1/inspections',
      {
        vehicleId: ids['van'],
        jobId: ids[job],
        checkSheetId: ids['sheet'],
        startedAt: later(),
        technicianId: technician!.id,
        asFoundNotTaken: [],
        notDone: [],
        note: null,
      },
      technician,
    );
    ids[name] = reply.body.id;
  };

  const blank = {
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
  /** Plans lines, prices them, gets consent on the telephone, and does them; `between` runs after the first. */
  const workWithConsent = async (
    job: string,
    lines: readonly (Entry & { minutes: number; partsAmount?: string })[],
    between: () => Promise<unknown> = () => Promise.resolve(),
  ): Promise<void> => {
    const planned: { id: string; line: Entry; minutes: number; partsAmount: string }[] = [];
    for (const { partsAmount = '0.00', ...given } of lines) {
      const line = { ...blank, ...given };
      const reply = await post(`/v1/jobs/${ids[job]}/work-lines`, line, technician);
      planned.push({ id: reply.body.id, line, minutes: given.minutes, partsAmount });
    }
    const estimate = await post(`/v1/jobs/${ids[job]}/estimates`, {
      ceilingAmount: null,
      lines: planned.map(({ id, line, minutes, partsAmount }) => ({
        workLineId: id,
        description: String(line['action']),
        partsAmount,
        labourHours: (minutes / 60).toFixed(2),
        partCondition: (line['part'] as { condition?: string } | null)?.condition ?? null,
      })),
    });
    await post(`/v1/jobs/${ids[job]}/consents`, {
      estimateId: estimate.body.id,
      answer: 'given',
      answeredAt: later(20),
      way: 'byTelephone',
      declinedWork: null,
      name: 'Agathe Brindle',
    });
    for (const { id, line, minutes } of planned) {
      const done = {
        ...line,
        state: 'done',
        technicianId: technician!.id,
        doneAt: later(minutes),
        reason: 'done',
      };
      await post(`/v1/work-lines/${id}/corrections`, done, technician, '"1"');
      if (id === planned[0]?.id) await between();
    }
  };
  const proveAndRelease = async (job: string): Promise<void> => {
    const { body } = await get(`/v1/jobs/${ids[job]}/proof`, technician);
    for (const point of body.wanted as string[]) {
      const proof = {
        point,
        outcome: 'passed',
        testedAt: later(3),
        testedBy: technician!.id,
        notTestedBecause: null,
        recheckOn: null,
        note: null,
      };
      await post(`/v1/jobs/${ids[job]}/proof-points`, proof, technician);
    }
    const release = {
      releasedAt: later(),
      releasedBy: technician!.id,
      statement: 'Linkage and pedal, visual check and road test passed.',
    };
    await post(`/v1/jobs/${ids[job]}/releases`, release, technician);
  };

  beforeAll(async () => {
    clock = new StandingClock(at(0, '08:00'));
    api = await startTestApi({ clock });
    shop = await api.openShop({ name: 'Quillmarsh Van Works' });
    [desk, technician] = [await shop.user(['desk']), await shop.user(['technician'])];
    const customer = async (name: string): Promise<string> => {
      const body = {
        kind: 'fleetOperator',
        contact: { name },
        downtimeCostPerDay: '60.00',
        planningDistanceKm: null,
      };
      return (await post('/v1/customers', body)).body.id;
    };
    const [fleet, otherFleet] = [await customer('Brindle Parcels'), await customer('Tamsin Vale Bakeries')];
    manager = await shop.user(['fleetManager'], fleet);
    otherManager = await shop.user(['fleetManager'], otherFleet);
    const instrument = async (
      name: string,
      kind: string,
      errorModel: Entry,
      resolution: Entry | null,
    ): Promise<void> => {
      const made = await post(
        '/v1/instruments',
        { kind, name, serial: null, errorModel, resolution, retiredOn: null },
        shop.owner,
      );
      ids[name] = made.body.id;
      const calibration = {
        calibratedOn: '2026-02-02',
        dueOn: '2027-02-02',
        passed: true,
        certificate: null,
        note: null,
      };
      await post(`/v1/instruments/${made.body.id}/calibrations`, calibration, shop.owner);
    };
    const mm = (value: string) => ({ value, unit: 'mm' });
    await instrument(
      'dial',
      'dialIndicator',
      { kind: 'maximumPermissibleError', limit: mm('0.015') },
      mm('0.01'),
    );
    await instrument(
      'blades',
      'feelerBlades',
      {
        kind: 'bladeSet',
        blades: ['0.05', '0.06', '0.07', '0.08', '0.10', '0.15'].map(mm),
        permissibleError: mm('0.005'),
      },
      null,
    );
    await instrument(
      'gauge',
      'lowRangeVacuumGauge',
      { kind: 'accuracyClassOfSpan', accuracyClass: '2.5', span: { value: '10', unit: 'kPa' } },
      { value: '0.2', unit: 'kPa' },
    );
    await instrument(
      'meter',
      'ohmmeter',
      { kind: 'percentOfReadingPlusDigits', percent: '0.5', digits: 3, digit: { value: '0.1', unit: 'Ohm' } },
      { value: '0.1', unit: 'Ohm' },
    );
    // Re-bushing is not to be had for weeks, the exchange housing is: that is why the exchange wins here.
    const offer = {
      componentType: 'throttle-housing',
      partNumber: null,
      validUntil: null,
      coreDeposit: null,
    };
    const money = (amount: string) => ({ amount, currency: 'EUR' });
    await post(
      '/v1/offers',
      {
        ...offer,
        condition: 'remanufactured',
        supplier: 'Rill & Daughters',
        price: money('310.00'),
        coreDeposit: money('80.00'),
        promisedLeadDays: 2,
        warrantyMonths: 12,
      },
      shop.owner,
    );
    await post(
      '/v1/offers',
      {
        ...offer,
        condition: 'repairedOwnPart',
        supplier: 'Mallow Street Machinists',
        price: money('35.00'),
        promisedLeadDays: 28,
        warrantyMonths: 6,
      },
      shop.owner,
    );
    const sheets = await get('/v1/check-sheets?code=throttle-housing');
    ids['sheet'] = sheets.body.items[0].id;
    const van = await post('/v1/vehicles', {
      customerId: fleet,
      chassisNumber: 'ZZZTEST7XZA000014',
      plate: 'QX 14 LTN',
      label: 'Van 14',
      firstUsedOn: '1991-04-02',
      application: 'panel-van-petrol',
      attributes: {},
      expectedKmPerYear: '22000',
      observedSpans: [],
      retiredOn: null,
    });
    ids['van'] = van.body.id;
  });
  afterAll(() => api.close());

  it('day 1: inspected inside its limits but for stop and switch; the first check asked for is the safe opening move', async () => {
    const taken = await post(
      '/v1/complaints',
      complaint('The revs go up when I put the air on, and it kicks in town.', '184200'),
    );
    expect(taken.body.comebacks).toEqual([]);
    await openJob('job1', taken.body.id, '184200');
    await inspect('inspection1', 'job1');
    const next = await get(`/v1/inspections/${ids['inspection1']}/next-check`, technician);
    expect(next.body.step).toMatchObject({
      kind: 'next',
      check: { id: 'verify-complaint' },
      why: { code: 'openingMove' },
    });
    expect(next.body.step.check.cautions.length).toBeGreaterThan(0);
    expect(next.body.precedence).toMatch(
      /maker's instructions, local rules and licensed practice come first/,
    );

    await record('inspection1', [
      yes('linkage-return'),
      yes('linkage-free-play'),
      yes('shaft-moves-switch', false),
    ]);
    const typed = await record('inspection1', [
      play('0.51'),
      play('0.14'),
      play('0.15'),
      play('0.09', 'shaft-radial-play-upper'),
    ]);
    ids['mistyped'] = typed.body.readings[0].id;
  });

  it('JOB rule 1: a mistyped reading is corrected with the reason, and both stay visible', async () => {
    const before = await get(`/v1/readings/${ids['mistyped']}`, technician);
    const correction = {
      ...play('0.15'),
      takenAt: before.body.takenAt,
      valueConfirmed: false,
      reason: 'digits swapped: the dial showed 0.15',
    };
    await post(
      `/v1/readings/${ids['mistyped']}/corrections`,
      correction,
      technician,
      before.headers['etag'] as string,
    );
    const both = await get(`/v1/readings/${ids['mistyped']}/revisions`, technician);
    expect(
      both.body.items.map((each: { result: { shown: string }; reason: string | null }) => [
        each.result.shown,
        each.reason,
      ]),
    ).toEqual([
      ['0.51', null],
      ['0.15', 'digits swapped: the dial showed 0.15'],
    ]);
    expect(await outcomes('inspection1', 'shaft-radial-play-lower')).toMatchObject({
      'shaft-radial-play-lower-wear': 'inside',
    });
  });

  it('day 1: stop and switch are outside, are adjusted with a reason and consent, proved and released', async () => {
    await record('inspection1', [vacuum('5.2'), yes('stop-screw-paper', false), blades('0.10', '0.15')]);
    expect(Object.values(await outcomes('inspection1', 'purge-port-vacuum-idle'))).toEqual(['outside']);
    // JOB rule 5: the switch is not judged while the port vacuum has failed; the reading is kept.
    expect(Object.values(await outcomes('inspection1', 'idle-switch-closing-point'))).toEqual(['notJudged']);
    const afterStop = async (): Promise<void> => {
      await record('inspection1', [
        vacuum('0.4', 'asLeft'),
        yes('stop-screw-paper', true, 'asLeft'),
        blades('0.10', '0.15', 'asLeft'),
      ]);
      expect(Object.values(await outcomes('inspection1', 'purge-port-vacuum-idle', 'asLeft'))).toEqual([
        'inside',
      ]);
      expect(Object.values(await outcomes('inspection1', 'idle-switch-closing-point', 'asLeft'))).toEqual([
        'outside',
      ]);
    };
    await workWithConsent(
      'job1',
      [
        {
          action: 'adjustStop',
          minutes: 18,
          from: 'turned in',
          to: 'grips a strip of paper',
          protectedPurpose: 'movedByOthers',
          protectedReason: 'paint broken, vacuum at the purge port at idle',
        },
        {
          action: 'adjustSwitch',
          minutes: 20,
          from: 'closes beyond the 0.10 mm blade',
          to: 'closed on the 0.07 mm blade',
        },
      ],
      afterStop,
    );
    await record('inspection1', [blades('0.06', '0.08', 'asLeft')]);
    expect(Object.values(await outcomes('inspection1', 'idle-switch-closing-point', 'asLeft'))).toEqual([
      'inside',
    ]);
    await proveAndRelease('job1');
    const job = await get(`/v1/jobs/${ids['job1']}`);
    expect(job.body.state).toBe('released');
  });

  it('week six: the same complaint again is proposed as a comeback, with the reasons, and a person confirms it', async () => {
    goTo(42);
    const taken = await post(
      '/v1/complaints',
      complaint('Same as before, it never quite went away.', '186950'),
    );
    ids['complaint2'] = taken.body.id;
    await openJob('job2', taken.body.id, '186950');
    const [proposed] = taken.body.comebacks;
    expect(proposed).toMatchObject({
      jobId: ids['job1'],
      state: 'proposed',
      insideWindow: true,
      daysSinceRelease: 41,
    });
    expect(proposed.reasons.map((reason: { code: string }) => reason.code)).toEqual([
      'sameSymptoms',
      'insideWindow',
    ]);
    expect(proposed.reasons[1].detail).toBe(
      '41 of 90 days since the release, 2750 of 5000 km: inside the watch window.',
    );
    later();
    await post(
      `/v1/comebacks/${proposed.id}/corrections`,
      { state: 'confirmed', attribution: 'wrongRootCause', note: null, reason: 'the shaft had been left in' },
      desk,
      '"1"',
    );
    ids['comeback'] = proposed.id;
  });

  it('JOB rules 6 and 9: the play is undecided against the wear limit, two more readings make it outside, and moving the shaft works the correctly set switch', async () => {
    await inspect('inspection2', 'job2');
    await record('inspection2', [
      yes('linkage-return'),
      yes('linkage-free-play'),
      play('0.22'),
      play('0.21'),
      play('0.24'),
    ]);
    expect(await outcomes('inspection2', 'shaft-radial-play-lower')).toMatchObject({
      'shaft-radial-play-lower-wear': 'undecided',
    });
    const undecided = await get(
      `/v1/readings?inspectionId=${ids['inspection2']}&characteristic=shaft-radial-play-lower`,
      technician,
    );
    expect(undecided.body.items).toHaveLength(3);
    const more = await record('inspection2', [play('0.27'), play('0.27')]);
    expect(more.body.readings).toHaveLength(2);
    expect(await outcomes('inspection2', 'shaft-radial-play-lower')).toMatchObject({
      'shaft-radial-play-lower-wear': 'outside',
    });
    await record('inspection2', [blades('0.06', '0.08'), yes('shaft-moves-switch')]);
    expect(Object.values(await outcomes('inspection2', 'shaft-moves-switch'))).toEqual(['outside']);
  });

  it('the assessment recommends the exchange housing: re-bushing would take weeks, adjusting is off the offer', async () => {
    const assessed = await post('/v1/assessments', {
      vehicleId: ids['van'],
      jobId: ids['job2'],
      componentType: 'throttle-housing',
      position: 'intake',
    });
    ids['assessment'] = assessed.body.id;
    expect(assessed.body.recommendation).toMatchObject({ kind: 'recommended' });
    const option = (id: string) =>
      assessed.body.options.find((each: { optionId: string }) => each.optionId === id);
    const recommended = option(assessed.body.recommendation.optionId);
    expect(recommended.action).toBe('fitRemanufactured');
    expect(assessed.body.guards.map((guard: { code: string }) => guard.code)).toContain(
      'functionalCriterionPositive',
    );
    const decided = {
      chosen: 'fitRemanufactured',
      decidedAt: later(),
      decidedBy: desk!.id,
      choiceReason: null,
    };
    await post(`/v1/assessments/${ids['assessment']}/decisions`, decided);
    const replay = await api.call('POST', `/v1/assessments/${ids['assessment']}/replays`, { as: desk });
    expect(replay.body.isEqual).toBe(true);
  });

  it('JOB rule 4: the exchange housing goes in with consent; the old series of readings has ended and a new one begun', async () => {
    const part = {
      condition: 'remanufactured',
      supplier: 'Rill & Daughters',
      partNumber: null,
      serial: 'RD-20417',
      batch: 'B3',
      price: { amount: '310.00', currency: 'EUR' },
    };
    await workWithConsent('job2', [
      { action: 'replace', minutes: 108, part, partsAmount: '310.00' },
      { action: 'adjustSwitch', minutes: 20, to: 'closed on the 0.07 mm blade' },
    ]);
    await record('inspection2', [
      yes('linkage-return', true, 'asLeft'),
      yes('linkage-free-play', true, 'asLeft'),
      yes('shaft-moves-switch', false, 'asLeft'),
      play('0.03', 'shaft-radial-play-lower', 'asLeft'),
      vacuum('0.2', 'asLeft'),
      blades('0.06', '0.08', 'asLeft'),
    ]);
    await proveAndRelease('job2');
    const lines = await get(`/v1/jobs/${ids['job2']}/work-lines`);
    expect(lines.body.items.map((line: { action: string }) => line.action)).not.toContain('adjustStop');
    const parts = await get(`/v1/fitted-parts?vehicleId=${ids['van']}`);
    const [fitted, removed] = [
      parts.body.items.find((each: { removedAt: string | null }) => each.removedAt === null),
      parts.body.items.find((each: { removedAt: string | null }) => each.removedAt !== null),
    ];
    expect(fitted).toMatchObject({
      condition: 'remanufactured',
      serial: 'RD-20417',
      replacesPartId: removed.id,
    });
    expect(removed).toMatchObject({ condition: 'original', removalReason: 'replaced', removedKm: '186950' });
    const series = async (fittedPartId: string): Promise<[number, number]> => {
      const { body } = await get(
        `/v1/readings?fittedPartId=${fittedPartId}&characteristic=shaft-radial-play-lower`,
      );
      return [
        body.items.length,
        body.items.filter((each: { trendWorthy: boolean }) => each.trendWorthy).length,
      ];
    };
    expect([await series(removed.id), await series(fitted.id)]).toEqual([
      [8, 8],
      [1, 0],
    ]);
  });

  it('JOB rule 16: the fleet manager sees the van and the comeback, and another customer sees neither', async () => {
    expect((await get(`/v1/vehicles/${ids['van']}`, manager)).status).toBe(200);
    const own = await get(`/v1/comebacks?vehicleId=${ids['van']}`, manager);
    expect(own.body.items.map((each: { id: string }) => each.id)).toEqual([ids['comeback']]);
    for (const url of [
      `/v1/vehicles/${ids['van']}`,
      `/v1/jobs/${ids['job2']}`,
      `/v1/complaints/${ids['complaint2']}`,
      `/v1/inspections/${ids['inspection2']}`,
      `/v1/readings/${ids['mistyped']}`,
    ]) {
      expect([url, (await get(url, otherManager)).status]).toEqual([url, 404]);
    }
    expect((await get('/v1/comebacks', otherManager)).body.items).toEqual([]);
    // What a repair costs the shop and why it was chosen is for its own people.
    for (const fleet of [manager, otherManager])
      expect((await get(`/v1/assessments/${ids['assessment']}`, fleet)).status).toBe(403);
  });

  it('JOB rule 1: the record as of week five does not know the comeback', async () => {
    const weekFive = at(35);
    const jobs = await get(`/v1/jobs?vehicleId=${ids['van']}&asOf=${weekFive}`);
    expect(jobs.body.items.map((job: { id: string; state: string }) => [job.id, job.state])).toEqual([
      [ids['job1'], 'released'],
    ]);
    expect((await get(`/v1/comebacks?vehicleId=${ids['van']}&asOf=${weekFive}`)).body.items).toEqual([]);
    const parts = await get(`/v1/fitted-parts?vehicleId=${ids['van']}&asOf=${weekFive}`);
    expect(parts.body.items).toMatchObject([{ condition: 'original', removedAt: null }]);
    expect((await get(`/v1/complaints/${ids['complaint2']}?asOf=${weekFive}`)).status).toBe(404);
  });
});
