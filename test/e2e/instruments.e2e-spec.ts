import { against, millimetres, openBench, type Bench } from './bench-shop.js';

const lower = 'shaft-radial-play-lower';
const wear = 'shaft-radial-play-lower-wear';

describe('instruments', () => {
  let bench: Bench;
  beforeAll(async () => {
    bench = await openBench();
  });
  afterAll(() => bench.api.close());

  const dial = (more: object = {}) => ({
    kind: 'dialIndicator',
    name: 'dial 7',
    serial: 'S 7',
    retiredOn: null,
    errorModel: { kind: 'maximumPermissibleError', limit: { value: '0.015', unit: 'mm' } },
    resolution: { value: '0.01', unit: 'mm' },
    ...more,
  });
  const post = (url: string, body: object, ifMatch?: string) =>
    bench.api.call('POST', url, { as: bench.technician, body, ifMatch });
  const calibrated = (id: string, calibratedOn: string, dueOn: string | null, passed = true) =>
    post(`/v1/instruments/${id}/calibrations`, {
      calibratedOn,
      dueOn,
      passed,
      certificate: null,
      note: null,
    });
  const standing = async (id: string, asOf?: string) => {
    const query = asOf === undefined ? '' : `?asOf=${asOf}`;
    const list = await bench.api.call('GET', `/v1/instruments${query}`, { as: bench.technician });
    return list.body.items.find((item: { id: string }) => item.id === id)?.standing;
  };

  it('records an instrument with its error model and answers every model as it was sent', async () => {
    const mm = (value: string) => ({ value, unit: 'mm' });
    const models = [
      { kind: 'maximumPermissibleError', limit: mm('0.015') },
      { kind: 'percentOfReadingPlusDigits', percent: '0.5', digits: 3, digit: mm('0.01') },
      { kind: 'accuracyClassOfSpan', accuracyClass: '1.6', span: mm('100') },
      { kind: 'bladeSet', blades: [mm('0.05'), mm('0.10')], permissibleError: mm('0.005') },
      { kind: 'expandedUncertainty', expanded: mm('0.02'), coverageFactor: 2, degreesOfFreedom: null },
      { kind: 'expandedUncertainty', expanded: mm('0.02'), coverageFactor: 2.3, degreesOfFreedom: 8 },
      { kind: 'unknown' },
    ];
    for (const errorModel of models) {
      const made = await post('/v1/instruments', dial({ errorModel }));
      expect(made.status).toBe(201);
      const shown = await bench.api.call('GET', `/v1/instruments/${made.body.id}`, { as: bench.technician });
      expect(shown.body.errorModel).toEqual(errorModel);
    }
  });

  it('refuses figures that are negative, of different kinds, or a step of zero', async () => {
    const cases: [object, string][] = [
      [dial({ resolution: { value: '0', unit: 'mm' } }), '/resolution/value'],
      [dial({ resolution: { value: '0.01', unit: 'V' } }), '/errorModel/limit/unit'],
      [
        dial({ errorModel: { kind: 'maximumPermissibleError', limit: { value: '-0.1', unit: 'mm' } } }),
        '/errorModel/limit',
      ],
    ];
    for (const [body, pointer] of cases) {
      const answer = await post('/v1/instruments', body);
      expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, pointer]);
    }
  });

  it('says whether a calibration holds: never, in calibration, due, overdue, failed, and as it stood earlier', async () => {
    const { body } = await post('/v1/instruments', dial());
    expect((await standing(body.id)).kind).toBe('neverCalibrated');
    await calibrated(body.id, '2031-01-10', '2032-01-10');
    expect(await standing(body.id)).toEqual({ kind: 'inCalibration', dueOn: '2032-01-10', daysLeft: 251 });
    const soon = await post('/v1/instruments', dial());
    await calibrated(soon.body.id, '2030-05-10', '2031-05-10');
    expect(await standing(soon.body.id)).toEqual({ kind: 'due', dueOn: '2031-05-10', daysLeft: 6 });
    const late = await post('/v1/instruments', dial());
    await calibrated(late.body.id, '2030-05-01', '2031-05-01');
    expect(await standing(late.body.id)).toEqual({ kind: 'overdue', dueOn: '2031-05-01', daysLeft: -3 });
    const bad = await post('/v1/instruments', dial());
    await calibrated(bad.body.id, '2031-05-02', null, false);
    expect((await standing(bad.body.id)).kind).toBe('failed');
  });

  it('names an instrument that was overdue on the day in the verdict, and judges all the same', async () => {
    const late = await post('/v1/instruments', dial());
    await calibrated(late.body.id, '2030-05-01', '2031-05-01');
    const inspectionId = await bench.inspection(await bench.van());
    await bench.linkagePassed(inspectionId);
    const reading = await bench.read(inspectionId, lower, millimetres('0.05'), {
      instrumentId: late.body.id,
    });
    expect(against(reading, wear)).toMatchObject({ outcome: 'inside', overdueInstrumentIds: [late.body.id] });
    const fine = await bench.read(inspectionId, 'shaft-radial-play-upper', millimetres('0.05'), {
      instrumentId: bench.dialId,
    });
    expect(against(fine, 'shaft-radial-play-upper-wear').overdueInstrumentIds).toEqual([]);
  });

  it('lists the verdicts that rested on an instrument since its last passed calibration', async () => {
    const { body } = await post('/v1/instruments', dial());
    const inspectionId = await bench.inspection(await bench.van());
    await bench.linkagePassed(inspectionId);
    await bench.read(inspectionId, lower, millimetres('0.05'), { instrumentId: body.id });
    const all = await bench.api.call('GET', `/v1/instruments/${body.id}/verdicts`, { as: bench.technician });
    expect(all.body.lastGoodCalibrationOn).toBeNull();
    expect(all.body.items.map(({ limit }: { limit: { id: string } }) => limit.id).sort()).toEqual([
      'shaft-radial-play-lower-advisory',
      wear,
    ]);
    await calibrated(body.id, '2031-05-04', null);
    const same = await bench.api.call('GET', `/v1/instruments/${body.id}/verdicts`, { as: bench.technician });
    expect([same.body.lastGoodCalibrationOn, same.body.items.length]).toEqual(['2031-05-04', 2]);
    bench.clock.moveOn(2 * 24 * 60 * 60_000);
    await calibrated(body.id, '2031-05-06', null);
    const none = await bench.api.call('GET', `/v1/instruments/${body.id}/verdicts`, { as: bench.technician });
    expect(none.body.items).toEqual([]);
    await calibrated(body.id, '2031-05-06', null, false);
  });

  it('treats an instrument of another quantity as unknown, and warns of one of another kind', async () => {
    const meter = await post(
      '/v1/instruments',
      dial({
        kind: 'ohmmeter',
        errorModel: { kind: 'maximumPermissibleError', limit: { value: '0.1', unit: 'Ohm' } },
        resolution: { value: '0.1', unit: 'Ohm' },
      }),
    );
    const inspectionId = await bench.inspection(await bench.van());
    await bench.linkagePassed(inspectionId);
    const reading = await bench.read(inspectionId, lower, millimetres('0.05'), {
      instrumentId: meter.body.id,
    });
    expect(against(reading, wear).basis).toBe('faceValue');
    expect(reading.body.warnings.map(({ code }: { code: string }) => code)).toEqual([
      'instrumentOfOtherKind',
    ]);
  });

  it('JOB rule 1: a correction of an instrument keeps the earlier revision', async () => {
    const { body } = await post('/v1/instruments', dial());
    const url = `/v1/instruments/${body.id}`;
    const retired = { ...dial({ retiredOn: '2031-05-01' }), reason: 'dropped on the floor' };
    expect((await post(`${url}/corrections`, retired)).status).toBe(428);
    expect((await post(`${url}/corrections`, retired, '"1"')).body).toMatchObject({
      version: 2,
      retiredOn: '2031-05-01',
    });
    const all = await bench.api.call('GET', `${url}/revisions`, { as: bench.technician });
    expect(all.body.items.map(({ retiredOn }: { retiredOn: string | null }) => retiredOn)).toEqual([
      null,
      '2031-05-01',
    ]);
  });

  it('refuses a calibration of tomorrow, and one due before it was done', async () => {
    const { body } = await post('/v1/instruments', dial());
    const tomorrow = await calibrated(body.id, '2031-06-01', null);
    expect([tomorrow.status, tomorrow.body.errors[0].pointer]).toEqual([422, '/calibratedOn']);
    const turned = await calibrated(body.id, '2031-05-01', '2031-04-01');
    expect([turned.status, turned.body.errors[0].pointer]).toEqual([422, '/dueOn']);
  });
});
