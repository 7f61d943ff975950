import { against, blades, millimetres, openBench, yesNo, type Bench } from './bench-shop.js';

const lower = 'shaft-radial-play-lower';
const wear = 'shaft-radial-play-lower-wear';

describe('readings', () => {
  let bench: Bench;
  beforeAll(async () => {
    bench = await openBench();
  });
  afterAll(() => bench.api.close());

  const measured = async (shown: string, inspectionId: string) =>
    bench.read(inspectionId, lower, millimetres(shown), { instrumentId: bench.dialId });

  async function freshInspection(): Promise<string> {
    const vehicleId = await bench.van();
    return bench.inspection(vehicleId);
  }

  async function ready(): Promise<string> {
    const inspectionId = await freshInspection();
    await bench.linkagePassed(inspectionId);
    return inspectionId;
  }

  it('leaves three dial readings around 0.18 mm undecided against the wear limit, and two more in the worst direction make it outside', async () => {
    const inspectionId = await ready();
    await measured('0.18', inspectionId);
    await measured('0.17', inspectionId);
    const third = await measured('0.19', inspectionId);
    expect(third.status).toBe(201);
    const undecided = against(third, wear);
    expect(undecided).toMatchObject({
      outcome: 'undecided',
      basis: 'judged',
      count: 3,
      value: { value: '0.18', unit: 'mm' },
    });
    // By hand: u^2 = 0.015^2/3 + 0.01^2/12 + 0.015^2 + s^2/3 with s^2 = (8 x 0.020^2 + 2 x 0.010^2) / 10.
    const s2 = (8 * 0.02 ** 2 + 2 * 0.01 ** 2) / 10;
    expect(undecided.standardUncertainty).toBeCloseTo(
      Math.sqrt(0.015 ** 2 / 3 + 0.01 ** 2 / 12 + 0.015 ** 2 + s2 / 3),
      9,
    );
    expect(against(third, 'shaft-radial-play-lower-advisory')).toMatchObject({ outcome: 'outside' });
    expect(third.body.judgement.advisedReadingsLeft).toBe(0);
    await measured('0.40', inspectionId);
    const fifth = await measured('0.41', inspectionId);
    expect(against(fifth, wear)).toMatchObject({ outcome: 'outside', count: 5 });
    expect(against(fifth, wear).whatToDo).toContain('re-bush or replace');
  });

  it('JOB rule 2: keeps the text and the unit as entered beside the canonical value', async () => {
    const inspectionId = await ready();
    const inches = await bench.read(inspectionId, lower, { kind: 'number', shown: '0.0070', unit: '[in_i]' });
    expect(inches.body).toMatchObject({
      result: { kind: 'number', shown: '0.0070', unit: '[in_i]' },
      canonical: { value: '0.1778', unit: 'mm' },
    });
  });

  it('JOB rule 2: reads a fraction of an inch exactly and keeps it as written', async () => {
    const vehicleId = await bench.van();
    const sheets = await bench.api.call('GET', '/v1/check-sheets?code=tyres', { as: bench.technician });
    const inspectionId = await bench.inspection(vehicleId, null, { checkSheetId: sheets.body.items[0].id });
    const where = { position: 'frontLeft' };
    const tread = await bench.read(
      inspectionId,
      'tread-depth',
      { kind: 'number', shown: '2/32', unit: '[in_i]' },
      where,
    );
    expect(tread.status).toBe(201);
    expect(tread.body.result.shown).toBe('2/32');
    expect(tread.body.canonical).toEqual({ value: '1.5875', unit: 'mm' });
    const noPlace = await bench.read(inspectionId, 'tread-depth', { kind: 'number', shown: '3', unit: 'mm' });
    expect([noPlace.status, noPlace.body.errors[0].pointer]).toEqual([422, '/position']);
  });

  it('JOB rule 2: refuses a wrong kind of unit and says where', async () => {
    const inspectionId = await ready();
    const answer = await bench.read(inspectionId, lower, { kind: 'number', shown: '0.18', unit: 'kPa' });
    expect(answer.status).toBe(422);
    expect(answer.body.type).toContain('unit-mismatch');
    expect(answer.body.errors[0].pointer).toBe('/result/unit');
  });

  it('JOB rule 2: takes no decimal comma and no fraction of a millimetre for a number', async () => {
    const inspectionId = await ready();
    const comma = await bench.read(inspectionId, lower, { kind: 'number', shown: '0,18', unit: 'mm' });
    expect([comma.status, comma.body.errors[0].pointer]).toEqual([422, '/result/shown']);
    const fraction = await bench.read(inspectionId, lower, { kind: 'number', shown: '1/8', unit: 'mm' });
    expect([fraction.status, fraction.body.errors[0].pointer]).toEqual([422, '/result/shown']);
  });

  it('JOB rule 3: without a known instrument gives a face-value verdict that says what is missing', async () => {
    const inspectionId = await ready();
    const answer = await bench.read(inspectionId, lower, millimetres('0.18'));
    expect(against(answer, wear)).toMatchObject({
      outcome: 'inside',
      basis: 'faceValue',
      probabilityInside: null,
      missing: ['instrument', 'resolution'],
    });
    expect(against(answer, wear).words.join(' ')).toContain('accuracy of the instrument is not known');
  });

  it('JOB rule 4: refuses an as-found reading after work on the part, says what to do, and takes it as left', async () => {
    const vehicleId = await bench.van();
    const jobId = await bench.job(vehicleId);
    const inspectionId = await bench.inspection(vehicleId, jobId);
    await bench.linkagePassed(inspectionId);
    bench.clock.moveOn(60_000);
    const before = bench.clock.now();
    bench.clock.moveOn(60_000);
    await bench.work(jobId, 'adjustSwitch', bench.clock.now());
    bench.clock.moveOn(60_000);
    const late = await measured('0.12', inspectionId);
    expect(late.status).toBe(409);
    expect(late.body.detail).toContain('as left');
    expect(late.body.errors[0].pointer).toBe('/phase');
    const asLeft = await bench.read(inspectionId, lower, millimetres('0.12'), { phase: 'asLeft' });
    expect([asLeft.status, asLeft.body.trendWorthy]).toEqual([201, false]);
    const queued = await bench.read(inspectionId, lower, millimetres('0.11'), { takenAt: before });
    expect([queued.status, queued.body.trendWorthy]).toEqual([201, true]);
  });

  it('JOB rule 4: where as found was never taken, the inspection says so and the reading stays out of the series', async () => {
    const vehicleId = await bench.van();
    const jobId = await bench.job(vehicleId);
    const asFoundNotTaken = [{ checkId: lower, reason: 'somebody else had set it already' }];
    const inspectionId = await bench.inspection(vehicleId, jobId, { asFoundNotTaken });
    await bench.work(jobId, 'adjustSwitch', bench.clock.now());
    bench.clock.moveOn(60_000);
    const answer = await measured('0.12', inspectionId);
    expect(answer.status).toBe(201);
    expect(answer.body.trendWorthy).toBe(false);
    expect(answer.body.warnings.map(({ code }: { code: string }) => code)).toContain('takenAfterWork');
  });

  it('JOB rule 4: freeing the linkage leaves the shaft as found, since the shaft waits for it', async () => {
    const vehicleId = await bench.van();
    const jobId = await bench.job(vehicleId);
    const inspectionId = await bench.inspection(vehicleId, jobId);
    await bench.read(inspectionId, 'linkage-return', yesNo(false));
    await bench.read(inspectionId, 'linkage-free-play', yesNo(true));
    bench.clock.moveOn(60_000);
    await bench.work(jobId, 'freeLinkage', bench.clock.now());
    bench.clock.moveOn(60_000);
    expect((await bench.read(inspectionId, 'linkage-return', yesNo(true))).status).toBe(409);
    await bench.read(inspectionId, 'linkage-return', yesNo(true), { phase: 'asLeft' });
    await bench.read(inspectionId, 'linkage-free-play', yesNo(true), { phase: 'asLeft' });
    bench.clock.moveOn(60_000);
    const shaft = await measured('0.05', inspectionId);
    expect(shaft.status).toBe(201);
    expect(against(shaft, wear)).toMatchObject({ outcome: 'inside', provisional: false });
  });

  it('JOB rule 5: keeps a reading taken before its prerequisites as provisional, and judges it once they are passed', async () => {
    const inspectionId = await freshInspection();
    const early = await measured('0.05', inspectionId);
    expect(early.status).toBe(201);
    expect(against(early, wear)).toMatchObject({
      outcome: 'notJudged',
      reason: 'prerequisitesOpen',
      provisional: true,
      details: ['linkage-return', 'linkage-free-play'],
    });
    await bench.linkagePassed(inspectionId);
    const now = await bench.api.call('GET', `/v1/readings/${early.body.id}/verdicts`, {
      as: bench.technician,
    });
    expect(against(now, wear)).toMatchObject({ outcome: 'inside', provisional: false, version: 3 });
    expect(against(now, wear).reason).toBeNull();
  });

  it('JOB rule 5: what was read while a prerequisite failed stays provisional after that was put right', async () => {
    const vehicleId = await bench.van();
    const jobId = await bench.job(vehicleId);
    const inspectionId = await bench.inspection(vehicleId, jobId);
    await bench.read(inspectionId, 'linkage-return', yesNo(false));
    await bench.read(inspectionId, 'linkage-free-play', yesNo(true));
    const bound = await measured('0.05', inspectionId);
    expect(against(bound, wear)).toMatchObject({ reason: 'prerequisitesOpen', details: ['linkage-return'] });
    bench.clock.moveOn(60_000);
    await bench.work(jobId, 'freeLinkage', bench.clock.now());
    bench.clock.moveOn(60_000);
    await bench.read(inspectionId, 'linkage-return', yesNo(true), { phase: 'asLeft' });
    const still = await bench.api.call('GET', `/v1/readings/${bound.body.id}/verdicts`, {
      as: bench.technician,
    });
    expect(against(still, wear)).toMatchObject({ outcome: 'notJudged', provisional: true });
    bench.clock.moveOn(60_000);
    const again = await measured('0.05', inspectionId);
    expect(against(again, wear)).toMatchObject({ outcome: 'inside', count: 1 });
  });

  it('judges a pair of blades by the stated rule: 0.06 closed and 0.08 open pass, and both are kept', async () => {
    const inspectionId = await ready();
    const pair = await bench.read(inspectionId, 'idle-switch-closing-point', blades('0.06', '0.08'));
    expect(pair.status).toBe(201);
    expect(pair.body.result).toEqual({
      kind: 'bladePair',
      largestClosed: '0.06',
      smallestOpen: '0.08',
      unit: 'mm',
    });
    const verdict = against(pair, 'idle-switch-closing-point-window');
    expect([verdict.grade, verdict.outcome, verdict.reason]).toEqual([
      'pass',
      'notJudged',
      'prerequisitesOpen',
    ]);
  });

  it('passes the idle switch once everything it waits for is passed', async () => {
    const inspectionId = await ready();
    await bench.read(inspectionId, 'shaft-moves-switch', yesNo(false));
    await measured('0.05', inspectionId);
    await bench.read(inspectionId, 'purge-port-vacuum-idle', { kind: 'number', shown: '0', unit: 'kPa' });
    const pair = await bench.read(inspectionId, 'idle-switch-closing-point', blades('0.06', '0.08'));
    expect(against(pair, 'idle-switch-closing-point-window')).toMatchObject({
      outcome: 'inside',
      grade: 'pass',
      provisional: false,
    });
  });

  it('refuses a pair that is closed at a blade not thinner than the one at which it is open, and says what to do', async () => {
    const inspectionId = await ready();
    for (const [closed, open] of [
      ['0.06', '0.05'],
      ['0.07', '0.07'],
    ] as const) {
      const refused = await bench.read(inspectionId, 'idle-switch-closing-point', blades(closed, open));
      expect([refused.status, refused.body.errors]).toEqual([
        422,
        [
          {
            pointer: '/result/smallestOpen',
            rule: 'largerThanClosed',
            detail: expect.stringContaining('read both again'),
          },
        ],
      ]);
    }
  });

  it('refuses a blade that is not in the set it was taken with, and names the blades of the set', async () => {
    const inspectionId = await ready();
    const taken = { instrumentId: bench.bladesId };
    const pair = blades('0.06', '0.10');
    const refused = await bench.read(inspectionId, 'idle-switch-closing-point', pair, taken);
    expect([refused.status, refused.body.errors]).toEqual([
      422,
      [
        {
          pointer: '/result/largestClosed',
          rule: 'bladeOfSet',
          detail: expect.stringContaining('0.05 mm, 0.07 mm, 0.10 mm'),
        },
      ],
    ]);
    const set = await bench.api.call('POST', `/v1/inspections/${inspectionId}/reading-sets`, {
      as: bench.technician,
      body: {
        readings: [
          {
            checkId: 'idle-switch-closing-point',
            phase: 'asFound',
            position: null,
            place: null,
            result: blades('0.05', '0.09'),
            instrumentId: bench.bladesId,
            takenAt: bench.clock.now(),
            conditions: {},
            note: null,
          },
        ],
      },
    });
    expect([set.status, set.body.errors[0].pointer]).toEqual([422, '/readings/0/result/smallestOpen']);
    // 70 um is the blade of 0.07 mm by another name.
    const micrometres = { kind: 'bladePair', largestClosed: '70', smallestOpen: '100', unit: 'um' };
    const fine = await bench.read(inspectionId, 'idle-switch-closing-point', micrometres, taken);
    expect(fine.status).toBe(201);
  });

  it('takes readings and inspections by people of the workshop only: a fleet manager or an auditor measures nothing', async () => {
    const inspectionId = await ready();
    const customer = await bench.api.call('POST', '/v1/customers', {
      as: bench.shop.owner,
      body: {
        kind: 'fleetOperator',
        contact: { name: 'Brindlewick Vans' },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      },
    });
    const outsiders = [
      await bench.shop.user(['fleetManager'], customer.body.id),
      await bench.shop.user(['auditor']),
    ];
    for (const { id } of outsiders) {
      const refused = await bench.read(inspectionId, lower, millimetres('0.05'), { measuredBy: id });
      expect([refused.status, refused.body.errors[0].pointer, refused.body.errors[0].rule]).toEqual([
        422,
        '/measuredBy',
        'staffOnly',
      ]);
      const begun = await bench.api.call('POST', '/v1/inspections', {
        as: bench.technician,
        body: {
          vehicleId: await bench.van(),
          jobId: null,
          checkSheetId: bench.sheetId,
          startedAt: bench.clock.now(),
          technicianId: id,
        },
      });
      expect([begun.status, begun.body.errors[0].pointer]).toEqual([422, '/technicianId']);
    }
    const parts = await bench.shop.user(['parts']);
    const fine = await bench.read(inspectionId, lower, millimetres('0.05'), { measuredBy: parts.id });
    expect([fine.status, fine.body.measuredBy]).toEqual([201, parts.id]);
  });

  it('withdraws a reading of the wrong van: verdict, next check and trend do without it, the history shows it, a correction brings it back', async () => {
    const inspectionId = await ready();
    const first = await measured('0.05', inspectionId);
    bench.clock.moveOn(60_000);
    const wrong = await measured('0.95', inspectionId);
    expect(against(wrong, wear)).toMatchObject({ count: 2 });
    const url = `/v1/readings/${wrong.body.id}`;
    const withdraw = (ifMatch?: string) =>
      bench.api.call('POST', `${url}/withdrawals`, {
        as: bench.technician,
        body: { reason: 'read on the van beside it' },
        ...(ifMatch === undefined ? {} : { ifMatch }),
      });
    expect((await withdraw()).status).toBe(428);
    const before = bench.clock.now();
    bench.clock.moveOn(60_000);
    const taken = await withdraw('"1"');
    expect([taken.status, taken.body.version, taken.body.withdrawn, taken.body.trendWorthy]).toEqual([
      201,
      2,
      true,
      false,
    ]);
    expect(taken.body.judgement.advisedReadingsLeft).toBe(2);
    expect(against(taken, wear)).toMatchObject({
      outcome: 'inside',
      count: 1,
      value: { value: '0.05', unit: 'mm' },
      readingIds: [first.body.id],
    });
    expect((await withdraw('"2"')).status).toBe(409);
    const checks = await bench.checks(inspectionId);
    expect(checks[lower]?.state).toBe('passed');
    const partWear = await bench.api.call(
      'GET',
      `/v1/fitted-parts/${wrong.body.fittedPartId}/wear?characteristic=shaft-radial-play-lower`,
      { as: bench.technician },
    );
    const [series] = partWear.body.characteristics[0].series;
    expect([series.readings, series.leftOut]).toEqual([
      0,
      [
        { readingId: first.body.id, reason: 'distanceUnknown' },
        { readingId: wrong.body.id, reason: 'withdrawn' },
      ],
    ]);
    const revisions = await bench.api.call('GET', `${url}/revisions`, { as: bench.technician });
    expect(
      revisions.body.items.map((each: { withdrawn: boolean; reason: string | null }) => [
        each.withdrawn,
        each.reason,
      ]),
    ).toEqual([
      [false, null],
      [true, 'read on the van beside it'],
    ]);
    const then = await bench.api.call('GET', `${url}?asOf=${before}`, { as: bench.technician });
    expect(then.body.withdrawn).toBe(false);
    const { body } = wrong;
    const back = await bench.api.call('POST', `${url}/corrections`, {
      as: bench.technician,
      ifMatch: '"2"',
      body: {
        checkId: body.checkId,
        phase: body.phase,
        position: body.position,
        place: body.place,
        result: body.result,
        instrumentId: body.instrumentId,
        measuredBy: body.measuredBy,
        takenAt: body.takenAt,
        conditions: body.conditions,
        note: null,
        valueConfirmed: true,
        reason: 'it was this van after all',
      },
    });
    expect([back.status, back.body.withdrawn]).toEqual([201, false]);
    expect(against(back, wear)).toMatchObject({ count: 2 });
  });

  it('leaves no verdict on a check whose only reading was withdrawn', async () => {
    const inspectionId = await ready();
    const only = await measured('0.35', inspectionId);
    expect(against(only, wear).outcome).toBe('outside');
    const taken = await bench.api.call('POST', `/v1/readings/${only.body.id}/withdrawals`, {
      as: bench.technician,
      body: { reason: 'wrong part' },
      ifMatch: '"1"',
    });
    expect(against(taken, wear)).toMatchObject({
      outcome: 'notJudged',
      reason: 'noReadings',
      readingIds: [],
    });
    expect((await bench.checks(inspectionId))[lower]?.state).toBe('open');
  });

  it('JOB rule 6: a shaft that works a correctly set switch outranks good numbers', async () => {
    const inspectionId = await ready();
    await measured('0.05', inspectionId);
    const alone = await bench.read(inspectionId, 'shaft-moves-switch', yesNo(true));
    expect(against(alone, 'shaft-must-not-move-switch')).toMatchObject({
      outcome: 'notJudged',
      reason: 'companionMissing',
    });
    await bench.read(inspectionId, 'idle-switch-closing-point', blades('0.06', '0.08'));
    const checks = await bench.checks(inspectionId);
    expect(checks['shaft-moves-switch']?.state).toBe('failed');
    expect(checks[lower]).toMatchObject({ state: 'failed', outrankedBy: 'shaft-moves-switch' });
    const shaft = await bench.api.call('GET', `/v1/readings/${alone.body.id}/verdicts`, {
      as: bench.technician,
    });
    expect(against(shaft, 'shaft-must-not-move-switch')).toMatchObject({
      outcome: 'outside',
      severity: 'major',
    });
  });

  it('JOB rule 6: a positive with the closing point below 0.05 mm proves nothing', async () => {
    const inspectionId = await ready();
    await bench.read(inspectionId, 'idle-switch-closing-point', blades('0.03', '0.04'));
    const answer = await bench.read(inspectionId, 'shaft-moves-switch', yesNo(true));
    expect(against(answer, 'shaft-must-not-move-switch')).toMatchObject({
      outcome: 'notJudged',
      reason: 'companionNotConclusive',
    });
    expect(against(answer, 'shaft-must-not-move-switch').words.join(' ')).toContain('reset it and repeat');
  });

  it('JOB rule 6: a negative before the switch is in its window is provisional and satisfies what waits for it', async () => {
    const inspectionId = await ready();
    const answer = await bench.read(inspectionId, 'shaft-moves-switch', yesNo(false));
    expect(against(answer, 'shaft-must-not-move-switch')).toMatchObject({
      outcome: 'inside',
      provisional: true,
    });
    await measured('0.05', inspectionId);
    const paper = await bench.read(inspectionId, 'stop-screw-paper', yesNo(true));
    expect(against(paper, 'stop-screw-grips-paper')).toMatchObject({ outcome: 'inside' });
  });

  it('JOB rule 9: an undecided reading fails nothing and says how many more would settle it, or that none would', async () => {
    const inspectionId = await ready();
    await measured('0.22', inspectionId);
    await measured('0.21', inspectionId);
    const third = await measured('0.23', inspectionId);
    const verdict = against(third, wear);
    expect(verdict).toMatchObject({ outcome: 'undecided', whatToDo: null, outsideMeans: null });
    expect(verdict.furtherReadings).toEqual({ kind: 'noNumberSettles', why: 'doubtThatDoesNotAverage' });
    expect((await bench.checks(inspectionId))[lower]?.state).toBe('undecided');
    const other = await ready();
    const single = await measured('0.24', other);
    const needed = against(single, wear);
    expect([needed.outcome, needed.furtherReadings.kind]).toEqual(['undecided', 'needed']);
    expect(needed.words.join(' ')).toContain(`${String(needed.furtherReadings.count)} more readings`);
  });

  it('JOB rule 1: a mistyped reading is corrected, both stay visible, and the verdict follows', async () => {
    const inspectionId = await ready();
    const wrong = await measured('0.81', inspectionId);
    expect(against(wrong, wear).outcome).toBe('outside');
    const knownThen = bench.clock.now();
    bench.clock.moveOn(60_000);
    const url = `/v1/readings/${wrong.body.id}`;
    const { checkId, phase, position, place, instrumentId, takenAt, conditions, note } = wrong.body;
    const entry = { checkId, phase, position, place, instrumentId, takenAt, conditions, note };
    const body = {
      ...entry,
      result: millimetres('0.08'),
      valueConfirmed: false,
      reason: 'digits swapped when typing',
    };
    expect((await bench.api.call('POST', `${url}/corrections`, { as: bench.technician, body })).status).toBe(
      428,
    );
    const right = await bench.api.call('POST', `${url}/corrections`, {
      as: bench.technician,
      body,
      ifMatch: '"1"',
    });
    expect(right.status).toBe(201);
    expect(against(right, wear)).toMatchObject({ outcome: 'inside', version: 2 });
    const before = await bench.api.call('GET', `${url}?asOf=${knownThen}`, { as: bench.technician });
    expect(before.body).toMatchObject({ result: { shown: '0.81' }, version: 1 });
    const verdictThen = await bench.api.call('GET', `${url}/verdicts?asOf=${knownThen}`, {
      as: bench.technician,
    });
    expect(against(verdictThen, wear)).toMatchObject({ outcome: 'outside', version: 1 });
    const all = await bench.api.call('GET', `${url}/revisions`, { as: bench.technician });
    expect(all.body.items.map((item: { result: { shown: string } }) => item.result.shown)).toEqual([
      '0.81',
      '0.08',
    ]);
  });

  it('API row 24: refuses numbers that are no decimal text, and reads minus zero as zero', async () => {
    const inspectionId = await ready();
    for (const shown of ['NaN', '1e309', '9007199254740993e3', '1'.repeat(400)]) {
      const answer = await bench.read(inspectionId, lower, { kind: 'number', shown, unit: 'mm' });
      expect([shown.slice(0, 20), answer.status]).toEqual([shown.slice(0, 20), 422]);
    }
    const asFloat = await bench.read(inspectionId, lower, { kind: 'number', shown: 0.18, unit: 'mm' });
    expect([asFloat.status, asFloat.body.errors[0].pointer]).toEqual([422, '/result/shown']);
    const zero = await bench.read(inspectionId, lower, { kind: 'number', shown: '-0', unit: 'mm' });
    expect([zero.status, zero.body.canonical.value]).toEqual([201, '0']);
  });

  it('API row 25: refuses a value no column holds', async () => {
    const inspectionId = await ready();
    const answer = await bench.read(inspectionId, lower, {
      kind: 'number',
      shown: '999999999999999999',
      unit: 'm',
    });
    expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, '/result/shown']);
  });

  it('API row 26: stores an unlikely value with what was expected, judges nothing by it, and does once it is confirmed', async () => {
    const inspectionId = await ready();
    const answer = await measured('18', inspectionId);
    expect(answer.status).toBe(201);
    expect(answer.body).toMatchObject({
      valueConfirmed: false,
      trendWorthy: false,
      expectedRange: { lowest: { value: '0', unit: 'mm' }, highest: { value: '2', unit: 'mm' } },
    });
    expect(against(answer, wear)).toMatchObject({ outcome: 'notJudged', reason: 'valueToConfirm' });
    const { checkId, phase, position, place, instrumentId, takenAt, conditions, note, result } = answer.body;
    const body = {
      ...{ checkId, phase, position, place, instrumentId, takenAt, conditions, note, result },
      valueConfirmed: true,
      reason: 'looked again, the bore is broken out',
    };
    const url = `/v1/readings/${answer.body.id}/corrections`;
    const confirmed = await bench.api.call('POST', url, { as: bench.technician, body, ifMatch: '"1"' });
    expect(confirmed.body).toMatchObject({ valueConfirmed: true, expectedRange: null, trendWorthy: true });
    expect(against(confirmed, wear).outcome).toBe('outside');
  });

  it('API row 30: tolerates five minutes ahead; tomorrow, 1970, a day that does not exist and a time without offset are refused', async () => {
    const inspectionId = await ready();
    const at = (takenAt: string) => bench.read(inspectionId, lower, millimetres('0.05'), { takenAt });
    const ahead = new Date(Date.parse(bench.clock.now()) + 4 * 60_000).toISOString();
    expect((await at(ahead)).status).toBe(201);
    const tomorrow = new Date(Date.parse(bench.clock.now()) + 24 * 60 * 60_000).toISOString();
    for (const takenAt of [tomorrow, '1970-01-01T00:00:00Z', '2031-02-30T08:00:00Z', '2031-05-04T08:30:00']) {
      const answer = await at(takenAt);
      expect([takenAt, answer.status, answer.body.errors[0].pointer]).toEqual([takenAt, 422, '/takenAt']);
    }
  });

  it('API row 32: the same id again is the first reading; equal values under other ids are repeats; other content is refused', async () => {
    const inspectionId = await ready();
    const id = bench.api.ids.next();
    const takenAt = bench.clock.now();
    const more = { id, instrumentId: bench.dialId, takenAt };
    const first = await bench.read(inspectionId, lower, millimetres('0.05'), more);
    bench.clock.moveOn(60_000);
    const again = await bench.read(inspectionId, lower, millimetres('0.05'), more);
    expect([first.status, again.status, again.body.id]).toEqual([201, 200, id]);
    expect(again.body.recordedAt).toBe(first.body.recordedAt);
    const other = await bench.read(inspectionId, lower, millimetres('0.06'), more);
    expect([other.status, other.body.errors[0].pointer]).toEqual([409, '/id']);
    const repeat = await bench.read(inspectionId, lower, millimetres('0.05'), {
      instrumentId: bench.dialId,
      takenAt,
    });
    expect([repeat.status, against(repeat, wear).count]).toEqual([201, 2]);
  });

  it('takes readings sent at the same moment one after the other, so that the verdict rests on all of them', async () => {
    const inspectionId = await ready();
    await measured('0.05', inspectionId);
    const answers = await Promise.all(
      ['0.05', '0.06', '0.05', '0.04'].map((shown) => measured(shown, inspectionId)),
    );
    expect(answers.map(({ status }) => status)).toEqual([201, 201, 201, 201]);
    const counts = answers.map((answer) => against(answer, wear).count as number);
    expect(counts.sort((a, b) => a - b)).toEqual([2, 3, 4, 5]);
  });

  it('answers the same reading sent twice at once with one record', async () => {
    const inspectionId = await ready();
    const more = { id: bench.api.ids.next(), takenAt: bench.clock.now() };
    const twice = () => bench.read(inspectionId, lower, millimetres('0.05'), more);
    const answers = await Promise.all([twice(), twice(), twice()]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 200, 201]);
  });

  it('records a set all or none, and says which readings cannot be taken and why', async () => {
    const inspectionId = await ready();
    const url = `/v1/inspections/${inspectionId}/reading-sets`;
    const one = (result: object, more: object = {}) => ({
      checkId: lower,
      phase: 'asFound',
      position: null,
      place: null,
      result,
      instrumentId: bench.dialId,
      takenAt: bench.clock.now(),
      conditions: {},
      note: null,
      ...more,
    });
    const bad = [
      one(millimetres('0.05')),
      one({ kind: 'number', shown: '0.05', unit: 'kPa' }),
      one(millimetres('0.05')),
      one(yesNo(true)),
    ];
    const refused = await bench.api.call('POST', url, { as: bench.technician, body: { readings: bad } });
    expect(refused.status).toBe(422);
    expect(refused.body.errors.map(({ pointer }: { pointer: string }) => pointer)).toEqual([
      '/readings/1/result/unit',
      '/readings/3/result/kind',
    ]);
    const list = () =>
      bench.api.call('GET', `/v1/readings?inspectionId=${inspectionId}&characteristic=${lower}`, {
        as: bench.technician,
      });
    expect((await list()).body.items).toEqual([]);
    const good = Array.from({ length: 1000 }, () => one(millimetres('0.05'), { id: bench.api.ids.next() }));
    const taken = await bench.api.call('POST', url, { as: bench.technician, body: { readings: good } });
    expect(taken.status).toBe(201);
    expect(taken.body.readings).toHaveLength(1000);
    expect(against(taken, wear)).toMatchObject({ outcome: 'inside', count: 1000 });
    const again = await bench.api.call('POST', url, { as: bench.technician, body: { readings: good } });
    expect(again.status).toBe(200);
  });

  it('takes down the original part, the person and the distance with a reading', async () => {
    const vehicleId = await bench.van();
    await bench.api.call('POST', `/v1/vehicles/${vehicleId}/odometer-entries`, {
      as: bench.technician,
      body: { shown: '184200', unit: 'km', readAt: '2031-05-04T08:05:00Z', readBy: null, note: null },
    });
    const inspectionId = await bench.inspection(vehicleId);
    const first = await measured('0.05', inspectionId);
    const second = await measured('0.06', inspectionId);
    expect(first.body).toMatchObject({ measuredBy: bench.technician.id, distanceKm: '184200' });
    expect(second.body.fittedPartId).toBe(first.body.fittedPartId);
    const part = await bench.api.call('GET', `/v1/fitted-parts/${first.body.fittedPartId}`, {
      as: bench.technician,
    });
    expect(part.body).toMatchObject({
      componentType: 'throttle-housing',
      position: 'intake',
      condition: 'original',
    });
    const list = await bench.api.call(
      'GET',
      `/v1/readings?fittedPartId=${first.body.fittedPartId}&characteristic=${lower}`,
      {
        as: bench.technician,
      },
    );
    expect(list.body.items).toHaveLength(2);
  });

  it('JOB rule 16: a fleet manager reads the readings of their own vans only, and another shop none', async () => {
    const fleet = await bench.api.call('POST', '/v1/customers', {
      as: bench.shop.owner,
      body: {
        kind: 'fleetOperator',
        contact: { name: 'Brindle Parcels' },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      },
    });
    const manager = await bench.shop.user(['fleetManager'], fleet.body.id);
    const own = await measured('0.05', await bench.inspection(await bench.van({}, fleet.body.id)));
    const foreign = await measured('0.05', await freshInspection());
    const list = await bench.api.call('GET', '/v1/readings', { as: manager });
    expect(list.body.items.map(({ id }: { id: string }) => id)).toEqual([own.body.id]);
    expect((await bench.api.call('GET', `/v1/readings/${own.body.id}`, { as: manager })).status).toBe(200);
    expect((await bench.api.call('GET', `/v1/readings/${foreign.body.id}`, { as: manager })).status).toBe(
      404,
    );
    const unseen = await bench.api.call('GET', `/v1/inspections/${foreign.body.inspectionId}/checks`, {
      as: manager,
    });
    expect(unseen.status).toBe(404);
    const other = await bench.api.openShop();
    expect((await bench.api.call('GET', `/v1/readings/${own.body.id}`, { as: other.owner })).status).toBe(
      404,
    );
    const body = { ...own.body.result };
    const intrusion = await bench.api.call('POST', `/v1/inspections/${own.body.inspectionId}/readings`, {
      as: other.owner,
      body: {
        checkId: lower,
        phase: 'asFound',
        position: null,
        place: null,
        result: body,
        instrumentId: null,
        takenAt: bench.clock.now(),
        conditions: {},
        note: null,
      },
    });
    expect(intrusion.status).toBe(404);
  });

  it('API row 2: an instrument or a person of another shop is an unknown reference', async () => {
    const inspectionId = await ready();
    const other = await bench.api.openShop();
    const instrument = await bench.read(inspectionId, lower, millimetres('0.05'), {
      instrumentId: bench.api.ids.next(),
    });
    expect([instrument.status, instrument.body.errors[0].pointer]).toEqual([422, '/instrumentId']);
    const person = await bench.read(inspectionId, lower, millimetres('0.05'), { measuredBy: other.owner.id });
    expect([person.status, person.body.errors[0].pointer]).toEqual([422, '/measuredBy']);
  });

  it('judges against a limit without storing anything', async () => {
    const developer = await bench.shop.user(['developer']);
    const answer = await bench.api.call('POST', '/v1/readings/evaluations', {
      as: developer,
      body: {
        limitId: wear,
        readings: ['0.18', '0.17', '0.19'].map(millimetres),
        instrument: {
          errorModel: { kind: 'maximumPermissibleError', limit: { value: '0.015', unit: 'mm' } },
          resolution: { value: '0.01', unit: 'mm' },
        },
      },
    });
    expect(answer.status).toBe(200);
    expect(answer.body.judgement).toMatchObject({ outcome: 'undecided', basis: 'judged', count: 3 });
    const pair = await bench.api.call('POST', '/v1/readings/evaluations', {
      as: developer,
      body: { limitId: 'idle-switch-closing-point-window', readings: [blades('0.06', '0.08')] },
    });
    expect(pair.body.judgement).toMatchObject({ outcome: 'inside', grade: 'pass' });
    const unit = await bench.api.call('POST', '/v1/readings/evaluations', {
      as: developer,
      body: { limitId: wear, readings: [{ kind: 'number', shown: '1', unit: 'kPa' }] },
    });
    expect([unit.status, unit.body.errors[0].pointer]).toEqual([422, '/readings/0/result/unit']);
    const neither = await bench.api.call('POST', '/v1/readings/evaluations', {
      as: developer,
      body: { readings: [yesNo(true)] },
    });
    expect(neither.status).toBe(422);
  });
});
