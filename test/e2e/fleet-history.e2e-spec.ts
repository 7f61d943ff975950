import { valveSeatFleet, valveSeatRecurrence } from '@endfloat/reliability';
import { startTestApi, type TestApi, type TestShop } from '../support/api.js';

const day = 86_400_000;
const firstUsedOn = '2001-01-01';
const atAge = (days: number): string =>
  new Date(Date.parse(`${firstUsedOn}T00:00:00Z`) + days * day).toISOString();

/**
 * Valve seats replaced in 41 diesel engines of one fleet: Nelson & Doganaksoy (1989), GE Research Report 89CRD239;
 * Nelson (1995), Technometrics 37:147-157.
 */
const valveSeats = (customerId: string) => ({
  customerId,
  componentType: 'valve-seat',
  position: 'engine',
  vehicles: valveSeatFleet.map((history, index) => ({
    label: `Engine ${String(index + 1)}`,
    chassisNumber: null,
    plate: null,
    firstUsedOn,
    observedFrom: atAge(history.spans[0]?.from ?? 0),
    observedUntil: atAge(history.spans[0]?.until ?? 0),
    replacements: history.eventAges.map((age) => ({ at: atAge(age), condition: 'new', supplier: null })),
  })),
});

describe('the history of a fleet', () => {
  let api: TestApi;
  let shop: TestShop;
  let customerId: string;

  beforeAll(async () => {
    api = await startTestApi();
    shop = await api.openShop();
    const customer = await api.call('POST', '/v1/customers', {
      as: shop.owner,
      body: {
        kind: 'fleetOperator',
        contact: { name: 'Pellow Haulage' },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      },
    });
    customerId = customer.body.id;
  });
  afterAll(() => api.close());

  it('a faulty vehicle anywhere in the request leaves nothing behind and is named', async () => {
    const request = valveSeats(customerId);
    request.vehicles[40]!.replacements = [{ at: atAge(9000), condition: 'new', supplier: null }];
    const refused = await api.call('POST', '/v1/fleet-histories', { as: shop.owner, body: request });
    expect([refused.status, refused.body.errors[0].pointer]).toEqual([422, '/vehicles/40/replacements/0/at']);
    const list = await api.call('GET', '/v1/vehicles', { as: shop.owner });
    expect(list.body.items).toEqual([]);
  });

  it('answers the published mean cumulative function of the valve-seat fleet: 1.1185 at day 621, robust standard error 0.2075', async () => {
    const empty = await api.call('GET', '/v1/fleet-recurrences?componentType=valve-seat', { as: shop.owner });
    expect(empty.body.recurrence).toEqual({ kind: 'insufficientData', needed: 1, got: 0 });

    const imported = await api.call('POST', '/v1/fleet-histories', {
      as: shop.owner,
      body: valveSeats(customerId),
    });
    expect(imported).toMatchObject({ status: 201, body: { fittedParts: 41 + 48 } });
    const { body } = await api.call(
      'GET',
      `/v1/fleet-recurrences?componentType=valve-seat&customerId=${customerId}`,
      { as: shop.owner },
    );
    expect(body.recurrence).toMatchObject({
      kind: 'estimated',
      vehicles: 41,
      events: 48,
      unobservedEvents: 0,
    });
    expect(body.recurrence.points).toHaveLength(valveSeatRecurrence.length);
    for (const [index, published] of valveSeatRecurrence.entries()) {
      const point = body.recurrence.points[index];
      expect([point.ageDays, point.atRisk, point.events]).toEqual([
        published.age,
        published.atRisk,
        published.events,
      ]);
      expect(point.mean).toBeCloseTo(published.mean, 8);
      expect(point.standardError).toBeCloseTo(published.standardError, 8);
    }
    const at621 = body.recurrence.points.find((point: { ageDays: number }) => point.ageDays === 621);
    expect([at621.mean, at621.standardError].map((value: number) => value.toFixed(4))).toEqual([
      '1.1185',
      '0.2075',
    ]);
  });

  it('JOB rule 16: the answer to a fleet manager counts the vehicles of their customer only', async () => {
    const other = await api.call('POST', '/v1/customers', {
      as: shop.owner,
      body: {
        kind: 'fleetOperator',
        contact: { name: 'Brindle Parcels' },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      },
    });
    const manager = await shop.user(['fleetManager'], other.body.id);
    const own = await api.call('GET', '/v1/fleet-recurrences?componentType=valve-seat', { as: manager });
    expect(own.body.recurrence.kind).toBe('insufficientData');
    const foreign = await api.call(
      'GET',
      `/v1/fleet-recurrences?componentType=valve-seat&customerId=${customerId}`,
      { as: manager },
    );
    expect(foreign.status).toBe(404);
  });
});
