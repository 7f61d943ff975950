import { startTestApi, type Reply, type TestApi } from '../support/api.js';
import { freeLinkage, millimetres, openStoryShop, type StoryShop } from '../support/decide-story.js';
import { confirmComeback, seeAgain, settleVisit } from '../support/settled-jobs.js';

const eur = (amount: string) => ({ amount, currency: 'EUR' });

interface Option {
  optionId: string;
  comeback: { probability: number };
  expectedCost: { amount: string };
}

describe('looking back at the decisions of a shop', () => {
  let api: TestApi;
  let story: StoryShop;
  const predicted: { probability: number; cameBack: boolean; cost: number }[] = [];

  beforeAll(async () => {
    api = await startTestApi();
    story = await openStoryShop(api);
    await story.offer({ condition: 'remanufactured', price: eur('310.00'), warrantyMonths: 12 });
    await story.offer({ condition: 'new', price: eur('990.00'), promisedLeadDays: 14 });
  });
  afterAll(() => api.close());

  /** A visit in which the play is read, the van assessed, adjusting chosen, and done. */
  const adjusted = async (vehicleId: string, day: string, play: string): Promise<Option> => {
    let option: Option | undefined;
    await settleVisit(story, {
      vehicleId,
      day,
      work: { action: 'adjustSwitch' },
      before: async (jobId) => {
        const inspectionId = await story.inspect(vehicleId, jobId, `${day}T09:00:00Z`);
        await story.read(inspectionId, [
          ...freeLinkage(`${day}T09:10:00Z`),
          {
            checkId: 'shaft-radial-play-lower',
            result: millimetres(play),
            takenAt: `${day}T09:15:00Z`,
            instrumentId: story.dialId,
          },
        ]);
        const assessment = await story.assess(vehicleId, jobId);
        option = (assessment.body.options as Option[]).find(({ optionId }) => optionId === 'adjust');
        const chosen = await story.post(`/v1/assessments/${assessment.body.id}/decisions`, {
          chosen: 'adjust',
          decidedAt: `${day}T09:40:00Z`,
          decidedBy: story.technician.id,
          choiceReason: 'the owner wants it kept',
        });
        expect(chosen.status).toBe(201);
      },
    });
    return option!;
  };

  it('has nothing to say before a window has elapsed, and says so', async () => {
    const { body, status } = await story.get('/v1/back-tests');
    expect(status).toBe(200);
    expect(body).toMatchObject({ settled: 0, brier: { kind: 'insufficientData', needed: 1, got: 0 } });
    expect(body.chosenMeanExpectedCost).toBeNull();
    expect(body.rules.map(({ rule }: { rule: string }) => rule)).toContain('alwaysReplace');
  });

  it('JOB rule 10: scores settled decisions as by hand, and keeps pending ones apart', async () => {
    for (const [day, play] of [
      ['2026-03-02', '0.05'],
      ['2026-03-03', '0.15'],
    ] as const) {
      const van = await story.newVan();
      const option = await adjusted(van, day, play);
      predicted.push({
        probability: option.comeback.probability,
        cameBack: false,
        cost: Number(option.expectedCost.amount),
      });
      await seeAgain(story, van, '2026-08-10', '140000');
    }
    const back = await story.newVan();
    const option = await adjusted(back, '2026-03-04', '0.24');
    predicted.push({
      probability: option.comeback.probability,
      cameBack: true,
      cost: Number(option.expectedCost.amount),
    });
    const second = await story.newJob(back, '2026-04-13T08:00:00Z');
    await confirmComeback(story, second.complaint);
    const pending = await story.newVan();
    const day = new Date(Date.now() - 10 * 86_400_000).toISOString().slice(0, 10);
    await adjusted(pending, day, '0.05');
    await seeAgain(story, pending, new Date(Date.now() - 5 * 86_400_000).toISOString().slice(0, 10), '90000');

    const { body }: Reply = await story.get('/v1/back-tests?componentType=throttle-housing');
    expect(body).toMatchObject({ settled: 3, comebacks: 1 });
    expect(body.omitted).toMatchObject([{ reason: 'pending', count: 1 }]);
    const byHand =
      predicted.reduce((sum, { probability, cameBack }) => sum + (probability - Number(cameBack)) ** 2, 0) /
      3;
    expect(body.brier.score).toBeCloseTo(byHand, 10);
    const inClasses = body.reliability.classes.reduce(
      (sum: number, { decisions }: { decisions: number }) => sum + decisions,
      0,
    );
    expect(inClasses).toBe(3);
    const mean = predicted.reduce((sum, { cost }) => sum + cost, 0) / 3;
    expect(Number(body.chosenMeanExpectedCost.amount)).toBeCloseTo(mean, 1);
    const adjust = body.rules.find(({ rule }: { rule: string }) => rule === 'alwaysAdjust');
    expect(adjust).toMatchObject({ decisions: 3, sameAsChosen: 3, dearerThanChosen: { mean: eur('0.00') } });
    const some = await story.get(
      '/v1/back-tests?releasedFrom=2026-03-03T00:00:00Z&releasedBefore=2026-03-04T00:00:00Z',
    );
    expect(some.body).toMatchObject({ settled: 1, comebacks: 0 });
  });

  it('refuses a span that ends before it begins, and people it is not for', async () => {
    const wrong = await story.get(
      '/v1/back-tests?releasedFrom=2026-03-03T00:00:00Z&releasedBefore=2026-03-01T00:00:00Z',
    );
    expect(wrong.status).toBe(400);
    const manager = await story.shop.user(['fleetManager'], story.customerId);
    expect((await story.get('/v1/back-tests', manager)).status).toBe(403);
  });
});
