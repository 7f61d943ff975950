import { openTrial, type Trial, type TrialAnswer } from '../../../../test/support/http.js';
import { arrived, thingId, trialControllers } from '../../../../test/support/trial-things.js';

const things = '/v1/trial-things';

describe('values', () => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await openTrial(trialControllers);
  });
  afterAll(() => trial.app.close());

  const post = (payload: string): Promise<TrialAnswer> =>
    trial.request({
      method: 'POST',
      url: things,
      headers: { ...trial.owner, 'content-type': 'application/json' },
      payload,
    });
  const create = (members: object): Promise<TrialAnswer> =>
    post(JSON.stringify({ name: 'lamp', ...members }));
  const patch = (payload: object): Promise<TrialAnswer> =>
    trial.request({
      method: 'PATCH',
      url: `${things}/${thingId}`,
      headers: { ...trial.owner, 'content-type': 'application/merge-patch+json', 'if-match': '"3"' },
      payload: JSON.stringify(payload),
    });
  /** Status and the places of the faults. */
  const refusal = ({ status, body }: TrialAnswer) => [
    status,
    ...((body.errors ?? []) as { pointer: string; rule: string }[]).map(
      ({ pointer, rule }) => `${pointer} ${rule}`,
    ),
  ];

  it('API row 24: a literal NaN is 400, a number where decimal text is due and text that is too long are 422', async () => {
    expect(refusal(await post('{"name":"lamp","exact":NaN}'))).toEqual([400]);
    expect(refusal(await post('{"name":"lamp","exact":10.000000000000000000001}'))).toEqual([
      422,
      '/exact text',
    ]);
    expect(refusal(await post('{"name":"lamp","exact":1e309}'))).toEqual([422, '/exact text']);
    expect(refusal(await create({ exact: '9'.repeat(400) }))).toEqual([422, '/exact length']);
    expect(refusal(await create({ exact: '1e3' }))).toEqual([422, '/exact pattern']);
    expect(refusal(await post('{"name":"lamp","seats":9007199254740993}'))).toEqual([422, '/seats integer']);
    expect(refusal(await post('{"name":"lamp","seats":1e309}'))).toEqual([422, '/seats integer']);
    expect((await create({ exact: '10.001' })).body.exact).toBe('10.001');
  });

  it('API row 25: a value beyond what its column holds is 422 from the schema', async () => {
    expect(refusal(await create({ seats: 2_147_483_648 }))).toEqual([422, '/seats range']);
    expect(refusal(await create({ exact: '1000000000' }))).toEqual([422, '/exact pattern']);
    expect(refusal(await create({ exact: '0.0001' }))).toEqual([422, '/exact pattern']);
  });

  it('API row 26: a quantity without its unit, with a unit of another kind, or in part is 422', async () => {
    expect(refusal(await create({ odometer: { value: '120000' } }))).toEqual([
      422,
      '/odometer/unit required',
    ]);
    expect(refusal(await create({ odometer: { value: '120000', unit: 'kg' } }))).toEqual([
      422,
      '/odometer/unit oneOf',
    ]);
    expect(refusal(await create({ odometer: '120000 km' }))).toEqual([422, '/odometer object']);
    expect(refusal(await create({ odometer: [] }))).toEqual([422, '/odometer object']);
    expect(refusal(await patch({ odometer: { unit: 'km' } }))).toEqual([422, '/odometer/value required']);
    expect((await create({ odometer: { value: '120000', unit: '[mi_i]' } })).body.odometer).toEqual({
      value: '120000',
      unit: '[mi_i]',
    });
  });

  it('API row 27: money without a currency, or with one that does not exist, is 422', async () => {
    expect(refusal(await create({ price: { amount: '129.90' } }))).toEqual([422, '/price/currency required']);
    expect(refusal(await create({ price: { amount: '129.90', currency: 'eur' } }))).toEqual([
      422,
      '/price/currency oneOf',
    ]);
    expect(refusal(await create({ price: { amount: 129.9, currency: 'EUR' } }))).toEqual([
      422,
      '/price/amount text',
    ]);
  });

  it.each([
    ['zero-width', 'AB\u200b12'],
    ['full-width', '\uff21\uff2212'],
    ['Cyrillic', '\u0410\u041212'],
    ['newline', 'AB\n12'],
  ])('API row 28: a chassis number with %s characters is 422', async (_what, chassisNumber) => {
    expect(refusal(await create({ chassisNumber }))).toEqual([422, '/chassisNumber pattern']);
  });

  it('API row 28: a chassis number of any length, with any Latin letters, is taken as read', async () => {
    for (const chassisNumber of ['IOQ', 'A1', 'ZZZTEST7XZA000014', 'zzz test-7.1/2*']) {
      expect((await create({ chassisNumber })).body.chassisNumber).toBe(chassisNumber);
    }
  });

  it.each([
    ['without an offset', '2031-05-04T09:30:00'],
    ['on 30 February', '2031-02-30T09:30:00Z'],
    ['on 29 February of an ordinary year', '2031-02-29T09:30:00Z'],
    ['at 24:00', '2031-05-04T24:00:00Z'],
    ['at second 60', '2031-05-04T09:30:60Z'],
    ['with seven fraction digits', '2031-05-04T09:30:00.1234567Z'],
    ['with a space', '2031-05-04 09:30:00Z'],
    ['as a bare date', '2031-05-04'],
    ['in year 0', '0000-01-01T00:00:00Z'],
  ])('API row 30: a moment %s is 422', async (_what, takenAt) => {
    expect(refusal(await create({ takenAt }))).toEqual([422, '/takenAt instant']);
  });

  it('API row 30: a moment with an offset, on a real leap day, is taken', async () => {
    expect((await create({ takenAt: '2032-02-29T23:59:59.123456+05:30' })).status).toBe(201);
    expect(refusal(await create({ dueOn: '2031-02-29' }))).toEqual([422, '/dueOn localDate']);
  });

  it('API row 33: a rate that cannot be computed says so, with its counts', async () => {
    const { body } = await trial.request({
      method: 'GET',
      url: `${things}/${thingId}`,
      headers: trial.owner,
    });
    expect(body.rate).toEqual({ kind: 'insufficientData', events: 0, atRisk: 0, needed: 10 });
    expect(body.share).toBeNull();
  });

  it('API row 34: null on a required member of a merge patch is 422, on a nullable one it is kept, and {} changes nothing', async () => {
    expect(refusal(await patch({ name: null }))).toEqual([422, '/name notNull']);
    expect((await patch({ chassisNumber: null })).body).toMatchObject({ chassisNumber: null, name: 'lamp' });
    expect(Object.keys(arrived.body ?? {})).toEqual(['chassisNumber']);
    expect((await patch({})).status).toBe(200);
    expect(Object.keys(arrived.body ?? {})).toEqual([]);
    expect(refusal(await patch({ words: null }))).toEqual([422, '/words notNull']);
    expect((await patch({ words: ['new'] })).body.words).toEqual(['new']);
  });

  it('tells all faults at once, without the refused values, in words of the interface', async () => {
    const { body } = await create({
      name: 'canary '.repeat(9),
      kind: 'canary',
      marks: { 'a-b': 'canary' },
      extra: 'canary',
    });
    const places = (body.errors as { pointer: string; rule: string }[]).map(
      ({ pointer, rule }) => `${pointer} ${rule}`,
    );
    expect(new Set(places)).toEqual(
      new Set(['/name length', '/kind oneOf', '/marks oneOf', '/extra unknownMember']),
    );
    expect(JSON.stringify(body)).not.toContain('canary');
  });
});
