import type { OpenAPIV3_1 } from 'openapi-types';
import { startTestApi, type Reply, type TestApi, type TestUser } from '../support/api.js';
import { previewBody } from '../bench/preview-body.js';
import { newId, openFullShop, type FullShop } from './hostile-shop.js';

interface Operation {
  readonly id: string;
  readonly method: 'GET' | 'POST' | 'PATCH';
  readonly path: string;
  readonly description: string;
  readonly hasBody: boolean;
  readonly pathNames: readonly string[];
}

/** Seeded numbers from 0 to 1, so that a finding can be had again. */
function seededRandom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return state / 2_147_483_648;
  };
}

const hostileValues: readonly unknown[] = [
  ...[
    '',
    ' ',
    '\u0000',
    'a\u0000b',
    '\ud800',
    '\u202e',
    'a\nb',
    'x'.repeat(5000),
    "'; drop table vehicle;--",
  ],
  ...[
    'NaN',
    '1e309',
    '-1',
    '-0',
    '00',
    '0x10',
    '9'.repeat(400),
    `0.${'0'.repeat(40)}1`,
    '999999999.9999',
    '1/0',
  ],
  ...[
    '2026-02-30',
    '1899-12-31',
    '2016-12-31T23:59:60Z',
    '2026-01-01T24:00:00Z',
    '1900-01-01T00:00:00+14:00',
  ],
  ...['[in_i]', "[in_i'Hg]", 'Cel', 'JPY', '__proto__', 'constructor', newId().toUpperCase()],
  ...[null, true, 0, -1, 1.5, 1e21, 9_007_199_254_740_993, [], {}, [null], { kind: 'x' }],
];

describe('a hostile caller', () => {
  let api: TestApi;
  let mine: FullShop;
  let foreign: FullShop;
  let operations: readonly Operation[];

  beforeAll(async () => {
    api = await startTestApi();
    foreign = await openFullShop(api, 'Foreignmark');
    mine = await openFullShop(api, 'Ownmark');
    const { body } = await api.call('GET', '/openapi.json');
    operations = operationsOf(body as OpenAPIV3_1.Document);
  });
  afterAll(() => api.close());

  const fill = ({ path }: Operation, ids: Readonly<Record<string, string>>): string =>
    path.replace(/\{([^}]+)\}/g, (_, name: string) => ids[name] ?? newId());
  const bodyOf = ({ id, hasBody }: Operation): object | undefined =>
    hasBody ? mine.bodies[id]?.() : undefined;
  const send = (operation: Operation, url: string, as: TestUser, body: object | undefined): Promise<Reply> =>
    api.call(operation.method, url, { as, body, ifMatch: operation.method === 'GET' ? undefined : '*' });
  /** the answer without what differs from request to request */
  const shape = ({ status, body }: Reply): object => ({ status, ...body, instance: '', traceId: '' });
  const known = (): Operation[] => operations.filter((each) => !each.hasBody || bodyOf(each) !== undefined);

  it('knows a valid body for every operation on records', () => {
    const without = operations.filter((each) => each.hasBody && bodyOf(each) === undefined);
    expect(
      without
        .map(({ path }) => path)
        .filter((path) => !/^\/v1\/(calculations|assessments\/previews)/.test(path)),
    ).toEqual([]);
  });

  it('API row 1: finds under ids of another shop exactly what it finds under ids of nobody, in every operation', async () => {
    for (const operation of known()) {
      for (const name of operation.pathNames.filter((each) => each.endsWith('Id'))) {
        const answers: Reply[] = [];
        for (const id of [newId(), foreign.ids[name] ?? newId()])
          answers.push(
            await send(
              operation,
              fill(operation, { ...mine.ids, [name]: id }),
              mine.shop.owner,
              bodyOf(operation),
            ),
          );
        const [unknown, other] = answers as [Reply, Reply];
        expect([operation.id, unknown.status]).toEqual([operation.id, 404]);
        expect([operation.id, shape(other)]).toEqual([operation.id, shape(unknown)]);
      }
    }
  });

  it('API row 1: finds nothing under the id of something of another kind', async () => {
    for (const operation of known()) {
      for (const name of operation.pathNames.filter((each) => each.endsWith('Id'))) {
        const id = name === 'customerId' ? mine.ids['vehicleId']! : mine.ids['customerId']!;
        const answer = await send(
          operation,
          fill(operation, { ...mine.ids, [name]: id }),
          mine.shop.owner,
          bodyOf(operation),
        );
        expect([operation.id, answer.status]).toEqual([operation.id, 404]);
      }
    }
  });

  it('API row 2: cannot name things of another shop in a body, and learns nothing by trying', async () => {
    for (const operation of known().filter(({ hasBody }) => hasBody)) {
      for (const { at, id } of idsWithin(bodyOf(operation))) {
        const name = Object.keys(mine.ids).find((each) => mine.ids[each] === id);
        const other = name === undefined ? foreign.shop.owner.id : foreign.ids[name]!;
        const answers: Reply[] = [];
        for (const value of [newId(), other]) {
          const body = withValue(bodyOf(operation)!, at, value);
          answers.push(await send(operation, fill(operation, mine.ids), mine.shop.owner, body));
        }
        const [unknown, named] = answers as [Reply, Reply];
        const place = [operation.id, ...at].join('/');
        expect([place, unknown.status >= 400, unknown.status]).toEqual([
          place,
          true,
          unknown.status === 409 ? 409 : 422,
        ]);
        expect([place, shape(named)]).toEqual([place, shape(unknown)]);
      }
    }
  });

  it('contract D2: a parameter that the document does not list is refused by every operation', async () => {
    for (const operation of known()) {
      const answer = await send(
        operation,
        `${fill(operation, mine.ids)}?nonsense=1`,
        mine.shop.owner,
        bodyOf(operation),
      );
      expect([operation.id, answer.status, answer.body.errors?.[0]?.pointer]).toEqual([
        operation.id,
        400,
        '/nonsense',
      ]);
    }
  });

  it('S4: does what the document says its role may do, and nothing else', async () => {
    for (const operation of known().filter(({ method }) => method === 'GET')) {
      const allowed = /Roles: ([^.]*)\./.exec(operation.description)?.[1]?.split(', ') ?? [];
      for (const [role, as] of Object.entries(mine.roles)) {
        const { status } = await send(operation, fill(operation, mine.ids), as, undefined);
        const isListed = allowed.includes(role === 'otherManager' ? 'fleetManager' : role);
        expect([operation.id, role, status === 403]).toEqual([operation.id, role, !isListed]);
      }
    }
  });

  it('S4: no role changes what the document keeps from it', async () => {
    for (const operation of known().filter(({ method }) => method !== 'GET')) {
      const allowed = /Roles: ([^.]*)\./.exec(operation.description)?.[1]?.split(', ') ?? [];
      for (const [role, as] of Object.entries(mine.roles)) {
        if (allowed.includes(role === 'otherManager' ? 'fleetManager' : role)) continue;
        const { status } = await send(operation, fill(operation, mine.ids), as, bodyOf(operation));
        expect([operation.id, role, status]).toEqual([operation.id, role, 403]);
      }
    }
  });

  it("JOB rule 16: another customer's manager sees nothing of this customer's van; JOB rule 1: who only writes programs reads no personal words", async () => {
    for (const operation of known().filter(({ method }) => method === 'GET')) {
      const url = fill(operation, mine.ids);
      const manager = JSON.stringify(
        (await send(operation, url, mine.roles['otherManager']!, undefined)).body,
      );
      expect([operation.id, /Ownmark (van|words|consenter)/.test(manager)]).toEqual([operation.id, false]);
      const developer = JSON.stringify(
        (await send(operation, url, mine.roles['developer']!, undefined)).body,
      );
      expect([operation.id, /Ownmark (words|customer|consenter)/.test(developer)]).toEqual([
        operation.id,
        false,
      ]);
    }
  });

  it('rows 17, 24, 25, 30: whatever stands in a body, the answer is one of the document and none of our faults', async () => {
    const random = seededRandom(7);
    const choose = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)]!;
    for (const operation of known().filter(({ hasBody, id }) => hasBody && id !== 'createErasure')) {
      const places = placesIn(bodyOf(operation));
      for (let round = 0; round < 24; round += 1) {
        const [at, value] = [choose(places), choose(hostileValues)];
        const answer = await send(
          operation,
          fill(operation, mine.ids),
          mine.shop.owner,
          withValue(bodyOf(operation)!, at, value),
        );
        const what = `${operation.id} ${at.join('/')} := ${JSON.stringify(value).slice(0, 60)}`;
        expect([what, answer.status < 500]).toEqual([what, true]);
      }
    }
  });

  describe('with documents that hold what no text may hold', () => {
    it.each(['\u0000', '\ud800', 'a\nb'])('row 17: %j is refused in a sheet and in a limit', async (text) => {
      const sheet = mine.bodies['createCheckSheet']!()['checkSheet'] as { title: string };
      const refusedSheet = await mine.post('/v1/check-sheets', { checkSheet: { ...sheet, title: text } });
      const limit = mine.bodies['createLimit']!()['limit'] as object;
      const refusedLimit = await mine.post('/v1/limits', { limit: { ...limit, [text]: 1 } });
      expect([refusedSheet.status, refusedSheet.body.errors[0].pointer]).toEqual([422, '/checkSheet']);
      expect([refusedLimit.status, refusedLimit.body.errors[0].pointer]).toEqual([422, '/limit']);
    });
  });

  it('cannot set a time zone that would break every later judgement', async () => {
    for (const timeZone of ['Mars/Olympus', '__proto__']) {
      const answer = await api.call('PATCH', '/v1/settings', {
        as: mine.shop.owner,
        body: { timeZone },
        ifMatch: '*',
      });
      expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, '/timeZone']);
    }
  });

  describe('sending things at once', () => {
    const sixTimes = (url: string, body: object): Promise<Reply[]> =>
      Promise.all(Array.from({ length: 6 }, () => mine.post(url, body)));
    const statuses = (replies: readonly Reply[]): number[] => replies.map(({ status }) => status).sort();

    it.each([
      ['createFleetHistory', '/v1/fleet-histories'],
      ['createComplaint', '/v1/complaints'],
      ['createCustomer', '/v1/customers'],
    ])('row 38: %s six times is one record and five answers with it', async (operation, url) => {
      const body = {
        ...mine.bodies[operation]!(),
        ...(operation === 'createFleetHistory' ? {} : { id: newId() }),
      };
      const replies = await sixTimes(url, body);
      expect(statuses(replies)).toEqual([200, 200, 200, 200, 200, 201]);
      expect(
        new Set(replies.map((reply) => JSON.stringify(reply.body.vehicleIds ?? reply.body.id))).size,
      ).toBe(1);
    });

    it('row 38: a set of readings six times is one set', async () => {
      const vehicleId = (await mine.post('/v1/vehicles', mine.bodies['createVehicle']!())).body.id as string;
      const inspection = await mine.post('/v1/inspections', {
        ...mine.bodies['createInspection']!(),
        vehicleId,
        jobId: null,
      });
      const readings = Array.from({ length: 5 }, () => ({ ...mine.bodies['createReading']!(), id: newId() }));
      const url = `/v1/inspections/${String(inspection.body.id)}/reading-sets`;
      expect(statuses(await sixTimes(url, { readings }))).toEqual([200, 200, 200, 200, 200, 201]);
    });

    it('a fleet history with one change under the same ids is refused, and nothing of it is kept', async () => {
      const body = mine.bodies['createFleetHistory']!() as { vehicles: object[] };
      expect((await mine.post('/v1/fleet-histories', body)).status).toBe(201);
      const vehicles = body.vehicles.map((vehicle, index) =>
        index === 1 ? { ...vehicle, label: 'another' } : vehicle,
      );
      const changed = await mine.post('/v1/fleet-histories', { ...body, vehicles });
      expect([changed.status, changed.body.errors[0].pointer]).toEqual([409, '/vehicles/1/id']);
      const more = { ...mine.bodies['createFleetHistory']!() } as { vehicles: object[] };
      const mixed = await mine.post('/v1/fleet-histories', {
        ...more,
        vehicles: [more.vehicles[0], body.vehicles[0]],
      });
      expect(mixed.status).toBe(409);
    });

    it('row 40: six parts for one place are one part; a correction puts no second one there', async () => {
      const part = { ...mine.bodies['createFittedPart']!(), position: 'contested' };
      expect(statuses(await sixTimes('/v1/fitted-parts', part))).toEqual([201, 409, 409, 409, 409, 409]);
      const beside = await mine.post('/v1/fitted-parts', { ...part, position: 'beside' });
      const content = Object.fromEntries(Object.entries(part).filter(([member]) => member !== 'vehicleId'));
      const moved = await mine.post(
        `/v1/fitted-parts/${String(beside.body.id)}/corrections`,
        { ...content, reason: 'read again' },
        mine.shop.owner,
        '*',
      );
      expect([moved.status, moved.body.code]).toEqual([409, 'part.alreadyFitted']);
    });

    it('a consent sent again by another name is another one, and refused', async () => {
      const job = await mine.post('/v1/jobs', mine.bodies['createJob']!());
      const lines = [
        { workLineId: null, description: 'look', partsAmount: '1.00', labourHours: '1', partCondition: null },
      ];
      const url = `/v1/jobs/${String(job.body.id)}`;
      const estimate = await mine.post(`${url}/estimates`, { ceilingAmount: null, lines });
      const consent = {
        ...mine.bodies['createConsent']!(),
        id: newId(),
        estimateId: estimate.body.id as string,
      };
      expect(statuses(await sixTimes(`${url}/consents`, consent))).toEqual([200, 200, 200, 200, 200, 201]);
      expect((await mine.post(`${url}/consents`, { ...consent, name: 'Somebody Else' })).status).toBe(409);
    });

    it('estimates of one job sent at once are versions one after the other', async () => {
      const job = await mine.post('/v1/jobs', mine.bodies['createJob']!());
      const lines = [
        { workLineId: null, description: 'look', partsAmount: '1.00', labourHours: '1', partCondition: null },
      ];
      const replies = await Promise.all(
        [1, 2, 3, 4].map(() =>
          mine.post(`/v1/jobs/${String(job.body.id)}/estimates`, { ceilingAmount: null, lines }),
        ),
      );
      expect(statuses(replies)).toEqual([201, 201, 201, 201]);
    });

    it('readings of two checks at once: the later check is judged by the prerequisite sent beside it', async () => {
      const vehicleId = (await mine.post('/v1/vehicles', mine.bodies['createVehicle']!())).body.id as string;
      const inspection = await mine.post('/v1/inspections', {
        ...mine.bodies['createInspection']!(),
        vehicleId,
        jobId: null,
      });
      const url = `/v1/inspections/${String(inspection.body.id)}`;
      const passed = (checkId: string) => ({
        ...mine.bodies['createReading']!(),
        checkId,
        result: { kind: 'yesNo', answer: true },
        instrumentId: null,
      });
      const all = [passed('linkage-return'), passed('linkage-free-play'), mine.bodies['createReading']!()];
      const replies = await Promise.all(all.map((body) => mine.post(`${url}/readings`, body)));
      expect(statuses(replies)).toEqual([201, 201, 201]);
      const { body } = await api.call('GET', `${url}/checks`, { as: mine.shop.owner });
      const play = body.checks.find(
        (each: { checkId: string }) => each.checkId === 'shaft-radial-play-lower',
      );
      const outcomes = play.phases[0].verdicts.map(({ outcome }: { outcome: string }) => outcome);
      expect(outcomes).not.toContain('notJudged');
    });
  });

  it('row 26: a preview in a unit that does not exist is refused', async () => {
    const body = {
      ...previewBody,
      characteristic: { ...previewBody.characteristic, unit: '999999999.9999' },
    };
    const refused = await mine.post('/v1/assessments/previews', body);
    expect([refused.status, refused.body.errors[0].pointer]).toEqual([422, '/characteristic/unit']);
    const characteristic = { ...previewBody.characteristic, unit: "[in_i'Hg_32degF]" };
    expect((await mine.post('/v1/assessments/previews', { ...previewBody, characteristic })).status).toBe(
      200,
    );
  });

  it('a number that many vans share is answered with few of them named', async () => {
    for (let count = 0; count < 12; count += 1)
      await mine.post('/v1/vehicles', mine.bodies['createVehicle']!());
    const { status, body } = await mine.post('/v1/vehicles', mine.bodies['createVehicle']!());
    const doubles = body.warnings.filter(({ code }: { code: string }) => code === 'numberAlsoOnOtherVehicle');
    expect([status, doubles.length]).toEqual([201, 5]);
  });

  it('row 42: walks a list while it grows and sees everything that was there once', async () => {
    const all = async (pageSize: number, between: () => Promise<unknown>): Promise<string[]> => {
      const seen: string[] = [];
      for (let cursor: string | null = ''; cursor !== null;) {
        const at: string = cursor === '' ? '' : `&cursor=${encodeURIComponent(cursor)}`;
        const { body } = await api.call('GET', `/v1/vehicles?pageSize=${String(pageSize)}${at}`, {
          as: mine.shop.owner,
        });
        seen.push(...body.items.map(({ id }: { id: string }) => id));
        cursor = body.nextCursor;
        await between();
      }
      return seen;
    };
    const before = await all(200, () => Promise.resolve());
    const during = await all(3, () =>
      mine.post('/v1/vehicles', { ...mine.bodies['createVehicle']!(), chassisNumber: null, plate: null }),
    );
    expect(new Set(during).size).toBe(during.length);
    expect(before.filter((id) => !during.includes(id))).toEqual([]);
  });
});

function operationsOf(document: OpenAPIV3_1.Document): Operation[] {
  return Object.entries(document.paths ?? {}).flatMap(([path, item]) =>
    (['get', 'post', 'patch'] as const).flatMap((method) => {
      const operation = item?.[method];
      if (operation?.operationId === undefined || !path.startsWith('/v1/')) return [];
      return [
        {
          id: operation.operationId,
          method: method.toUpperCase() as Operation['method'],
          path,
          description: operation.description ?? '',
          hasBody: operation.requestBody !== undefined,
          pathNames: [...path.matchAll(/\{([^}]+)\}/g)].map(([, name]) => name!),
        },
      ];
    }),
  );
}

type Place = readonly string[];

/** Every member of a body, at any depth. */
function placesIn(body: unknown, at: Place = []): Place[] {
  if (typeof body !== 'object' || body === null) return [];
  return Object.entries(body).flatMap(([name, member]) => [
    [...at, name],
    ...placesIn(member, [...at, name]),
  ]);
}

function idsWithin(body: unknown): { at: Place; id: string }[] {
  return placesIn(body)
    .map((at) => ({
      at,
      id: at.reduce<unknown>((inner, name) => (inner as Record<string, unknown>)[name], body),
    }))
    .filter(
      (each): each is { at: Place; id: string } =>
        /^[0-9a-f]{8}-/.test(String(each.id)) && each.at.at(-1) !== 'id',
    );
}

function withValue(body: object, at: Place, value: unknown): object {
  const copy = structuredClone(body) as Record<string, unknown>;
  const holder = at.slice(0, -1).reduce((inner, name) => inner[name] as Record<string, unknown>, copy);
  holder[at.at(-1) ?? ''] = value;
  return copy;
}
