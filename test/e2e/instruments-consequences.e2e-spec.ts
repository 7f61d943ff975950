import { startTestApi, type TestApi } from '../support/api.js';
import {
  freeLinkage,
  millimetres,
  openStoryShop,
  pair,
  yes,
  type ReadingInput,
  type StoryShop,
} from '../support/decide-story.js';

const play = 'shaft-radial-play-lower';

describe('what rested on an instrument', () => {
  let api: TestApi;
  let story: StoryShop;

  beforeAll(async () => {
    api = await startTestApi();
    story = await openStoryShop(api);
    await story.offer({ condition: 'remanufactured', price: { amount: '310.00', currency: 'EUR' } });
  });
  afterAll(() => api.close());

  const assessed = async (day: string) => {
    const vehicleId = await story.newVan();
    const { jobId } = await story.newJob(vehicleId, `${day}T08:00:00Z`);
    const inspectionId = await story.inspect(vehicleId, jobId, `${day}T09:00:00Z`);
    const reading = (shown: string): ReadingInput => ({
      checkId: play,
      result: millimetres(shown),
      takenAt: `${day}T09:20:00Z`,
      instrumentId: story.dialId,
    });
    await story.read(inspectionId, [
      ...freeLinkage(`${day}T09:10:00Z`),
      ...['0.25', '0.26', '0.27'].map(reading),
      {
        checkId: 'idle-switch-closing-point',
        result: pair('0.06', '0.08'),
        takenAt: `${day}T09:25:00Z`,
        instrumentId: story.bladesId,
      },
      { checkId: 'shaft-moves-switch', result: yes, takenAt: `${day}T09:30:00Z` },
    ]);
    const assessment = await story.assess(vehicleId, jobId);
    expect(assessment.status).toBe(201);
    const decision = await story.post(
      `/v1/assessments/${assessment.body.id}/decisions`,
      {
        chosen: 'fitRemanufactured',
        decidedAt: `${day}T10:00:00Z`,
        decidedBy: story.desk.id,
        choiceReason: 'settled at the desk',
      },
      story.desk,
    );
    expect(decision.status).toBe(201);
    const overdue: string[] = assessment.body.overdueInstrumentIds;
    return {
      overdue,
      vehicleId,
      jobId,
      inspectionId,
      assessmentId: assessment.body.id,
      decisionId: decision.body.id,
    };
  };
  const calibrated = (id: string, calibratedOn: string, passed = true) =>
    story.post(`/v1/instruments/${id}/calibrations`, {
      calibratedOn,
      dueOn: null,
      passed,
      certificate: null,
      note: null,
    });
  const consequences = async (id: string, more = '') =>
    (await api.call('GET', `/v1/instruments/${id}/consequences${more}`, { as: story.desk })).body;
  const idsOf = (items: readonly Record<string, string>[], name: string) => items.map((item) => item[name]);

  it('is verdicts, assessments and decisions since its last passed calibration, in one call; a failed one moves nothing', async () => {
    const first = await assessed('2026-03-02');
    const second = await assessed('2026-03-04');
    const all = await consequences(story.dialId);
    expect([all.lastGoodCalibrationOn, all.readings]).toEqual([null, 6]);
    expect(idsOf(all.decisions, 'decisionId')).toEqual([second.decisionId, first.decisionId]);
    expect(idsOf(all.assessments, 'assessmentId')).toEqual([second.assessmentId, first.assessmentId]);
    expect(all.decisions[1]).toMatchObject({
      assessmentId: first.assessmentId,
      vehicleId: first.vehicleId,
      jobId: first.jobId,
      chosen: 'fitRemanufactured',
      decidedBy: story.desk.id,
    });
    expect(all.decisions[1].readingIds).toHaveLength(3);
    expect(new Set(idsOf(all.verdicts, 'vehicleId'))).toEqual(new Set([first.vehicleId, second.vehicleId]));
    // Nobody had calibrated anything: both assessments say so.
    expect(second.overdue).toContain(story.dialId);
    await calibrated(story.dialId, '2026-03-03');
    expect((await assessed('2026-03-04')).overdue).toEqual([story.bladesId]);
    await calibrated(story.dialId, '2026-03-05', false);
    const since = await consequences(story.dialId);
    expect([since.lastGoodCalibrationOn, since.readings]).toEqual(['2026-03-03', 6]);
    expect(idsOf(since.decisions, 'decisionId')).toContain(second.decisionId);
    expect(idsOf(since.decisions, 'decisionId')).not.toContain(first.decisionId);
    expect(since.assessments).toHaveLength(2);
    // The last calibration failed: every verdict since it says so, those before it were in order as far as was known.
    const third = await assessed('2026-03-06');
    expect(third.overdue).toEqual([story.bladesId, story.dialId].sort());
    const now = await consequences(story.dialId);
    const overdue = now.verdicts.map((verdict: { vehicleId: string; overdueInstrumentIds: string[] }) => [
      verdict.vehicleId,
      verdict.overdueInstrumentIds,
    ]);
    expect(overdue).toContainEqual([third.vehicleId, [story.dialId]]);
    expect(overdue).not.toContainEqual([third.vehicleId, []]);
    expect(idsOf(now.decisions, 'decisionId')[0]).toBe(third.decisionId);
  });

  it('is what the blades showed for the blades: the functional answer they made valid rested on them', async () => {
    const answer = await consequences(story.bladesId);
    expect(answer.readings).toBe(4);
    const checks = new Set(idsOf(answer.verdicts, 'checkId'));
    expect([...checks].sort()).toEqual(['idle-switch-closing-point', 'shaft-moves-switch']);
    expect(answer.assessments).toHaveLength(4);
    expect(answer.decisions).toHaveLength(4);
  });

  it('keeps showing a decision whose reading was withdrawn afterwards: it rested on it', async () => {
    const made = await assessed('2026-03-07');
    const readings = await api.call(
      'GET',
      `/v1/readings?inspectionId=${made.inspectionId}&characteristic=${play}`,
      {
        as: story.technician,
      },
    );
    for (const { id } of readings.body.items) {
      const taken = await story.post(
        `/v1/readings/${id}/withdrawals`,
        { reason: 'read on the van beside it' },
        story.technician,
        '"1"',
      );
      expect(taken.status).toBe(201);
    }
    const now = await consequences(story.dialId);
    expect(idsOf(now.decisions, 'decisionId')).toContain(made.decisionId);
    expect(idsOf(now.verdicts, 'vehicleId')).not.toContain(made.vehicleId);
    const again = await story.assess(made.vehicleId, made.jobId);
    const before = (await api.call('GET', `/v1/assessments/${made.assessmentId}`, { as: story.desk })).body;
    expect(JSON.stringify(again.body)).not.toContain(readings.body.items[0].id);
    expect(JSON.stringify(before)).toContain(readings.body.items[0].id);
  });

  it('is asked as it was known at a moment, and is not for another shop', async () => {
    const long = await consequences(story.dialId, '?asOf=2020-01-01T00:00:00Z').catch(
      (error: unknown) => error,
    );
    expect(long).toMatchObject({ status: 404 });
    const stranger = await api.openShop();
    const foreign = await api.call('GET', `/v1/instruments/${story.dialId}/consequences`, {
      as: stranger.owner,
    });
    expect(foreign.status).toBe(404);
  });
});
