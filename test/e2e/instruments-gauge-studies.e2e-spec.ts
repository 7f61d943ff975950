import { against, millimetres, openBench, type Bench } from './bench-shop.js';
import type { TestUser } from '../support/api.js';

const lower = 'shaft-radial-play-lower';
const wear = 'shaft-radial-play-lower-wear';

/** Two housings, two people, each twice: every pair of repeats differs by 0.02 mm. */
const measurements = ['housing-1', 'housing-2'].flatMap((object, row) =>
  ['Ansgar', 'Belinda'].flatMap((appraiser) =>
    [0.1, 0.12].map((value) => ({ object, appraiser, value: Number((value + 0.1 * row).toFixed(2)) })),
  ),
);

describe('gauge studies', () => {
  let bench: Bench;
  beforeAll(async () => {
    bench = await openBench();
  });
  afterAll(() => bench.api.close());

  const study = (more: object = {}) => ({
    characteristic: lower,
    instrumentKind: 'dialIndicator',
    studiedOn: '2031-05-02',
    design: 'crossed',
    poolingLevel: null,
    unit: 'mm',
    measurements,
    inUse: true,
    note: null,
    ...more,
  });
  const post = (url: string, body: object, ifMatch?: string) =>
    bench.api.call('POST', url, {
      as: bench.technician,
      body,
      ...(ifMatch === undefined ? {} : { ifMatch }),
    });
  const get = (url: string, as: TestUser = bench.technician) => bench.api.call('GET', url, { as });

  const threeReadings = async () => {
    const inspectionId = await bench.inspection(await bench.van());
    await bench.linkagePassed(inspectionId);
    let last = await bench.read(inspectionId, lower, millimetres('0.18'), { instrumentId: bench.dialId });
    for (const shown of ['0.17', '0.19'])
      last = await bench.read(inspectionId, lower, millimetres(shown), { instrumentId: bench.dialId });
    return last;
  };
  // u of the instrument, of its step and of mounting it: 0.015 mm rectangular, 0.01 mm, 0.015 mm.
  const fixed = 0.015 ** 2 / 3 + 0.01 ** 2 / 12 + 0.015 ** 2;

  it('feeds the doubt about readings with its repeatability, pooled by degrees of freedom, and the verdict names it', async () => {
    const before = await threeReadings();
    expect(against(before, wear).gaugeStudyId).toBeNull();
    const made = await post('/v1/gauge-studies', study());
    expect(made.status).toBe(201);
    // By hand: eight repeats 0.01 mm off their cell's mean give a sum of squares of 0.0008 mm2 with 4 degrees of freedom.
    // The interaction's is 0 with 1: F = 0, p = 1, hence pooled: s2 = 0.0008 / 5 = 0.00016 mm2.
    expect(made.body).toMatchObject({
      result: { kind: 'crossed', isInteractionPooled: true },
      repeatability: { standardDeviation: expect.closeTo(Math.sqrt(0.00016), 12), degreesOfFreedom: 5 },
      feedsBudgets: true,
    });
    const after = against(await threeReadings(), wear);
    expect(after.gaugeStudyId).toBe(made.body.id);
    // Own repeats: s2 = 0.0001 with 2. Pooled: (5 x 0.00016 + 2 x 0.0001) / 7 = 0.001 / 7, of the mean of three a third.
    const repeats = 0.001 / 7 / 3;
    expect(after.standardUncertainty).toBeCloseTo(Math.sqrt(fixed + repeats), 9);
    // Welch and Satterthwaite: only the repeats have finite degrees of freedom, 7.
    expect(after.effectiveDegreesOfFreedom).toBeCloseTo((7 * (fixed + repeats) ** 2) / repeats ** 2, 4);
    const still = await get(`/v1/readings/${before.body.id}/verdicts`);
    expect(against(still, wear).gaugeStudyId).toBeNull();
    const evaluated = await post('/v1/readings/evaluations', {
      limitId: wear,
      readings: [millimetres('0.18')],
      instrumentId: bench.dialId,
      context: {},
    });
    expect(evaluated.body.judgement.gaugeStudyId).toBe(made.body.id);
    const alone = 0.00016;
    expect(evaluated.body.judgement.standardUncertainty).toBeCloseTo(Math.sqrt(fixed + alone), 9);
  });

  it('is of one kind of instrument: readings with another one do without it', async () => {
    const other = await post('/v1/instruments', {
      kind: 'feelerBlades',
      name: 'blades in place of a dial',
      serial: null,
      retiredOn: null,
      errorModel: { kind: 'maximumPermissibleError', limit: { value: '0.015', unit: 'mm' } },
      resolution: { value: '0.01', unit: 'mm' },
    });
    const inspectionId = await bench.inspection(await bench.van());
    await bench.linkagePassed(inspectionId);
    const reading = await bench.read(inspectionId, lower, millimetres('0.18'), {
      instrumentId: other.body.id,
    });
    expect(against(reading, wear).gaugeStudyId).toBeNull();
  });

  it('gives way to a later study, and out of use to the one before; both are kept', async () => {
    const first = (await get(`/v1/gauge-studies?characteristic=${lower}`)).body.items[0];
    const micrometres = measurements.map((each) => ({ ...each, value: Math.round(each.value * 1000) }));
    const later = await post(
      '/v1/gauge-studies',
      study({ design: 'nested', unit: 'um', measurements: nested(micrometres), studiedOn: '2031-05-03' }),
    );
    // Nested by hand: the same eight repeats, 4 degrees of freedom: s2 = 0.0008 / 4 = 0.0002 mm2, s = 14.14 um.
    expect(later.body.repeatability).toEqual({
      standardDeviation: expect.closeTo(Math.sqrt(200), 9),
      degreesOfFreedom: 4,
    });
    expect((await get(`/v1/gauge-studies/${first.id}`)).body.feedsBudgets).toBe(false);
    const judged = against(await threeReadings(), wear);
    const repeats = (4 * 0.0002 + 2 * 0.0001) / 6 / 3;
    expect([judged.gaugeStudyId, judged.standardUncertainty]).toEqual([
      later.body.id,
      expect.closeTo(Math.sqrt(fixed + repeats), 9),
    ]);
    const url = `/v1/gauge-studies/${later.body.id}`;
    const { measurements: values } = later.body;
    const unused = study({
      design: 'nested',
      unit: 'um',
      measurements: values,
      studiedOn: '2031-05-03',
      inUse: false,
      reason: 'the stand was loose',
    });
    expect((await post(`${url}/corrections`, unused)).status).toBe(428);
    const corrected = await post(`${url}/corrections`, unused, '"1"');
    expect([corrected.status, corrected.body.version, corrected.body.feedsBudgets]).toEqual([201, 2, false]);
    expect((await get(`/v1/gauge-studies/${first.id}`)).body.feedsBudgets).toBe(true);
    expect(against(await threeReadings(), wear).gaugeStudyId).toBe(first.id);
    const revisions = (await get(`${url}/revisions`)).body.items;
    expect(
      revisions.map(({ inUse, reason }: { inUse: boolean; reason: string | null }) => [inUse, reason]),
    ).toEqual([
      [true, null],
      [false, 'the stand was loose'],
    ]);
    const { items } = (await get('/v1/gauge-studies?pageSize=1')).body;
    expect(items.map(({ id }: { id: string }) => id)).toEqual([later.body.id]);
  });

  it('is stored too where it says nothing, with the reason, and feeds nothing then', async () => {
    const few = await post(
      '/v1/gauge-studies',
      study({ studiedOn: '2031-05-04', measurements: measurements.slice(0, 2) }),
    );
    expect([few.status, few.body.result.kind, few.body.repeatability, few.body.feedsBudgets]).toEqual([
      201,
      'insufficientData',
      null,
      false,
    ]);
    const uneven = await post('/v1/gauge-studies', study({ measurements: measurements.slice(0, -1) }));
    expect(uneven.body.result).toEqual({
      kind: 'notBalanced',
      object: 'housing-2',
      appraiser: 'Belinda',
      count: 1,
    });
  });

  it('works a study by averages and ranges: mean range 0.02 mm x 0.8862 with about nine tenths of 4 degrees of freedom', async () => {
    const made = await post(
      '/v1/gauge-studies',
      study({ design: 'averageAndRange', studiedOn: '2031-05-01' }),
    );
    expect(made.body.repeatability).toEqual({
      standardDeviation: expect.closeTo(0.02 * 0.8862, 9),
      degreesOfFreedom: expect.closeTo(3.6, 9),
    });
  });

  it('refuses what no study can be of, and says where and what to do', async () => {
    const cases: [object, number, string][] = [
      [study({ characteristic: 'shaft-shine' }), 422, '/characteristic'],
      [study({ characteristic: 'idle-switch-closing-point' }), 422, '/characteristic'],
      [study({ unit: 'kPa' }), 422, '/unit'],
      [study({ studiedOn: '2031-06-01' }), 422, '/studiedOn'],
      [study({ design: 'nested', poolingLevel: 0.1 }), 422, '/poolingLevel'],
      [study({ measurements: [] }), 422, '/measurements'],
    ];
    for (const [body, status, pointer] of cases) {
      const refused = await post('/v1/gauge-studies', body);
      expect([refused.status, refused.body.errors[0].pointer]).toEqual([status, pointer]);
    }
  });

  it('API row 32: the same id again is the first study; other content is refused', async () => {
    const id = bench.api.ids.next();
    const body = study({ id, studiedOn: '2031-04-01' });
    expect((await post('/v1/gauge-studies', body)).status).toBe(201);
    expect((await post('/v1/gauge-studies', body)).status).toBe(200);
    expect((await post('/v1/gauge-studies', { ...body, note: 'again' })).status).toBe(409);
  });

  it('JOB rule 16: another shop and a fleet manager see none of them', async () => {
    const [{ id }] = (await get('/v1/gauge-studies')).body.items;
    const stranger = await bench.api.openShop();
    expect((await get(`/v1/gauge-studies/${id}`, stranger.owner)).status).toBe(404);
    expect((await get('/v1/gauge-studies', stranger.owner)).body.items).toEqual([]);
    const customer = await bench.api.call('POST', '/v1/customers', {
      as: bench.shop.owner,
      body: {
        kind: 'fleetOperator',
        contact: { name: 'Brindlewick Vans' },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      },
    });
    const manager = await bench.shop.user(['fleetManager'], customer.body.id);
    expect((await get('/v1/gauge-studies', manager)).status).toBe(403);
  });
});

/** The same values with objects that belong to one appraiser each. */
function nested<T extends { object: string; appraiser: string }>(values: readonly T[]): readonly T[] {
  return values.map((each) => ({ ...each, object: `${each.object}-${each.appraiser}` }));
}
