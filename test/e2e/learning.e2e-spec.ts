import { openDatabasePool } from '@endfloat/persistence';
import { startTestApi, type Reply, type TestApi } from '../support/api.js';
import {
  freeLinkage,
  millimetres,
  no,
  openStoryShop,
  pair,
  type StoryShop,
} from '../support/decide-story.js';
import { confirmComeback, seeAgain, settleVisit } from '../support/settled-jobs.js';

interface Cell {
  causeId: string;
  startingValue: number;
  yes: number;
  no: number;
  current: number;
  fromSelectedChecks: number;
  fedOnlyBySelectedChecks: boolean;
}
interface Row {
  id: string;
  cells: Cell[];
}

const switchCause = 'idle-switch-misset-or-faulty';
const eur = (amount: string) => ({ amount, currency: 'EUR' });

describe('what a shop learns from its settled history', () => {
  let api: TestApi;
  let story: StoryShop;
  let assessedBefore: Reply;

  const learn = () => story.post('/v1/learned-tables/rounds', {});
  const tables = (subject: string, query = '') => story.get(`/v1/learned-tables/${subject}${query}`);
  const cell = (rows: Row[], row: string, cause: string): Cell =>
    rows.find(({ id }) => id === row)!.cells.find(({ causeId }) => causeId === cause)!;
  const causeOf = (reply: Reply, cause: string): Cell =>
    (reply.body.causes as Cell[]).find(({ causeId }) => causeId === cause)!;

  beforeAll(async () => {
    api = await startTestApi();
    story = await openStoryShop(api);
    await story.offer({ condition: 'remanufactured', price: eur('310.00'), warrantyMonths: 12 });
  });
  afterAll(() => api.close());

  it('begins with judgement: no cell counted, no date, and the numbers as shipped', async () => {
    const diagnosis = await tables('diagnosis');
    expect(diagnosis.body).toMatchObject({ version: 'shipped-1+0', learnedAt: null });
    expect(causeOf(diagnosis, switchCause)).toMatchObject({
      startingValue: 0.12,
      yes: 0,
      no: 0,
      current: 0.12,
    });
    const decision = await tables('decision');
    expect(decision.body).toMatchObject({
      version: expect.stringMatching(/^judgement-\d+$/),
      learnedAt: null,
      counts: { repairs: 0, parts: 0, deliveries: 0 },
    });
    const van = await story.newVan();
    const { jobId } = await story.newJob(van, '2026-02-02T08:00:00Z');
    assessedBefore = await story.assess(van, jobId);
    expect(assessedBefore.body.tablesHash).toBe(decision.body.hash);
  });

  it('JOB rules 10 and 12: confirmed causes whose window elapsed teach; running windows, vans never seen, symptoms not asked and causes not established do not', async () => {
    const asked = { 'idle-rises-with-ac': 'present', 'stalls-cold': 'absent' } as const;
    const work = { action: 'adjustSwitch' };
    // Held, and seen after its window: teaches. The linkage and the closing point were read in the order of the sheet.
    const held = await story.newVan();
    await settleVisit(story, {
      vehicleId: held,
      day: '2026-03-02',
      symptoms: asked,
      causeId: switchCause,
      work,
      before: async (jobId) => {
        const inspectionId = await story.inspect(held, jobId, '2026-03-02T09:00:00Z');
        await story.read(inspectionId, [
          ...freeLinkage('2026-03-02T09:10:00Z'),
          {
            checkId: 'shaft-radial-play-lower',
            result: millimetres('0.04'),
            takenAt: '2026-03-02T09:15:00Z',
            instrumentId: story.dialId,
          },
          {
            checkId: 'idle-switch-closing-point',
            result: pair('0.08', '0.10'),
            takenAt: '2026-03-02T09:25:00Z',
            instrumentId: story.bladesId,
          },
          { checkId: 'shaft-moves-switch', result: no, takenAt: '2026-03-02T09:30:00Z' },
        ]);
      },
    });
    await seeAgain(story, held, '2026-08-03', '181000');
    // Not established, window elapsed and seen: never teaches the diagnosis.
    const open = await story.newVan();
    await settleVisit(story, { vehicleId: open, day: '2026-03-03', work });
    await seeAgain(story, open, '2026-08-04', '90000');
    // Never seen again.
    const gone = await story.newVan();
    await settleVisit(story, { vehicleId: gone, day: '2026-03-04', causeId: switchCause, work });
    // Came back, and the comeback established another cause: counts for that one, with the symptoms of the first visit.
    const back = await story.newVan();
    await settleVisit(story, {
      vehicleId: back,
      day: '2026-03-05',
      symptoms: { 'idle-rises-with-ac': 'present' },
      causeId: switchCause,
      work,
    });
    const repeat = await settleVisit(story, {
      vehicleId: back,
      day: '2026-04-06',
      symptoms: { 'idle-rises-with-ac': 'present', 'stalls-cold': 'present' },
      causeId: 'shaft-worn',
      work: { action: 'replace', condition: 'remanufactured' },
    });
    await confirmComeback(story, repeat.complaint, 'wrongRootCause');
    await seeAgain(story, back, '2026-09-07', '133000');

    expect((await learn()).body.changed.sort()).toEqual(['decision', 'diagnosis']);
    const { body } = await tables('diagnosis');
    expect(body.version).toBe('shipped-1+2');
    expect(body.jobs).toMatchObject({ released: 5, taught: 2, taughtByComeback: 1 });
    expect(
      Object.fromEntries(
        body.jobs.notTaught.map((each: { reason: string; count: number }) => [each.reason, each.count]),
      ),
    ).toEqual({ causeNotEstablished: 1, notSeenSince: 1, countedWithOriginal: 1 });
    // By hand: two jobs taught, one of them this cause; (20 x 0.12 + 1) / (20 + 2).
    const cause = (body.causes as Cell[]).find(({ causeId }) => causeId === switchCause)!;
    expect([cause.yes, cause.no]).toEqual([1, 1]);
    expect(cause.current).toBeCloseTo(3.4 / 22, 12);
    // Asked and absent in the one job of this cause: (20 x 0.3 + 0) / 21. Not asked at the first visit of the comeback.
    const stalls = cell(body.symptoms, 'stalls-cold', switchCause);
    expect([stalls.yes, stalls.no]).toEqual([0, 1]);
    expect(stalls.current).toBeCloseTo((20 * stalls.startingValue) / 21, 12);
    expect(cell(body.symptoms, 'stalls-cold', 'shaft-worn')).toMatchObject({ yes: 0, no: 0 });
    expect(cell(body.symptoms, 'idle-rises-with-ac', 'shaft-worn')).toMatchObject({ yes: 1, no: 0 });
    // Checks only where done.
    expect(cell(body.checks, 'linkage-return', switchCause)).toMatchObject({ yes: 0, no: 1 });
    expect(cell(body.checks, 'linkage-return', 'shaft-worn')).toMatchObject({ yes: 0, no: 0 });
    const done = (body.checks as Row[]).filter(({ cells }) =>
      cells.some(({ yes, no: not }) => yes + not > 0),
    );
    expect(done.length).toBeGreaterThanOrEqual(2);
    // The shaft was read before the purge port and the opening moves: not in the order of the sheet, so it says so.
    expect(cell(body.checks, 'shaft-play', switchCause)).toMatchObject({
      fromSelectedChecks: 1,
      fedOnlyBySelectedChecks: true,
    });
  });

  it('counts repairs for the chances of a comeback by what was done, and what was never seen again not at all', async () => {
    const { body } = await tables('decision');
    const counts = Object.fromEntries(
      body.byAction.map((each: { action: string }) => [each.action, each]),
    ) as Record<string, object>;
    expect(counts['adjust']).toMatchObject({ comebacks: 1, held: 2, running: 0 });
    expect(counts['fitRemanufactured']).toMatchObject({ comebacks: 0, held: 1, running: 0 });
    expect(body.leftOut).toMatchObject([{ reason: 'notWatched', count: 1 }]);
    expect(body).toMatchObject({ fit: 'estimated', version: expect.stringMatching(/^judgement-\d+\+4$/) });
    const level = body.coefficients.find(({ name }: { name: string }) => name === 'adjust');
    expect(level.deviation).toBeLessThan(level.startingDeviation);
  });

  it('JOB rule 15: an assessment of before replays to the last digit, and its tables are still there by their hash', async () => {
    const now = await tables('decision');
    const again = await story.assess(assessedBefore.body.vehicleId, assessedBefore.body.jobId);
    expect(again.body.tablesHash).toBe(now.body.hash);
    expect(again.body.tablesHash).not.toBe(assessedBefore.body.tablesHash);
    const replay = await story.post(`/v1/assessments/${assessedBefore.body.id}/replays`, {}, story.desk);
    expect(replay.body).toMatchObject({ isEqual: true, isInputUnchanged: true });
    const replayNow = await story.post(`/v1/assessments/${again.body.id}/replays`, {}, story.desk);
    expect(replayNow.body).toMatchObject({ isEqual: true, isInputUnchanged: true });
    const stored = await tables('decision', `?hash=${now.body.hash}`);
    expect(stored.body).toEqual(now.body);
    expect((await tables('decision', `?hash=${'0'.repeat(64)}`)).status).toBe(404);
  });

  it('dropping what was learned and learning again gives the same tables; learning twice changes nothing', async () => {
    expect((await learn()).body.changed).toEqual([]);
    const before = [await tables('diagnosis'), await tables('decision')];
    const pool = openDatabasePool({ url: api.database.ownerUrl, size: 1, waitMs: 20_000 });
    const client = await pool.connect();
    await client.query(`SELECT set_config('app.shop', $1, false)`, [story.shop.id]);
    const { rowCount } = await client.query('DELETE FROM learned_tables');
    client.release();
    await pool.end();
    expect(rowCount).toBe(2);
    expect((await tables('decision')).body.learnedAt).toBeNull();
    expect((await learn()).body.changed.sort()).toEqual(['decision', 'diagnosis']);
    const after = [await tables('diagnosis'), await tables('decision')];
    after.forEach(({ body }, k) => {
      expect(body).toEqual({ ...before[k]!.body, learnedAt: body.learnedAt });
    });
  });

  it('a correction unteaches: a comeback that turns out to be an unrelated fault no longer counts', async () => {
    const list = await story.get('/v1/comebacks?state=confirmed');
    const [link] = list.body.items;
    await story.post(
      `/v1/comebacks/${link.id}/corrections`,
      { state: 'confirmed', attribution: 'newUnrelatedFault', note: null, reason: 'a hose, proven' },
      story.desk,
      '"2"',
    );
    await learn();
    const { body } = await tables('decision');
    const adjust = body.byAction.find(({ action }: { action: string }) => action === 'adjust');
    expect(adjust).toMatchObject({ comebacks: 0, held: 3 });
    const diagnosis = await tables('diagnosis');
    expect(diagnosis.body.jobs).toMatchObject({ taught: 3, taughtByComeback: 0 });
  });

  it('a preview takes judgement tables unless it asks for those of the shop; only the owner starts a round of learning', async () => {
    expect((await story.post('/v1/learned-tables/rounds', {}, story.technician)).status).toBe(403);
    expect((await api.call('GET', '/v1/learned-tables/diagnosis', { as: story.technician })).status).toBe(
      200,
    );
    const manager = await story.shop.user(['fleetManager'], story.customerId);
    expect((await api.call('GET', '/v1/learned-tables/decision', { as: manager })).status).toBe(403);
  });
});
