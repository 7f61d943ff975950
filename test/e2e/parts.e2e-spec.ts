import { openBench, type Bench } from './bench-shop.js';
import { openPartsDesk, type PartsDesk } from './parts-shop.js';

describe('parts and stock', () => {
  let bench: Bench;
  let desk: PartsDesk;
  let jobId: string;
  let vanId: string;

  beforeAll(async () => {
    bench = await openBench();
    desk = openPartsDesk(bench.api, bench.shop, await bench.shop.user(['parts']));
    vanId = await bench.van();
    jobId = await bench.job(vanId);
  });
  afterAll(() => bench.api.close());

  const customer = async (): Promise<string> => {
    const body = {
      kind: 'person',
      contact: { name: 'Perrin Oakes' },
      downtimeCostPerDay: null,
      planningDistanceKm: null,
    };
    return (await desk.post('/v1/customers', body, bench.shop.owner)).body.id as string;
  };

  const lineOf = async (partId: string, more = '') => {
    const { body } = await desk.get(`/v1/stock-lines?partId=${partId}${more}`);
    return body.items[0];
  };

  it('keeps parts with what took their place, what interchanges and what goes with them', async () => {
    const gasket = await desk
      .part('GK-1', { componentType: 'other-part', title: 'gasket' })
      .catch(() => null);
    const newest = await desk.part('TH-33');
    const middle = await desk.part('TH-32', { supersededById: newest });
    const oldest = await desk.part('TH-31', { supersededById: middle });
    const twin = await desk.part('XT-9', { interchangesWith: [middle] });
    await desk.move(newest, 'receive', 2);
    const shown = await desk.get(`/v1/parts/${oldest}`);
    expect(gasket).toBeNull();
    expect(shown.body).toMatchObject({
      currentPartId: newest,
      successionIds: [oldest, middle, newest],
      stock: [{ partId: newest, onHand: 2, available: 2 }],
    });
    expect([...shown.body.substituteIds].sort()).toEqual([middle, newest, twin].sort());
    const circle = await bench.api.call('POST', `/v1/parts/${newest}/corrections`, {
      as: desk.as,
      ifMatch: '"1"',
      body: {
        componentType: 'throttle-housing',
        partNumber: 'TH-33',
        title: 'throttle housing',
        applications: [],
        supersededById: oldest,
        interchangesWith: [],
        alsoOrder: [],
        note: null,
        reason: 'tried on purpose',
      },
    });
    expect([circle.status, circle.body.errors[0].rule]).toEqual([422, 'noCircle']);
  });

  it('TRADE 7, parts 1: which variant fits this van, and what else is ordered with it', async () => {
    const fits = await desk.part('V-A', { applications: ['two-screw'] });
    await desk.part('V-B', { applications: ['four-screw'] });
    const other = await desk.part('V-C', { applications: ['four-screw'], alsoOrder: [fits] });
    const van = await desk.post(
      '/v1/vehicles',
      {
        chassisNumber: null,
        plate: null,
        label: 'Van 21',
        firstUsedOn: null,
        application: 'four-screw',
        attributes: {},
        expectedKmPerYear: null,
        observedSpans: [],
        retiredOn: null,
        customerId: await customer(),
      },
      bench.shop.owner,
    );
    const list = await desk.get(`/v1/parts?vehicleId=${van.body.id}&componentType=throttle-housing`);
    const numbers = list.body.items.map((item: { partNumber: string }) => item.partNumber);
    expect(numbers).toEqual(expect.arrayContaining(['V-B', 'V-C']));
    expect(numbers).not.toContain('V-A');
    expect((await desk.get(`/v1/parts/${other}`)).body.alsoOrder).toEqual([fits]);
  });

  it('moves stock by hand: 3 in, 2 kept for a job, 1 of them used, 1 back, counted 2, and each line goes on from the one before', async () => {
    const partId = await desk.part('MV-1');
    expect((await desk.move(partId, 'receive', 3)).body).toMatchObject({ position: 1, onHandAfter: 3 });
    expect((await desk.move(partId, 'reserve', 2, { jobId })).body).toMatchObject({ reservedAfter: 2 });
    expect((await desk.move(partId, 'use', 1, { jobId })).body).toMatchObject({
      onHandAfter: 2,
      reservedAfter: 1,
    });
    expect((await desk.move(partId, 'return', 1, { jobId })).body).toMatchObject({
      onHandAfter: 3,
      warnings: [],
    });
    const counted = await desk.move(partId, 'count', 2);
    expect(counted.body).toMatchObject({ position: 5, onHandChange: -1, onHandAfter: 2, reservedAfter: 1 });
    expect(await lineOf(partId)).toMatchObject({ onHand: 2, reserved: 1, available: 1, moves: 5 });
  });

  it('refuses more than there is, and what is kept for another job, and says how many there could be', async () => {
    const partId = await desk.part('MV-2');
    const none = await desk.move(partId, 'use', 1, { jobId });
    expect([none.status, none.body.code, none.body.errors[0].detail]).toEqual([409, 'stock.notEnough', '0']);
    await desk.move(partId, 'receive', 1);
    const other = await bench.job(await bench.van());
    await desk.move(partId, 'reserve', 1, { jobId: other });
    expect((await desk.move(partId, 'use', 1, { jobId })).status).toBe(409);
    expect((await desk.move(partId, 'use', 1, { jobId: other })).status).toBe(201);
  });

  it('JOB rule 1: a mistake is put right by a reversal, once, with its reason; what was known before stays readable', async () => {
    const partId = await desk.part('MV-3');
    const { body: wrong } = await desk.move(partId, 'receive', 30);
    const knownThen = bench.clock.now();
    bench.clock.moveOn(60_000);
    const noReason = await desk.move(partId, 'reversal', 0, { reversesId: wrong.id });
    expect([noReason.status, noReason.body.errors[0].pointer]).toEqual([422, '/note']);
    const right = await desk.move(partId, 'reversal', 0, {
      reversesId: wrong.id,
      note: 'typed a nought too many',
    });
    expect(right).toMatchObject({ status: 201, body: { onHandChange: -30, onHandAfter: 0 } });
    const again = await desk.move(partId, 'reversal', 0, { reversesId: wrong.id, note: 'once more' });
    expect(again.status).toBe(409);
    expect(await lineOf(partId, `&asOf=${knownThen}`)).toMatchObject({ onHand: 30 });
  });

  it('answers the same move sent again with the first one, and other content under its id with 409', async () => {
    const partId = await desk.part('MV-4');
    const id = bench.api.ids.next();
    const send = (quantity: number) =>
      desk.move(partId, 'receive', quantity, { id, happenedAt: '2031-05-04T08:30:00Z' });
    expect((await send(2)).status).toBe(201);
    expect((await send(2)).status).toBe(200);
    expect((await send(3)).status).toBe(409);
    expect(await lineOf(partId)).toMatchObject({ onHand: 2 });
  });

  it('bad input of an ordinary day: back-dated before a count, more returned than used, the future, a wrong shape', async () => {
    const partId = await desk.part('MV-5');
    await desk.move(partId, 'count', 4);
    const late = await desk.move(partId, 'receive', 1, { happenedAt: '2031-05-01T08:00:00Z' });
    expect([late.status, late.body.warnings[0].code]).toEqual([201, 'beforeLastCount']);
    const back = await desk.move(partId, 'return', 2, { jobId });
    expect([back.status, back.body.warnings[0].code]).toEqual([201, 'returnedMoreThanUsed']);
    const future = await desk.move(partId, 'receive', 1, { happenedAt: '2031-06-04T08:00:00Z' });
    expect([future.status, future.body.errors[0].rule]).toEqual([422, 'notInFuture']);
    const noJob = await desk.move(partId, 'use', 1);
    expect([noJob.status, noJob.body.errors[0].pointer]).toEqual([422, '/jobId']);
    const lost = await desk.move(partId, 'remove', 1);
    expect([lost.status, lost.body.errors[0].pointer]).toEqual([422, '/note']);
    const cost = await desk.move(partId, 'receive', 1, { unitCost: { amount: '-1.00', currency: 'EUR' } });
    expect(cost.status).toBe(422);
  });

  it('work takes the part from the shelf, the fitted part carries its batch, and which vehicles got the batch is one call', async () => {
    const partId = await desk.part('WL-1');
    await desk.move(partId, 'receive', 2, { batch: 'B-77' });
    const line = (serial: string) => ({
      action: 'replace',
      componentType: 'throttle-housing',
      position: 'intake',
      state: 'planned',
      technicianId: null as string | null,
      doneAt: null as string | null,
      minutes: null as number | null,
      description: null,
      from: null,
      to: null,
      protectedPurpose: null,
      protectedReason: null,
      part: {
        condition: 'remanufactured',
        supplier: 'Birchmoor Castings',
        partNumber: null,
        serial,
        batch: 'B-77',
        price: null,
        partId,
      },
    });
    const plan = async (serial: string) =>
      (await desk.post(`/v1/jobs/${jobId}/work-lines`, line(serial), bench.technician)).body;
    const [first, second] = [await plan('S-1'), await plan('S-2')];
    const estimate = await desk.post(
      `/v1/jobs/${jobId}/estimates`,
      {
        lines: [first, second].map(({ id }) => ({
          workLineId: id,
          description: 'replace the housing',
          partsAmount: '310.00',
          labourHours: '2',
          partCondition: 'remanufactured',
        })),
        ceilingAmount: null,
      },
      bench.shop.owner,
    );
    const consent = {
      estimateId: estimate.body.id,
      answer: 'given',
      answeredAt: bench.clock.now(),
      way: 'byTelephone',
      name: 'Ottoline Farrow',
      declinedWork: null,
    };
    expect((await desk.post(`/v1/jobs/${jobId}/consents`, consent, bench.shop.owner)).status).toBe(201);
    const finish = (id: string, serial: string) =>
      bench.api.call('POST', `/v1/work-lines/${id}/corrections`, {
        as: bench.technician,
        ifMatch: '"1"',
        body: {
          ...line(serial),
          state: 'done',
          technicianId: bench.technician.id,
          doneAt: bench.clock.now(),
          minutes: 90,
          reason: 'done now',
        },
      });
    expect(await lineOf(partId)).toMatchObject({ onHand: 2 });
    const done = await finish(first.id, 'S-1');
    expect(done).toMatchObject({ status: 201, body: { part: { partId } } });
    expect(await lineOf(partId)).toMatchObject({ onHand: 1 });
    const moves = await desk.get(`/v1/stock-moves?batch=B-77&partId=${partId}`);
    expect(moves.body.items.map((item: { kind: string }) => item.kind).sort()).toEqual(['receive', 'use']);
    const vehicles = await desk.get('/v1/fitted-parts?batch=B-77');
    expect(vehicles.body.items).toMatchObject([{ vehicleId: vanId, partNumber: 'WL-1', serial: 'S-1' }]);

    const twice = await desk.move(partId, 'reserve', 1, { jobId, serial: 'S-1' });
    expect([twice.status, twice.body.warnings[0].code]).toEqual([201, 'serialFittedElsewhere']);
    await desk.move(partId, 'unreserve', 1, { jobId });
    await desk.move(partId, 'remove', 1, { note: 'cracked flange' });
    const none = await finish(second.id, 'S-2');
    expect([none.status, none.body.code, none.body.errors[0].pointer]).toEqual([
      409,
      'stock.notEnough',
      '/part/partId',
    ]);
    const fitted = await desk.get(`/v1/fitted-parts?vehicleId=${vanId}`);
    expect(JSON.stringify(fitted.body)).not.toContain('S-2');
  });

  it('gives lists as CSV, a formula in a text guarded', async () => {
    await desk.part('=1+2');
    const csv = await bench.api.call('GET', '/v1/parts', { as: desk.as, headers: { accept: 'text/csv' } });
    expect(csv.headers['content-type']).toContain('text/csv');
    expect(csv.body).toContain("'=1+2");
    const stock = await bench.api.call('GET', '/v1/stock-lines', {
      as: desk.as,
      headers: { accept: 'text/csv' },
    });
    expect(stock.body.split('\r\n')[0]).toBe(
      'partId,componentType,partNumber,title,condition,onHand,reserved,available',
    );
  });

  it('JOB rule 16: another shop sees neither part nor move, and a fleet manager no stock at all', async () => {
    const partId = await desk.part('OS-1');
    const { body: move } = await desk.move(partId, 'receive', 1);
    const other = await bench.api.openShop();
    expect((await desk.get(`/v1/parts/${partId}`, other.owner)).status).toBe(404);
    expect((await desk.get(`/v1/stock-moves/${move.id}`, other.owner)).status).toBe(404);
    const foreign = await desk.post(
      '/v1/stock-moves',
      { partId, condition: 'used', kind: 'receive', quantity: 1, happenedAt: bench.clock.now() },
      other.owner,
    );
    expect([foreign.status, foreign.body.code]).toEqual([422, 'record.unknownReference']);
    const manager = await bench.shop.user(['fleetManager']);
    expect((await desk.get('/v1/stock-lines', manager)).status).toBe(403);
  });

  it('API row 40: fifty at once take what is there and no more, the ledger has no gap, and nothing is below nothing', async () => {
    const partId = await desk.part('RACE-1');
    await desk.move(partId, 'receive', 10);
    const jobs = await Promise.all([1, 2, 3, 4, 5].map(async () => bench.job(await bench.van())));
    const kinds = ['reserve', 'use', 'remove', 'receive', 'use'] as const;
    // Who finds the pool exhausted is told to come again (API row 55), and does.
    const send = async (body: object): Promise<number> => {
      for (let attempt = 0; ; attempt += 1) {
        const { statusCode } = await bench.api.app.inject({
          method: 'POST',
          url: '/v1/stock-moves',
          headers: { authorization: desk.as.authorization, 'content-type': 'application/json' },
          payload: JSON.stringify(body),
        });
        if (statusCode !== 503 || attempt >= 20) return statusCode;
      }
    };
    const answers = await Promise.all(
      Array.from({ length: 50 }, async (_, at) => {
        const kind = kinds[at % kinds.length]!;
        const ofJob =
          kind === 'reserve' || kind === 'use' ? { jobId: jobs[at % jobs.length] } : { note: 'race' };
        const id = bench.api.ids.next();
        const happenedAt = bench.clock.now();
        const move = {
          id,
          partId,
          condition: 'remanufactured',
          kind,
          quantity: 1 + (at % 3),
          happenedAt,
          ...ofJob,
        };
        return { status: await send(move) };
      }),
    );
    for (const { status } of answers) expect([200, 201, 409]).toContain(status);
    const pages = await desk.get(`/v1/stock-moves?partId=${partId}&pageSize=200`);
    const moves: {
      position: number;
      jobId: string | null;
      onHandChange: number;
      reservedChange: number;
      onHandAfter: number;
      reservedAfter: number;
    }[] = [...pages.body.items].sort((a, b) => a.position - b.position);
    expect(moves).toHaveLength(1 + answers.filter(({ status }) => status < 300).length);
    let [onHand, reserved] = [0, 0];
    const keptFor = new Map<string, number>();
    moves.forEach((move, at) => {
      expect(move.position).toBe(at + 1);
      onHand += move.onHandChange;
      reserved += move.reservedChange;
      expect([move.onHandAfter, move.reservedAfter]).toEqual([onHand, reserved]);
      expect(Math.min(onHand, reserved, onHand - reserved)).toBeGreaterThanOrEqual(0);
      if (move.jobId !== null) keptFor.set(move.jobId, (keptFor.get(move.jobId) ?? 0) + move.reservedChange);
    });
    expect([...keptFor.values()].every((kept) => kept >= 0)).toBe(true);
    expect(await lineOf(partId)).toMatchObject({ onHand, reserved });
  });
});
