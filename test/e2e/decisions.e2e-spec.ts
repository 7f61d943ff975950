import { startTestApi, type Reply, type TestApi } from '../support/api.js';
import {
  freeLinkage,
  millimetres,
  no,
  openStoryShop,
  pair,
  yes,
  type ReadingInput,
  type StoryShop,
} from '../support/decide-story.js';

const eur = (amount: string) => ({ amount, currency: 'EUR' });

describe('decisions after an assessment', () => {
  let api: TestApi;
  let story: StoryShop;

  beforeAll(async () => {
    api = await startTestApi();
    story = await openStoryShop(api);
    await story.offer({ condition: 'remanufactured', price: eur('310.00'), warrantyMonths: 12 });
    await story.offer({ condition: 'new', price: eur('990.00'), promisedLeadDays: 14 });
  });
  afterAll(() => api.close());

  const assessedVan = async (plays: readonly string[], moved: typeof yes, owner?: string) => {
    const vehicleId = await story.newVan(owner);
    const { jobId } = await story.newJob(vehicleId, '2026-03-02T08:00:00Z');
    const inspectionId = await story.inspect(vehicleId, jobId, '2026-03-02T09:00:00Z');
    const play = (shown: string): ReadingInput => ({
      checkId: 'shaft-radial-play-lower',
      result: millimetres(shown),
      takenAt: '2026-03-02T09:20:00Z',
      instrumentId: story.dialId,
    });
    await story.read(inspectionId, [
      ...freeLinkage('2026-03-02T09:10:00Z'),
      ...plays.map(play),
      {
        checkId: 'idle-switch-closing-point',
        result: pair('0.06', '0.08'),
        takenAt: '2026-03-02T09:25:00Z',
        instrumentId: story.bladesId,
      },
      { checkId: 'shaft-moves-switch', result: moved, takenAt: '2026-03-02T09:30:00Z' },
    ]);
    const assessment = await story.assess(vehicleId, jobId);
    expect(assessment.status).toBe(201);
    return { vehicleId, jobId, assessment };
  };
  const worn = () => assessedVan(['0.25', '0.26', '0.27'], yes);

  const decide = (assessment: Reply, change: object = {}): Promise<Reply> =>
    story.post(
      `/v1/assessments/${assessment.body.id}/decisions`,
      {
        chosen: 'fitRemanufactured',
        decidedAt: '2026-03-02T10:00:00Z',
        decidedBy: story.desk.id,
        choiceReason: null,
        ...change,
      },
      story.desk,
    );

  it('takes what is recommended without a reason, and anything else with one', async () => {
    const { assessment } = await worn();
    expect(assessment.body.recommendation).toMatchObject({
      kind: 'recommended',
      optionId: 'fitRemanufactured',
    });
    const made = await decide(assessment);
    expect(made.status).toBe(201);
    expect(made.headers.location).toBe(`/v1/decisions/${made.body.id}`);
    const bare = await decide(assessment, { chosen: 'fitNew' });
    expect([bare.status, bare.body.code, bare.body.errors[0].pointer]).toEqual([
      422,
      'work.reasonNeeded',
      '/choiceReason',
    ]);
    const blank = await decide(assessment, { chosen: 'fitNew', choiceReason: '  ' });
    expect(blank.status).toBe(422);
    const reasoned = await decide(assessment, {
      chosen: 'fitNew',
      choiceReason: 'the owner wants a new one and pays for it',
    });
    expect(reasoned.status).toBe(201);
    const all = await api.call('GET', `/v1/assessments/${assessment.body.id}/decisions`, { as: story.desk });
    expect(all.body.items.map(({ chosen }: { chosen: string }) => chosen).sort()).toEqual([
      'fitNew',
      'fitRemanufactured',
    ]);
  });

  it('JOB rule 8: what a guard removed cannot be chosen, whatever the reason; handing over unrepaired can, with one', async () => {
    const { assessment } = await worn();
    const refused = await decide(assessment, { chosen: 'adjust', choiceReason: 'cheaper for now' });
    expect([refused.status, refused.body.code]).toEqual([409, 'decision.optionRemoved']);
    expect(refused.body.errors).toEqual([
      expect.objectContaining({ pointer: '/chosen', rule: 'functionalCriterionPositive' }),
    ]);
    const bare = await decide(assessment, { chosen: 'handOverUnrepaired' });
    expect(bare.status).toBe(422);
    const unrepaired = await decide(assessment, {
      chosen: 'handOverUnrepaired',
      choiceReason: 'the owner takes the van home on a trailer',
    });
    expect(unrepaired.status).toBe(201);
  });

  it('JOB rule 6: a valid negative leaves adjusting on offer, so it may be chosen', async () => {
    const { assessment } = await assessedVan(['0.06', '0.07', '0.07'], no);
    const chosen = await decide(assessment, { chosen: 'adjust', choiceReason: 'play is small' });
    expect(chosen.status).toBe(201);
  });

  it('refuses an option that was not considered, an unknown person, and a decision from the future', async () => {
    const { vehicleId, jobId } = await worn();
    const few = await story.assess(vehicleId, jobId, {
      options: [{ action: 'fitRemanufactured' }, { action: 'fitNew', labourHours: '2' }],
    });
    const other = await decide(few, { chosen: 'fitUsed', choiceReason: 'one lies in the yard' });
    expect([other.status, other.body.errors[0].pointer]).toEqual([422, '/chosen']);
    const nobody = await decide(few, { decidedBy: api.ids.next() });
    expect([nobody.status, nobody.body.errors[0].pointer]).toEqual([422, '/decidedBy']);
    const future = await decide(few, { decidedAt: '2199-01-01T00:00:00Z' });
    expect([future.status, future.body.errors[0].pointer]).toEqual([422, '/decidedAt']);
  });

  it('answers a decision sent again with the first one, and other content under its id with 409', async () => {
    const { assessment } = await worn();
    const id = api.ids.next();
    expect((await decide(assessment, { id })).status).toBe(201);
    expect((await decide(assessment, { id })).status).toBe(200);
    const other = await decide(assessment, { id, chosen: 'fitNew', choiceReason: 'on second thoughts' });
    expect(other.status).toBe(409);
  });

  it('JOB rule 1: a corrected decision keeps the earlier one, and the correction obeys the same guards', async () => {
    const { assessment } = await worn();
    const made = await decide(assessment);
    const url = `/v1/decisions/${made.body.id}`;
    const content = { decidedAt: '2026-03-02T10:00:00Z', decidedBy: story.desk.id };
    const guarded = {
      ...content,
      chosen: 'leave',
      choiceReason: 'no money',
      reason: 'the customer called back',
    };
    expect((await story.post(`${url}/corrections`, guarded, story.desk, '"1"')).status).toBe(409);
    const changed = { ...guarded, chosen: 'fitNew', choiceReason: 'the customer wants a new one' };
    const corrected = await story.post(`${url}/corrections`, changed, story.desk, '"1"');
    expect(corrected).toMatchObject({
      status: 201,
      body: { chosen: 'fitNew', version: 2, reason: 'the customer called back' },
    });
    const before = await api.call('GET', `${url}?asOf=${made.body.recordedAt}`, { as: story.desk });
    expect(before.body).toMatchObject({ chosen: 'fitRemanufactured', version: 1 });
    const all = await api.call('GET', `${url}/revisions`, { as: story.desk });
    expect(all.body.items).toHaveLength(2);
    expect((await story.post(`${url}/corrections`, changed, story.desk, '"1"')).status).toBe(412);
  });

  it("JOB rule 16: a fleet manager reads decisions about their own van and takes none; another customer's do not exist", async () => {
    const fleet = await story.post('/v1/customers', {
      kind: 'fleetOperator',
      contact: { name: 'Brindle Parcels' },
      downtimeCostPerDay: null,
      planningDistanceKm: null,
    });
    const manager = await story.shop.user(['fleetManager'], fleet.body.id);
    const own = await assessedVan(['0.26'], yes, fleet.body.id);
    const ownDecision = await decide(own.assessment, { choiceReason: 'agreed' });
    const { assessment } = await worn();
    const foreign = await decide(assessment);
    expect((await api.call('GET', `/v1/decisions/${ownDecision.body.id}`, { as: manager })).status).toBe(200);
    expect((await api.call('GET', `/v1/decisions/${foreign.body.id}`, { as: manager })).status).toBe(404);
    const list = await api.call('GET', `/v1/assessments/${assessment.body.id}/decisions`, { as: manager });
    expect(list.status).toBe(404);
    const tried = await story.post(
      `/v1/assessments/${own.assessment.body.id}/decisions`,
      {
        chosen: 'fitNew',
        decidedAt: '2026-03-02T10:00:00Z',
        decidedBy: manager.id,
        choiceReason: 'we pay',
      },
      manager,
    );
    expect(tried.status).toBe(403);
  });

  it('a comeback that a person confirmed counts as history of the part, a proposed one does not', async () => {
    const vehicleId = await story.newVan();
    const { jobId } = await story.newJob(vehicleId, '2026-03-02T08:00:00Z');
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
    const planned = await story.post(`/v1/jobs/${jobId}/work-lines`, line, story.technician);
    const estimate = await story.post(`/v1/jobs/${jobId}/estimates`, {
      lines: [
        {
          workLineId: planned.body.id,
          description: 'set the idle switch',
          partsAmount: '0.00',
          labourHours: '1.2',
          partCondition: null,
        },
      ],
      ceilingAmount: null,
    });
    await story.post(`/v1/jobs/${jobId}/consents`, {
      estimateId: estimate.body.id,
      answer: 'given',
      answeredAt: '2026-03-02T09:30:00Z',
      way: 'inPerson',
      declinedWork: null,
      name: null,
    });
    const done = {
      ...line,
      state: 'done',
      technicianId: story.technician.id,
      doneAt: '2026-03-02T10:00:00Z',
      minutes: 30,
      reason: 'done',
    };
    const finished = await story.post(
      `/v1/work-lines/${planned.body.id}/corrections`,
      done,
      story.technician,
      '"1"',
    );
    expect(finished.status).toBe(201);
    const proof = await api.call('GET', `/v1/jobs/${jobId}/proof`, { as: story.technician });
    for (const point of proof.body.wanted as string[]) {
      await story.post(`/v1/jobs/${jobId}/proof-points`, {
        point,
        outcome: 'passed',
        testedAt: '2026-03-02T11:00:00Z',
        testedBy: story.technician.id,
        notTestedBecause: null,
        recheckOn: null,
        note: null,
      });
    }
    const released = await story.post(`/v1/jobs/${jobId}/releases`, {
      releasedAt: '2026-03-02T12:00:00Z',
      releasedBy: story.technician.id,
      statement: 'Proved on the road.',
    });
    expect(released.status).toBe(201);
    const second = await story.newJob(vehicleId, '2026-04-13T08:00:00Z');
    const [proposed] = second.complaint.body.comebacks;
    const codesOf = (reply: Reply): string[] => reply.body.reasons.map(({ code }: { code: string }) => code);
    const before = await story.assess(vehicleId, second.jobId);
    expect(codesOf(before)).not.toContain('earlierComebacks');
    await story.post(
      `/v1/comebacks/${proposed.id}/corrections`,
      { state: 'confirmed', attribution: 'wrongRootCause', note: null, reason: 'same fault' },
      story.desk,
      '"1"',
    );
    const after = await story.assess(vehicleId, second.jobId);
    const reason = after.body.reasons.find(({ code }: { code: string }) => code === 'earlierComebacks');
    expect(reason.evidence).toEqual([
      { kind: 'comeback', id: proposed.id },
      { kind: 'job', id: jobId },
    ]);
    const chanceOf = (reply: Reply): number =>
      reply.body.options.find(({ optionId }: { optionId: string }) => optionId === 'adjust').comeback
        .probability;
    expect(chanceOf(after)).toBeGreaterThan(chanceOf(before));
  });

  it('JOB rule 13: an amount the customer has consented to needs no consent again, a dearer one does', async () => {
    const { vehicleId, jobId, assessment } = await worn();
    expect(assessment.body.recommendation.consentNeeded).toBe(true);
    const agree = async (partsAmount: string): Promise<Reply> => {
      const estimate = await story.post(`/v1/jobs/${jobId}/estimates`, {
        lines: [
          {
            workLineId: null,
            description: 'remanufactured housing',
            partsAmount,
            labourHours: '1.8',
            partCondition: 'remanufactured',
          },
        ],
        ceilingAmount: null,
      });
      await story.post(`/v1/jobs/${jobId}/consents`, {
        estimateId: estimate.body.id,
        answer: 'given',
        answeredAt: '2026-03-02T09:40:00Z',
        way: 'inPerson',
        declinedWork: null,
        name: null,
      });
      return story.assess(vehicleId, jobId);
    };
    // 310 + 1.8 x 80 = 454: 200 + 144 agreed is not enough, 310 + 144 is.
    expect((await agree('200.00')).body.recommendation.consentNeeded).toBe(true);
    expect((await agree('310.00')).body.recommendation.consentNeeded).toBe(false);
  });
});
