import { startTestApi, type TestApi, type TestShop } from '../support/api.js';

const eur = (amount: string) => ({ amount, currency: 'EUR' });
const doubt = { repeat: '0.02', setUp: '0.0153', bias: '0.0087' };

const offer = (offerId: string, condition: string, price: string | null, change: object = {}) => ({
  offerId,
  supplier: 'Birchmoor Castings',
  condition,
  price: price === null ? null : eur(price),
  leadTime: { kind: 'inStock' },
  ...change,
});
const toOrder = (promised: string, ...actual: string[]) => ({
  kind: 'toOrder',
  promisedDays: promised,
  delivered: actual.map((actualDays) => ({ promisedDays: promised, actualDays })),
});

const options = [
  { optionId: 'leave', action: 'leave', labourHours: '0', workshopDays: '0', offers: [] },
  { optionId: 'adjust', action: 'adjust', labourHours: '1.2', workshopDays: '0', offers: [] },
  {
    optionId: 're-bush',
    action: 'reBush',
    labourHours: '4',
    workshopDays: '2',
    offers: [offer('bushes', 'repairedOwnPart', '35.00')],
  },
  {
    optionId: 'remanufactured',
    action: 'fitRemanufactured',
    labourHours: '1.8',
    workshopDays: '0.5',
    offers: [
      offer('exchange', 'remanufactured', '310.00', {
        leadTime: toOrder('3', '3', '4', '3', '5'),
        core: { deposit: eur('80.00'), probabilityOfLosing: '0.1' },
        warrantyCoversPart: true,
      }),
    ],
  },
];

/** Play of 0.21 mm, the switch worked from 0.20 mm on; invented. */
const worn = {
  characteristic: {
    characteristicId: 'shaft-radial-play-lower',
    unit: 'mm',
    direction: 'up',
    unwornSize: '0',
    criterionSize: '0.20',
  },
  occasion: 'complaint',
  currency: 'EUR',
  planningDistanceKm: '120000',
  watchWindowKm: '5000',
  serviceIntervalKm: null,
  isUsableWhileWaiting: false,
  inspections: [
    { kmSinceFitted: '180000', instrument: 'dial-1', values: ['0.20', '0.21', '0.22'], doubt, id: 'visit-9' },
  ],
  functionalCriterion: { kind: 'notDone' },
  earlierComebacks: 0,
  safetyFindings: [],
  rates: {
    labourPerHour: eur('80.00'),
    downtimePerDay: eur('60.00'),
    comebackHandling: eur('250.00'),
    laterComplaintHours: '1',
    laterComplaintDays: '1',
  },
  options,
  furtherReadings: { count: 3, minutes: 5, wereOffered: false, doubt: null },
  declinedActions: [],
  consentCeiling: null,
};

interface Option {
  readonly optionId: string;
  readonly kind: string;
  readonly expectedCost: { readonly amount: string };
  readonly components: Readonly<Record<string, { readonly amount: string }>>;
  readonly removedBy: readonly string[];
  readonly problems: readonly { readonly code: string }[];
}

describe('assessment previews', () => {
  let api: TestApi;
  let shop: TestShop;

  beforeAll(async () => {
    api = await startTestApi();
    shop = await api.openShop();
  });
  afterAll(() => api.close());

  const preview = async (change: object = {}) => {
    const answer = await api.call('POST', '/v1/assessments/previews', {
      as: shop.owner,
      body: { ...worn, ...change },
    });
    return answer;
  };
  const optionOf = (body: { options: Option[] }, id: string) =>
    body.options.find(({ optionId }) => optionId === id)!;

  it('answers every option with its cost, its parts adding up to it, its doubt, and a chance of being cheapest', async () => {
    const { status, body } = await preview();
    expect(status).toBe(200);
    expect(body.options).toHaveLength(4);
    for (const { expectedCost, components } of body.options as Option[]) {
      const cents = Object.values(components).reduce(
        (sum, { amount }) => sum + Math.round(Number(amount) * 100),
        0,
      );
      expect(cents).toBe(Math.round(Number(expectedCost.amount) * 100));
    }
    const chances = body.options.map(
      (each: { probabilityOfBeingCheapest: number }) => each.probabilityOfBeingCheapest,
    );
    expect(chances.reduce((sum: number, chance: number) => sum + chance, 0)).toBeCloseTo(1, 2);
    for (const { expectedCostInterval } of body.options)
      expect(expectedCostInterval).toMatchObject({ level: 0.9, method: expect.any(String) });
    expect(body.flipPoints.length).toBeGreaterThan(0);
    expect(body.observations).toEqual({ readings: 3, wearPoints: 1, deliveries: 4 });
  });

  it('JOB rule 15: the same question gives the same answer to the last digit, in whatever order it is sent', async () => {
    const first = await preview();
    const second = await preview({ options: [...options].reverse() });
    expect(second.body).toEqual(first.body);
    const other = await preview({ earlierComebacks: 1 });
    expect(other.body.inputHash).not.toBe(first.body.inputHash);
  });

  it('JOB rule 9: an undecided reading alone is no reason to replace: further readings come first, once offered cost may decide', async () => {
    // A minute of measuring: worth it as soon as it may change the choice.
    const quick = { ...worn.furtherReadings, minutes: 1 };
    const undecided = {
      inspections: [{ ...worn.inspections[0], values: ['0.16'] }],
      furtherReadings: quick,
    };
    const { body } = await preview(undecided);
    expect(body.recommendation).toMatchObject({ kind: 'measureFirst', readings: 3 });
    expect(body.furtherReadings.kind).toBe('worthIt');
    const wereOffered = { furtherReadings: { ...quick, wereOffered: true } };
    const offered = await preview({ ...undecided, ...wereOffered });
    expect(['recommended', 'closeCall']).toContain(offered.body.recommendation.kind);
    const settled = await preview({ inspections: [{ ...worn.inspections[0], values: ['0.30', '0.31'] }] });
    expect(settled.body.guards.map(({ code }: { code: string }) => code)).not.toContain(
      'undecidedReadingAlone',
    );
  });

  it('JOB rule 6: a validly positive functional criterion takes leaving and adjusting out of the offer, an invalid one does not', async () => {
    const positive = await preview({
      functionalCriterion: { kind: 'positive', isValid: true, id: 'by-hand' },
    });
    for (const id of ['leave', 'adjust'])
      expect(optionOf(positive.body, id).removedBy).toEqual(['functionalCriterionPositive']);
    expect(positive.body.reasons).toContainEqual(
      expect.objectContaining({
        code: 'functionalCriterionPositive',
        evidence: [{ kind: 'given', id: 'by-hand' }],
      }),
    );
    const invalid = await preview({ functionalCriterion: { kind: 'positive', isValid: false } });
    expect(optionOf(invalid.body, 'adjust').removedBy).toEqual([]);
  });

  it('JOB rule 8: a dangerous finding removes every option that does not cure it, whatever it costs', async () => {
    const { body } = await preview({
      safetyFindings: [{ findingId: 'plate-sticks', curedBy: ['fitRemanufactured'] }],
    });
    for (const id of ['leave', 'adjust', 're-bush'])
      expect(optionOf(body, id).removedBy).toContain('safetyFindingNotCured');
    expect(body.recommendation).toMatchObject({ kind: 'recommended', optionId: 'remanufactured' });
    const hopeless = await preview({ safetyFindings: [{ findingId: 'plate-sticks', curedBy: [] }] });
    expect(hopeless.body.recommendation).toMatchObject({ kind: 'none', why: 'nothingAdmissible' });
    expect(hopeless.body.recommendation.detail).toMatch(/unrepaired, not for the road/);
  });

  it('JOB rule 3: a reading without known uncertainty is not treated as exact, it says nothing and is named', async () => {
    const { body } = await preview({
      inspections: [{ ...worn.inspections[0], doubt: null }],
      furtherReadings: null,
    });
    expect(body.wearLeftOut).toBe('uncertaintyUnknown');
    expect(body.reasons.map(({ code }: { code: string }) => code)).toContain('wearNotMeasured');
  });

  it('JOB rule 17: the caution comes with the answer', async () => {
    expect((await preview()).body.caution).toBe(
      "The maker's instructions, local rules and licensed practice come first.",
    );
  });

  it('JOB rule 14: too little history for a rate is said with what is needed, and a whole history gives one', async () => {
    const short = await preview();
    const reason = short.body.reasons.find(({ code }: { code: string }) => code === 'rateFromPopulation');
    expect(reason.values).toEqual(
      expect.arrayContaining([
        { name: 'needed', value: '3', unit: '1' },
        { name: 'got', value: '1', unit: '1' },
      ]),
    );
    const history = [
      ['60000', '0.06'],
      ['120000', '0.13'],
      ['180000', '0.21'],
    ].map(([kmSinceFitted, value]) => ({
      kmSinceFitted,
      instrument: 'dial-1',
      values: [value, value, value],
      doubt,
    }));
    const long = await preview({ inspections: history });
    const codes = long.body.reasons.map(({ code }: { code: string }) => code);
    expect(codes).toContain('rateFromReadings');
    expect(long.body.observations.wearPoints).toBe(3);
  });

  it('API row 27: a foreign price cannot be priced and says so, rates in two currencies price nothing', async () => {
    const abroad = options.map((each) =>
      each.optionId === 're-bush'
        ? {
            ...each,
            offers: [
              offer('bushes', 'repairedOwnPart', null, { price: { amount: '35.00', currency: 'USD' } }),
            ],
          }
        : each,
    );
    const { body } = await preview({ options: abroad });
    expect(optionOf(body, 're-bush')).toMatchObject({
      kind: 'cannotBePriced',
      problems: [{ code: 'currencyDiffers', at: 'bushes' }],
    });
    const mixed = await preview({
      rates: { ...worn.rates, downtimePerDay: { amount: '60.00', currency: 'USD' } },
    });
    expect(mixed.body.recommendation).toMatchObject({ kind: 'none', why: 'nothingPriced' });
    expect(optionOf(mixed.body, 'adjust').problems).toMatchObject([
      { code: 'currencyDiffers', at: 'downtimePerDay' },
    ]);
  });

  it('API row 33: missing prices, no offers and unknown lead times are answers by option, never zero and never NaN', async () => {
    const bad = options.map((each) => {
      if (each.optionId === 're-bush') return { ...each, offers: [] };
      if (each.optionId === 'remanufactured')
        return {
          ...each,
          offers: [
            offer('not-quoted', 'remanufactured', null),
            offer('no-date', 'rebuilt', '280.00', {
              leadTime: { kind: 'toOrder', promisedDays: null, delivered: [] },
            }),
            offer('fine', 'remanufactured', '310.00'),
          ],
        };
      return each;
    });
    const { body } = await preview({ options: bad });
    expect(optionOf(body, 're-bush').problems.map(({ code }) => code)).toEqual(['noOffers']);
    const others = body.options.find(({ optionId }: Option) => optionId === 'remanufactured').otherOffers;
    expect(others.map((each: { problems: { code: string }[] }) => each.problems[0]!.code).sort()).toEqual([
      'leadTimeUnknown',
      'priceMissing',
    ]);
    expect(JSON.stringify(body)).not.toMatch(/NaN|Infinity/);
    const nothing = await preview({ rates: { ...worn.rates, labourPerHour: null }, inspections: [] });
    expect(nothing.body.recommendation).toMatchObject({ kind: 'none', why: 'nothingPriced' });
    expect(nothing.body.wearLeftOut).toBe('noReadings');
  });

  it('takes ten comebacks, negative and absurd money for what they are', async () => {
    const ten = await preview({ earlierComebacks: 10 });
    expect(ten.status).toBe(200);
    const odd = options.map((each) =>
      each.offers.length === 0
        ? each
        : {
            ...each,
            offers: [
              offer(`${each.optionId}-minus`, 'remanufactured', '-5.00'),
              offer(`${each.optionId}-moon`, 'remanufactured', '9999999999.00'),
            ],
          },
    );
    const { body } = await preview({ options: odd });
    expect(optionOf(body, 'remanufactured').problems).toMatchObject([
      { code: 'priceNegative' },
      { code: 'priceAbsurd' },
    ]);
  });

  it('refuses what makes no question: a criterion on the wrong side, a window of nothing, two options of one id', async () => {
    const side = await preview({ characteristic: { ...worn.characteristic, direction: 'down' } });
    expect([side.status, side.body.errors[0].pointer]).toEqual([422, '/characteristic/criterionSize']);
    const window = await preview({ watchWindowKm: '0' });
    expect([window.status, window.body.errors[0].pointer]).toEqual([422, '/watchWindowKm']);
    const twice = await preview({ options: [options[0], options[0]] });
    expect([twice.status, twice.body.errors[0].rule]).toEqual([422, 'unique']);
  });

  it('leaves out the flip points on request and answers everything else alike', async () => {
    const full = await preview();
    const quick = await preview({ omitFlipPoints: true });
    expect(quick.body).toEqual({ ...full.body, flipPoints: [] });
  });

  it('a fleet manager may ask what if, and nothing of it is kept', async () => {
    const customer = await api.call('POST', '/v1/customers', {
      as: shop.owner,
      body: {
        kind: 'fleetOperator',
        contact: { name: 'Brindle Parcels' },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      },
    });
    const manager = await shop.user(['fleetManager'], customer.body.id);
    const { status } = await api.call('POST', '/v1/assessments/previews', { as: manager, body: worn });
    expect(status).toBe(200);
    expect((await api.call('GET', '/v1/assessments', { as: shop.owner })).body.items).toEqual([]);
  });
});
