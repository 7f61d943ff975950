import { openDatabasePool } from '@endfloat/persistence';
import {
  StandingClock,
  startTestApi,
  type Reply,
  type TestApi,
  type TestShop,
  type TestUser,
} from '../support/api.js';

const entry = {
  kind: 'person',
  contact: { name: 'Ottoline Farrow', telephone: '000 14 14', address: '3 Quill Lane, Marsh End' },
  downtimeCostPerDay: null,
  planningDistanceKm: null,
};

describe('customers', () => {
  let api: TestApi;
  let clock: StandingClock;
  let shop: TestShop;
  let [desk, technician, auditor]: TestUser[] = [];

  beforeAll(async () => {
    clock = new StandingClock('2026-03-02T09:00:00.000Z');
    api = await startTestApi({ clock });
    shop = await api.openShop();
    desk = await shop.user(['desk']);
    technician = await shop.user(['technician']);
    auditor = await shop.user(['auditor']);
  });
  afterAll(() => api.close());

  const post = (url: string, body: object, as = desk, ifMatch?: string): Promise<Reply> =>
    api.call('POST', url, { as, body, ifMatch });
  const get = (url: string, as = desk): Promise<Reply> => api.call('GET', url, { as });
  const record = async (more: object = {}): Promise<Reply> => {
    const made = await post('/v1/customers', { ...entry, ...more });
    expect([made.status, made.status < 300 ? '' : made.body]).toEqual([201, '']);
    return made;
  };
  const newVan = async (customerId: string): Promise<string> => {
    const made = await post('/v1/vehicles', {
      chassisNumber: null,
      plate: null,
      label: 'Van 14',
      firstUsedOn: null,
      application: null,
      attributes: {},
      expectedKmPerYear: null,
      observedSpans: [],
      retiredOn: null,
      customerId,
      ownedFrom: '2020-01-01T00:00:00Z',
    });
    return made.body.id;
  };
  const complain = (vehicleId: string, words: string): Promise<Reply> =>
    post('/v1/complaints', {
      vehicleId,
      jobId: null,
      receivedAt: clock.now(),
      words,
      symptoms: { 'stalls-cold': 'present' },
      conditions: {},
      troubleCodes: [],
      reproduced: null,
      stopScrewMovedByOthers: null,
      reportedByDriver: false,
      components: [],
      beganAfterRepair: false,
      distanceKm: null,
    });
  /** a job with an estimate and somebody's consent by name */
  const agreedJob = async (vehicleId: string, complaintId: string, name: string): Promise<string> => {
    const job = await post('/v1/jobs', {
      vehicleId,
      complaintIds: [complaintId],
      odometer: null,
      openedAt: clock.now(),
      assignedTo: null,
      diagnosedBy: null,
      causeId: null,
      note: null,
    });
    const estimate = await post(`/v1/jobs/${job.body.id}/estimates`, {
      lines: [
        {
          workLineId: null,
          description: 'diagnosis',
          partsAmount: '0.00',
          labourHours: '0.5',
          partCondition: null,
        },
      ],
      ceilingAmount: null,
    });
    const consent = await post(`/v1/jobs/${job.body.id}/consents`, {
      estimateId: estimate.body.id,
      answer: 'given',
      answeredAt: clock.now(),
      way: 'byTelephone',
      declinedWork: null,
      name,
    });
    expect(consent.status).toBe(201);
    return job.body.id;
  };
  const keptText = async (): Promise<string> =>
    api.work.read(shop.id, async (tx) => {
      const customers = await tx.customers.all({});
      const personal = await Promise.all(customers.map(({ id }) => tx.personal.ofCustomer(id)));
      return JSON.stringify(personal);
    });

  it('records a customer and shows it', async () => {
    const made = await record({ downtimeCostPerDay: '95.00', planningDistanceKm: '80000' });
    expect(made.headers.location).toBe(`/v1/customers/${made.body.id}`);
    const shown = await get(`/v1/customers/${made.body.id}`, technician);
    expect(shown.body).toMatchObject({
      kind: 'person',
      contact: entry.contact,
      downtimeCostPerDay: '95.00',
      planningDistanceKm: '80000',
      erasedAt: null,
      version: 1,
      recordedBy: desk!.id,
    });
  });

  it('API row 32: the same customer sent again is the first one, also after a correction; another contact or other terms are refused', async () => {
    const id = api.ids.next();
    const made = await record({ id });
    const again = await post('/v1/customers', { ...entry, id });
    expect([again.status, again.body]).toEqual([200, made.body]);
    const moved = { ...entry, contact: { ...entry.contact, address: '9 Sedge Row' }, reason: 'moved house' };
    expect((await post(`/v1/customers/${id}/corrections`, moved, desk, '"1"')).status).toBe(201);
    const third = await post('/v1/customers', { ...entry, id });
    expect([third.status, third.body.version, third.body.contact.address]).toEqual([200, 2, '9 Sedge Row']);
    for (const other of [
      { contact: { ...entry.contact, name: 'Otto Farrow' } },
      { downtimeCostPerDay: '10.00' },
      { kind: 'fleetOperator' },
    ]) {
      const refused = await post('/v1/customers', { ...entry, ...other, id });
      expect([refused.status, refused.body.code]).toEqual([409, 'record.idTaken']);
    }
  });

  it('JOB rule 1: a correction keeps the earlier contact readable as of its time', async () => {
    const made = await record();
    const url = `/v1/customers/${made.body.id}`;
    const body = { ...entry, contact: { name: 'Ottoline Farrow-Reed' }, reason: 'married' };
    expect((await post(`${url}/corrections`, body)).status).toBe(428);
    expect((await post(`${url}/corrections`, body, desk, '"4"')).status).toBe(412);
    clock.moveOn(60_000);
    const corrected = await post(`${url}/corrections`, body, desk, '"1"');
    expect(corrected).toMatchObject({
      status: 201,
      body: { contact: { name: 'Ottoline Farrow-Reed' }, version: 2, reason: 'married' },
    });
    const before = await get(`${url}?asOf=${made.body.recordedAt}`);
    expect(before.body).toMatchObject({ contact: entry.contact, version: 1 });
  });

  it('JOB rule 1: erasing takes contact, complaint words and names on consents for good; records stay, and the erasing is recorded', async () => {
    const { body: customer } = await record({
      contact: { name: 'Isolde Wren', email: 'isolde@example.test' },
    });
    const { body: neighbour } = await record({ contact: { name: 'Fenwick Moss' } });
    const url = `/v1/customers/${customer.id}`;
    await post(
      `${url}/corrections`,
      { ...entry, contact: { name: 'Isolde Wren-Hale' }, reason: 'new name' },
      desk,
      '"1"',
    );
    const vehicleId = await newVan(customer.id);
    const complaint = await complain(vehicleId, 'it coughs like my uncle Bertram');
    expect(complaint.body.words).toBe('it coughs like my uncle Bertram');
    const jobId = await agreedJob(vehicleId, complaint.body.id, 'Bertram Hale');
    const asItWas = complaint.body.recordedAt;
    expect(await keptText()).toMatch(/Isolde.*Bertram/);

    clock.moveOn(60_000);
    const erased = await post(`${url}/erasures`, { reason: 'the wish of the person' }, shop.owner);
    // Two contacts, the words, the name on the consent.
    expect(erased).toMatchObject({ status: 201, body: { erased: 4, erasedAt: clock.now() } });

    for (const query of ['', `?asOf=${asItWas}`]) {
      expect((await get(`${url}${query}`)).body).toMatchObject({ contact: null, erasedAt: clock.now() });
      const kept = await get(`/v1/complaints/${complaint.body.id}${query}`);
      expect(kept.body).toMatchObject({ words: null, symptoms: { 'stalls-cold': 'present' } });
    }
    const agreements = await get(`/v1/jobs/${jobId}/estimates`);
    expect(agreements.body.consents).toMatchObject([{ answer: 'given', way: 'byTelephone' }]);
    expect((await get(`/v1/vehicles/${vehicleId}`)).body.owner).toMatchObject({ customerId: customer.id });
    expect(await keptText()).not.toMatch(/Isolde|Bertram/);
    expect((await get(`/v1/customers/${neighbour.id}`)).body.contact).toEqual({ name: 'Fenwick Moss' });

    const [kept, told] = await erasingAsKept(customer.id);
    expect(kept).toEqual([
      { content: null, erased_by: shop.owner.id, erase_reason: 'the wish of the person' },
    ]);
    expect(told).toEqual([{ type: 'endfloat.customer.erased.v1', payload: { erased: 4 } }]);

    const again = await post(`${url}/erasures`, { reason: 'asked once more' }, shop.owner);
    expect(again.body.erased).toBe(0);
    const list = await get('/v1/customers?pageSize=200');
    expect(JSON.stringify(list.body)).not.toMatch(/Isolde|Bertram/);
  });

  /** the rows that say who erased what and why, read past the interface */
  async function erasingAsKept(customerId: string): Promise<unknown[]> {
    const pool = openDatabasePool({ url: api.database.ownerUrl, size: 1, waitMs: 2000 });
    try {
      await pool.query(`SELECT set_config('app.shop', $1, false)`, [shop.id]);
      const kept = await pool.query<object>(
        'SELECT DISTINCT content, erased_by, erase_reason FROM personal_record WHERE customer_id = $1',
        [customerId],
      );
      const told = await pool.query<object>('SELECT type, payload FROM outbox WHERE subject_id = $1', [
        customerId,
      ]);
      return [kept.rows, told.rows];
    } finally {
      await pool.end();
    }
  }

  it('JOB rule 1: no customer is edited or deleted in place', async () => {
    const { body } = await record();
    for (const method of ['PATCH', 'PUT', 'DELETE'] as const)
      expect((await api.call(method, `/v1/customers/${body.id}`, { as: shop.owner })).status).toBe(405);
  });

  it('JOB rule 16: a fleet manager sees their own customer only', async () => {
    const own = await record({ kind: 'fleetOperator', contact: { name: 'Brindle Parcels' } });
    const other = await record({ kind: 'fleetOperator', contact: { name: 'Sallow Bakeries' } });
    const manager = await shop.user(['fleetManager'], own.body.id);
    const list = await get('/v1/customers', manager);
    expect(list.body.items.map(({ id }: { id: string }) => id)).toEqual([own.body.id]);
    expect((await get(`/v1/customers/${own.body.id}`, manager)).status).toBe(200);
    const hidden = await get(`/v1/customers/${other.body.id}`, manager);
    const unknown = await get(`/v1/customers/${api.ids.next()}`, manager);
    expect([hidden.status, hidden.body.type, hidden.body.detail]).toEqual([
      404,
      unknown.body.type,
      unknown.body.detail,
    ]);
  });

  it('API row 1: another shop sees no customer of this one, and cannot correct or erase it', async () => {
    const { body } = await record();
    const { owner } = await api.openShop();
    const url = `/v1/customers/${body.id}`;
    expect((await get(url, owner)).status).toBe(404);
    expect((await get('/v1/customers', owner)).body.items).toEqual([]);
    const change = { ...entry, reason: 'not mine to change' };
    expect((await post(`${url}/corrections`, change, owner, '"1"')).status).toBe(404);
    expect((await post(`${url}/erasures`, { reason: 'not mine to erase' }, owner)).status).toBe(404);
    expect((await get(url)).body.contact).toEqual(entry.contact);
  });

  it('API row 5: members that are not the caller’s to set are refused', async () => {
    for (const member of ['shopId', 'version', 'recordedAt', 'role', 'personalRecordId']) {
      const refused = await post('/v1/customers', { ...entry, [member]: 'x' });
      expect([member, refused.status, refused.body.errors[0].pointer]).toEqual([member, 422, `/${member}`]);
    }
  });

  it.each([
    ['technician', 403, 403],
    ['auditor', 403, 403],
    ['desk', 201, 403],
    ['owner', 201, 201],
  ] as const)(
    'API row 7: %s is answered with %i to recording and %i to erasing',
    async (role, made, erased) => {
      const as = { technician, auditor, desk, owner: shop.owner }[role]!;
      const { body } = await record();
      expect((await post('/v1/customers', entry, as)).status).toBe(made);
      expect((await post(`/v1/customers/${body.id}/erasures`, { reason: 'a wish' }, as)).status).toBe(erased);
    },
  );
});
