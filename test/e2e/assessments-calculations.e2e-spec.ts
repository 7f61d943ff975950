import { startTestApi, type TestApi, type TestShop } from '../support/api.js';

const eur = (amount: string) => ({ amount, currency: 'EUR' });

const rates = {
  labourPerHour: eur('80.00'),
  downtimePerDay: eur('60.00'),
  comebackHandling: eur('250.00'),
  followUpRepair: eur('654.00'),
};

const option = (
  optionId: string,
  parts: string,
  labourHours: string,
  downtimeDays: string,
  probabilityOfComeback: string,
  comebackConsequence = 'handlingPlusFollowUpRepair',
) => ({
  optionId,
  parts: eur(parts),
  labourHours,
  downtimeDays,
  probabilityOfComeback,
  comebackConsequence,
  core: null as object | null,
});

/** The trade's invented example with the shaft over its limit; totals were worked out by hand there. */
const overLimit = [
  option('adjust-only', '0.00', '1.2', '0', '0.60'),
  option('re-bush', '35.00', '4.0', '2', '0.10'),
  {
    ...option('remanufactured-exchange', '310.00', '1.8', '3', '0.08', 'handlingOnly'),
    core: { deposit: eur('80.00'), probabilityOfLosing: '0' },
  },
  option('used-measured', '120.00', '1.8', '4', '0.22'),
  option('new-old-stock', '520.00', '1.8', '14', '0.04', 'handlingOnly'),
];

describe('expected costs by plain arithmetic', () => {
  let api: TestApi;
  let shop: TestShop;

  beforeAll(async () => {
    api = await startTestApi();
    shop = await api.openShop();
  });
  afterAll(() => api.close());

  const calculate = (body: object) =>
    api.call('POST', '/v1/calculations/expected-costs', { as: shop.owner, body });
  const totals = (body: { cheapestFirst: { optionId: string; expectedTotal: { amount: string } }[] }) =>
    body.cheapestFirst.map(({ optionId, expectedTotal }) => [optionId, expectedTotal.amount]);

  it('reproduces the worked example: every total, the order, and the break-even', async () => {
    const breakEven = { optionId: 'adjust-only', againstOptionId: 're-bush' };
    const { status, body } = await calculate({ rates, options: overLimit, breakEven });
    expect(status).toBe(200);
    expect(totals(body)).toEqual([
      ['re-bush', '565.40'],
      ['adjust-only', '638.40'],
      ['remanufactured-exchange', '654.00'],
      ['used-measured', '702.88'],
      ['new-old-stock', '1514.00'],
    ]);
    // (565.40 - 96) / 904 = 0.51925 by hand; the example prints 0.519.
    expect(body.breakEven.kind).toBe('at');
    expect(body.breakEven.probabilityOfComeback).toBeCloseTo(0.519, 3);
    expect(body.caution).toMatch(/maker's instructions/);
  });

  it('reproduces the example within the limit: 96 + 0.10 x 904 = 186.40', async () => {
    const { body } = await calculate({ rates, options: [option('adjust-only', '0', '1.2', '0', '0.10')] });
    expect(totals(body)).toEqual([['adjust-only', '186.40']]);
  });

  it('shows the two wrong answers the example warns of: without the follow-up repair, and without downtime', async () => {
    const noFollowUp = await calculate({ rates: { ...rates, followUpRepair: eur('0') }, options: overLimit });
    expect(totals(noFollowUp.body)[0]).toEqual(['adjust-only', '246.00']);
    const noDowntime = await calculate({ rates: { ...rates, downtimePerDay: eur('0') }, options: overLimit });
    expect(totals(noDowntime.body)[1]).toEqual(['used-measured', '462.88']);
  });

  it('API row 27: rates in two currencies are refused, an option in another one is not priced, a missing currency is refused', async () => {
    const mixed = await calculate({
      rates: { ...rates, downtimePerDay: { amount: '60.00', currency: 'USD' } },
      options: overLimit,
    });
    expect([mixed.status, mixed.body.type]).toEqual([422, expect.stringContaining('currency-mismatch')]);
    expect(mixed.body.errors[0].pointer).toBe('/rates/downtimePerDay/currency');
    const foreign = { ...overLimit[1]!, optionId: 'abroad', parts: { amount: '35.00', currency: 'USD' } };
    const { body } = await calculate({ rates, options: [...overLimit, foreign] });
    expect(body.cannotBePriced).toEqual([
      { optionId: 'abroad', reason: 'currenciesDiffer', members: ['parts'] },
    ]);
    expect(body.cheapestFirst).toHaveLength(5);
    const without = await calculate({
      rates: { ...rates, labourPerHour: { amount: '80.00' } },
      options: overLimit,
    });
    expect(without.status).toBe(422);
  });

  it('says what is wrong with an impossible probability, a double id and an unknown option', async () => {
    const { body } = await calculate({ rates, options: [option('sure', '1', '1', '0', '1.5')] });
    expect(body.cannotBePriced[0]).toMatchObject({ reason: 'probabilityOutOfRange' });
    const twice = await calculate({ rates, options: [overLimit[0], overLimit[0]] });
    expect([twice.status, twice.body.errors[0].pointer]).toEqual([422, '/options/1/optionId']);
    const unknown = await calculate({
      rates,
      options: overLimit,
      breakEven: { optionId: 'adjust-only', againstOptionId: 'none' },
    });
    expect([unknown.status, unknown.body.errors[0].pointer]).toEqual([422, '/breakEven/againstOptionId']);
  });
});
