import { against, millimetres, openBench, type Bench } from './bench-shop.js';

const liftGate = {
  id: 'lift-gate',
  name: 'lift gate',
  edition: 1,
  positions: ['rear'],
  characteristics: [
    {
      id: 'chain-stretch',
      name: 'length of forty links under load',
      resultKind: 'number',
      quantityKind: 'length',
      canonicalUnit: 'mm',
      wearDirection: 'up',
      trend: 'wear',
      plausible: { lowest: { value: '500', unit: 'mm' }, highest: { value: '560', unit: 'mm' } },
      doubt: {
        repeatability: { value: '0.2', unit: 'mm' },
        repeatabilityDegreesOfFreedom: 8,
        setUp: { value: '0.1', unit: 'mm' },
        evidence: { tag: 'shop', citation: null },
      },
    },
  ],
};

const chainLimit = {
  id: 'chain-stretch-max',
  characteristic: 'chain-stretch',
  quantityKind: 'length',
  criterion: { kind: 'maximum', bound: { comparator: 'atMost', value: { value: '516', unit: 'mm' } } },
  advisory: null,
  severity: 'major',
  jurisdiction: null,
  applicability: {},
  conditions: {},
  exclusions: [],
  correction: null,
  edition: { validFrom: null, validTo: null, source: 'shop rule', citation: 'bench book page 4' },
  origin: 'shop',
  judging: 'allowed',
  thresholds: { inside: 0.95, outside: 0.05 },
  asWritten: 'replace the chain above 516 mm for forty links',
  note: null,
};

const chainSheet = {
  id: 'lift-gate-chain',
  title: 'lift gate chain',
  componentTypeIds: ['lift-gate'],
  checks: [
    {
      id: 'chain-stretch',
      title: 'length of forty links',
      section: 'search',
      steps: ['Hang ten kilograms on the chain.', 'Measure forty links.'],
      componentTypeId: 'lift-gate',
      characteristicId: 'chain-stretch',
      resultKind: 'number',
      instrumentKind: 'caliper',
      minutes: 5,
      limits: [chainLimit],
      outsideMeans: 'chain worn',
      whatToDo: 'Replace chain and sprockets together.',
    },
  ],
};

describe('check sheets, kinds of part and limits', () => {
  let bench: Bench;
  beforeAll(async () => {
    bench = await openBench();
    await post('/v1/component-types', { componentType: liftGate });
  });
  afterAll(() => bench.api.close());

  const post = (url: string, body: object, ifMatch?: string) =>
    bench.api.call('POST', url, { as: bench.technician, body, ifMatch });
  const get = (url: string) => bench.api.call('GET', url, { as: bench.technician });

  it("shows shipped kinds of part and the shop's own side by side", async () => {
    const list = await get('/v1/component-types');
    const codes = list.body.items.map(({ code }: { code: string }) => code);
    expect(codes).toContain('throttle-housing');
    expect(codes).toContain('lift-gate');
    expect((await get('/v1/component-types/lift-gate')).body).toMatchObject({
      origin: 'shop',
      characteristics: [{ id: 'chain-stretch', canonicalUnit: 'mm', readingsAdvised: 1 }],
    });
    expect((await get('/v1/component-types/no-such-part')).status).toBe(404);
    const other = await bench.api.openShop();
    expect((await bench.api.call('GET', '/v1/component-types/lift-gate', { as: other.owner })).status).toBe(
      404,
    );
  });

  it('refuses a kind of part with findings at their place', async () => {
    const [characteristic] = liftGate.characteristics;
    const bad = {
      ...liftGate,
      id: 'other-gate',
      characteristics: [{ ...characteristic, canonicalUnit: 'cm' }],
    };
    const answer = await post('/v1/component-types', { componentType: bad });
    expect(answer.status).toBe(422);
    expect(answer.body.errors[0]).toMatchObject({
      pointer: '/componentType/characteristics/0/canonicalUnit',
      rule: 'notCanonicalUnit',
    });
    const shipped = await post('/v1/component-types', {
      componentType: { ...liftGate, id: 'throttle-housing' },
    });
    expect(shipped.status).toBe(409);
    expect((await post('/v1/component-types', { componentType: liftGate })).status).toBe(409);
  });

  it('gives a shipped sheet whole: checks with units, limits with origin, citation and comparator, prerequisites, minutes', async () => {
    const list = await get('/v1/check-sheets?code=throttle-housing');
    expect(list.body.items).toHaveLength(1);
    const sheet = await get(`/v1/check-sheets/${list.body.items[0].id}`);
    const shaft = sheet.body.checks.find(({ id }: { id: string }) => id === 'shaft-radial-play-lower');
    expect(shaft).toMatchObject({
      instrumentKind: 'dialIndicator',
      prerequisites: ['linkage-return', 'linkage-free-play'],
      minutes: 5,
      characteristic: { canonicalUnit: 'mm', readingsAdvised: 3 },
    });
    expect(shaft.units).toContain('[in_i]');
    expect(shaft.limits[1]).toMatchObject({
      id: 'shaft-radial-play-lower-wear',
      origin: 'judgement',
      criterion: { kind: 'maximum', bound: { comparator: 'atMost', value: { value: '0.20', unit: 'mm' } } },
      edition: { citation: 'judgement, no source' },
    });
  });

  it('makes the next version when the same code is sent again, changes none, and answers a repeat with the first', async () => {
    const id = bench.api.ids.next();
    const first = await post('/v1/check-sheets', { id, checkSheet: chainSheet });
    expect([first.status, first.body.sheetVersion]).toEqual([201, 1]);
    expect((await post('/v1/check-sheets', { id, checkSheet: chainSheet })).status).toBe(200);
    const second = await post('/v1/check-sheets', {
      checkSheet: { ...chainSheet, title: 'lift gate chain and hooks' },
    });
    expect(second.body.sheetVersion).toBe(2);
    expect((await get(`/v1/check-sheets/${id}`)).body.title).toBe('lift gate chain');
    const list = await get('/v1/check-sheets?code=lift-gate-chain');
    expect(list.body.items).toHaveLength(2);
  });

  it('refuses a sheet with findings that point into it', async () => {
    const [check] = chainSheet.checks;
    const bad = {
      ...chainSheet,
      checks: [
        { ...check, prerequisites: ['no-such-check'], characteristicId: 'no-such-thing' },
        { ...check, id: 'raised', requiredStates: ['vehicleRaised'] },
      ],
    };
    const answer = await post('/v1/check-sheets', { checkSheet: bad });
    expect(answer.status).toBe(422);
    const found = answer.body.errors.map(
      ({ pointer, rule }: { pointer: string; rule: string }) => `${pointer} ${rule}`,
    );
    expect(found).toContain('/checkSheet/checks/0/prerequisites/0 prerequisiteUnknown');
    expect(found).toContain('/checkSheet/checks/0/characteristicId characteristicUnknown');
    expect(found).toContain('/checkSheet/checks/1/cautions cautionMissing');
  });

  it("judges a part of the shop's own by its own sheet, with no code written for it", async () => {
    const sheet = await post('/v1/check-sheets', { checkSheet: { ...chainSheet, id: 'chain-only' } });
    const inspectionId = await bench.inspection(await bench.van(), null, { checkSheetId: sheet.body.id });
    const caliper = await post('/v1/instruments', {
      kind: 'caliper',
      name: 'caliper 1',
      serial: null,
      retiredOn: null,
      errorModel: { kind: 'maximumPermissibleError', limit: { value: '0.05', unit: 'mm' } },
      resolution: { value: '0.05', unit: 'mm' },
    });
    const more = { instrumentId: caliper.body.id };
    const good = await bench.read(inspectionId, 'chain-stretch', millimetres('510'), more);
    expect(against(good, 'chain-stretch-max')).toMatchObject({ outcome: 'inside', basis: 'judged' });
    expect(good.body.trendWorthy).toBe(true);
    const part = await get(`/v1/fitted-parts/${good.body.fittedPartId}`);
    expect(part.body).toMatchObject({ componentType: 'lift-gate', position: 'rear' });
    const far = await bench.read(inspectionId, 'chain-stretch', millimetres('5160'), more);
    expect(against(far, 'chain-stretch-max')).toMatchObject({ reason: 'valueToConfirm' });
  });

  it("lets a limit of the shop stand before the sheet's, and keeps the edition a verdict used", async () => {
    const own = {
      ...chainLimit,
      id: 'shop-shaft-play-max',
      characteristic: 'shaft-radial-play-upper',
      criterion: { kind: 'maximum', bound: { comparator: 'atMost', value: { value: '0.12', unit: 'mm' } } },
      asWritten: 're-bush above 0.12 mm',
    };
    const made = await post('/v1/limits', { limit: own });
    expect(made.status).toBe(201);
    const inspectionId = await bench.inspection(await bench.van());
    await bench.linkagePassed(inspectionId);
    const reading = await bench.read(inspectionId, 'shaft-radial-play-upper', millimetres('0.19'), {
      instrumentId: bench.dialId,
    });
    expect(against(reading, 'shop-shaft-play-max')).toMatchObject({
      outcome: 'outside',
      limit: { origin: 'shop', citation: 'bench book page 4', asWritten: 're-bush above 0.12 mm' },
    });
    expect(against(reading, 'shaft-radial-play-upper-wear')).toBeUndefined();
    const wider = {
      ...own,
      criterion: { kind: 'maximum', bound: { comparator: 'atMost', value: { value: '0.30', unit: 'mm' } } },
    };
    const url = `/v1/limits/${made.body.id}`;
    const corrected = await post(
      `${url}/corrections`,
      { limit: wider, reason: 'agreed with the owner' },
      '"1"',
    );
    expect([corrected.status, corrected.body.version]).toEqual([201, 2]);
    const kept = await get(`/v1/readings/${reading.body.id}/verdicts`);
    expect(against(kept, 'shop-shaft-play-max').outcome).toBe('outside');
    const next = await bench.read(inspectionId, 'shaft-radial-play-upper', millimetres('0.19'), {
      instrumentId: bench.dialId,
    });
    expect(against(next, 'shop-shaft-play-max').outcome).toBe('inside');
    const all = await get(`${url}/revisions`);
    expect(all.body.items).toHaveLength(2);
  });

  it("lists every shipped limit once, page by page, and the shop's own in its place", async () => {
    const ids: string[] = [];
    let cursor: string | null = null;
    do {
      const page = await get(`/v1/limits?pageSize=40${cursor === null ? '' : `&cursor=${cursor}`}`);
      ids.push(...page.body.items.map(({ limit }: { limit: { id: string } }) => limit.id));
      cursor = page.body.nextCursor;
    } while (cursor !== null);
    expect(ids).toEqual([...new Set(ids)].sort((a, b) => (a < b ? -1 : 1)));
    expect(ids.length).toBeGreaterThan(100);
    expect(ids).toContain('no-fuel-leak');
    const shaft = await get('/v1/limits?characteristic=shaft-radial-play-lower');
    expect(shaft.body.items.map(({ limit }: { limit: { id: string } }) => limit.id)).toEqual([
      'shaft-radial-play-lower-advisory',
      'shaft-radial-play-lower-wear',
    ]);
  });

  it('judges nothing by a limit from memory until the shop has confirmed it', async () => {
    const listed = await get('/v1/limits?pageSize=200');
    const open = listed.body.items
      .map(({ limit }: { limit: typeof chainLimit }) => limit)
      .find(
        (limit: typeof chainLimit) =>
          limit.judging === 'notUntilConfirmed' && limit.criterion.kind === 'maximum',
      );
    const evaluate = () =>
      post('/v1/readings/evaluations', {
        limitId: open.id,
        readings: [{ kind: 'number', shown: '0', unit: open.criterion.bound.value.unit }],
      });
    expect((await evaluate()).body.judgement).toMatchObject({
      outcome: 'notJudged',
      reason: 'limitNotConfirmed',
    });
    const confirmed = await post('/v1/limits', { limit: { ...open, judging: 'allowed' } });
    expect(confirmed.status).toBe(201);
    expect((await evaluate()).body.judgement.reason).not.toBe('limitNotConfirmed');
    const twice = await post('/v1/limits', { limit: { ...open, judging: 'allowed' } });
    expect([twice.status, twice.body.errors[0].pointer]).toEqual([409, '/limit/id']);
  });

  it('refuses a limit for nothing known, of another kind of quantity, or badly formed, and says where', async () => {
    const nothing = await post('/v1/limits', {
      limit: { ...chainLimit, id: 'x-1', characteristic: 'no-such-thing' },
    });
    expect([nothing.status, nothing.body.errors[0].pointer]).toEqual([422, '/limit/characteristic']);
    const voltage = {
      ...chainLimit,
      id: 'x-2',
      quantityKind: 'voltage',
      criterion: { kind: 'maximum', bound: { comparator: 'atMost', value: { value: '1', unit: 'V' } } },
    };
    const other = await post('/v1/limits', { limit: voltage });
    expect([other.status, other.body.errors[0].pointer]).toEqual([422, '/limit/quantityKind']);
    const turned = await post('/v1/limits', {
      limit: {
        ...chainLimit,
        id: 'x-3',
        criterion: { kind: 'maximum', bound: { comparator: 'atLeast', value: { value: '1', unit: 'mm' } } },
      },
    });
    expect([turned.status, turned.body.errors[0].pointer]).toEqual([
      422,
      '/limit/criterion/bound/comparator',
    ]);
  });

  it('offers the lists of the catalogue: symptoms, causes, proof points, conditions, units', async () => {
    for (const [list, id] of [
      ['symptoms', 'idle-rises-with-ac'],
      ['causes', 'shaft-worn'],
      ['proof-points', 'linkage-and-pedal'],
      ['operating-conditions', 'engineState'],
    ]) {
      const answer = await get(`/v1/${String(list)}`);
      expect(answer.body.items.map((item: { id: string }) => item.id)).toContain(id);
    }
    const units = await get('/v1/units');
    const vacuum = units.body.items.find(({ kind }: { kind: string }) => kind === 'vacuum');
    expect(vacuum).toMatchObject({ canonicalUnit: 'kPa', lowest: '0' });
    expect(vacuum.units).toContain("[in_i'Hg]");
  });

  it('lets a fleet manager read sheets, and write none', async () => {
    const manager = await bench.shop.user(['developer']);
    const answer = await bench.api.call('POST', '/v1/check-sheets', {
      as: manager,
      body: { checkSheet: chainSheet },
    });
    expect(answer.status).toBe(403);
  });
});
