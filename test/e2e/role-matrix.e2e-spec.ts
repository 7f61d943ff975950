import { ModulesContainer } from '@nestjs/core';
import type { OpenAPIV3_1 } from 'openapi-types';
import { shopRoles, type ShopRole } from '@endfloat/workshop';
import { walkRoutes } from '../../apps/api/src/http/contract/route-walk.js';
import { startTestApi, type TestApi, type TestUser } from '../support/api.js';

interface Row {
  readonly operation: string;
  readonly method: 'GET' | 'POST' | 'PATCH' | 'PUT' | 'DELETE';
  readonly path: string;
  /** as the code that is run has it */
  readonly allowed: readonly string[];
  /** as the document tells it */
  readonly documented: readonly string[];
}

/**
 * The table of roles and operations, made from the routes and from the document, and every cell of it really called.
 * Bodies are empty and ids are nobody's, so nothing is changed: whether a role is let in is settled before.
 */
describe('API row 7, S4: the table of roles and operations', () => {
  let api: TestApi;
  let rows: readonly Row[];
  const people = new Map<ShopRole, TestUser>();

  beforeAll(async () => {
    api = await startTestApi();
    const shop = await api.openShop();
    const customer = await api.call('POST', '/v1/customers', {
      as: shop.owner,
      body: {
        kind: 'fleetOperator',
        contact: { name: 'Brindle Parcels' },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      },
    });
    for (const role of shopRoles)
      people.set(role, await shop.user([role], role === 'fleetManager' ? customer.body.id : undefined));
    const { body } = await api.call('GET', '/openapi.json');
    rows = matrix(api, body as OpenAPIV3_1.Document);
  });
  afterAll(() => api.close());

  const call = async (row: Row, as: TestUser | undefined): Promise<number> => {
    const answer = await api.app.inject({
      method: row.method,
      url: row.path.replace(/\{[^}]+\}|:[A-Za-z0-9_]+/g, () => api.ids.next()),
      headers: as === undefined ? {} : { authorization: as.authorization },
      ...(row.method === 'GET' ? {} : { payload: '', headers: bodyless(as) }),
    });
    return answer.statusCode;
  };
  const bodyless = (as: TestUser | undefined): Record<string, string> =>
    as === undefined ? {} : { authorization: as.authorization };

  it('has a row for every operation of the document, and the document tells of each what the code does', () => {
    expect(rows.length).toBeGreaterThan(100);
    const differing = rows.filter(({ allowed, documented }) => allowed.join() !== documented.join());
    expect(differing).toEqual([]);
  });

  it('lets each role into the operations of its row, and refuses it in all others with 403', async () => {
    const wrong: string[] = [];
    for (const row of rows) {
      const statuses = await Promise.all(shopRoles.map((role) => call(row, people.get(role))));
      for (const [at, role] of shopRoles.entries()) {
        const [isAllowed, status] = [row.allowed.includes(role), statuses[at]!];
        if ((status === 403) === isAllowed || status === 401 || status >= 500)
          wrong.push(
            `${row.operation} as ${role}: ${String(status)}, ${isAllowed ? 'allowed' : 'not allowed'}`,
          );
      }
    }
    expect(wrong).toEqual([]);
  });

  it('lets nobody in without a credential', async () => {
    const wrong: string[] = [];
    for (const row of rows) {
      const status = await call(row, undefined);
      if (status !== 401) wrong.push(`${row.operation}: ${String(status)}`);
    }
    expect(wrong).toEqual([]);
  });

  it('keeps changes of rights, keys and settings with the owner', () => {
    const owners = rows.filter(({ operation }) =>
      /^(createUser|updateUser|createApiKey|revokeApiKey|updateSettings)$/.test(operation),
    );
    expect(owners.length).toBeGreaterThan(3);
    expect(owners.filter(({ allowed }) => allowed.join() !== 'owner')).toEqual([]);
  });

  it('lets auditors change nothing', () => {
    const writes = rows.filter(({ method, allowed }) => method !== 'GET' && allowed.includes('auditor'));
    // Calculations, previews, evaluations and replays of an assessment answer and record nothing.
    const effects = writes.filter(
      ({ path }) => !/\/v1\/calculations\/|(?:\/|-)(?:previews|evaluations|replays)$/.test(path),
    );
    expect(effects.map(({ operation }) => operation)).toEqual([]);
  });
});

function matrix(api: TestApi, document: OpenAPIV3_1.Document): Row[] {
  const routes = new Map(
    walkRoutes(api.app.get(ModulesContainer)).map((route) => [route.operationId, route.rules.access]),
  );
  return Object.entries(document.paths ?? {}).flatMap(([path, item]) =>
    (['get', 'post', 'patch', 'put', 'delete'] as const).flatMap((method) => {
      const operation = item?.[method];
      const access = routes.get(operation?.operationId ?? '');
      if (operation?.operationId === undefined || access === 'public') return [];
      return [
        {
          operation: operation.operationId,
          method: method.toUpperCase() as Row['method'],
          path,
          allowed: access ?? [],
          documented: /Roles: ([^.]*)\./.exec(operation.description ?? '')?.[1]?.split(', ') ?? [],
        },
      ];
    }),
  );
}
