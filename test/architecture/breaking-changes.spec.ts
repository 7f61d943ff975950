import { readProjectFile, valuesOf } from './project-files.js';

type Document = Readonly<Record<string, unknown>>;
interface Gate {
  breakingChanges(released: Document, current: Document): readonly string[];
  isBinding(version: string): boolean;
  latestVersion(versions: readonly string[]): string | undefined;
}

// eslint-disable-next-line @typescript-eslint/no-explicit-any -- documents are broken at will here
type Loose = Record<string, any>;

/** A small interface with one of everything that can be broken. */
const small = () => ({
  openapi: '3.1.1',
  info: { title: 'Small', version: '1.0.0' },
  paths: {
    '/v1/vans': {
      get: {
        operationId: 'listVans',
        security: [{ key: [] }],
        parameters: [
          { name: 'plate', in: 'query', required: false, schema: { type: 'string', maxLength: 20 } },
        ] as object[],
        responses: {
          '200': {
            headers: { ETag: {} },
            content: {
              'application/json': { schema: { $ref: '#/components/schemas/VanList' } },
              'text/csv': { schema: { type: 'string' } },
            },
          },
          '404': { $ref: '#/components/responses/Refused404' },
        },
      },
      post: {
        operationId: 'createVan',
        security: [{ key: [] }],
        parameters: [] as object[],
        requestBody: {
          required: false,
          content: { 'application/json': { schema: { $ref: '#/components/schemas/NewVan' } } },
        },
        responses: {
          '201': { content: { 'application/json': { schema: { $ref: '#/components/schemas/Van' } } } },
        },
      },
    },
    '/v1/fleets': { get: { operationId: 'listFleets', responses: {} } },
  } as Loose,
  webhooks: {
    vanRecorded: {
      post: {
        requestBody: { content: { 'application/json': { schema: { $ref: '#/components/schemas/Van' } } } },
      },
    },
  } as Loose,
  components: {
    responses: { Refused404: { content: { 'application/problem+json': { schema: { type: 'object' } } } } },
    schemas: {
      VanList: {
        type: 'object',
        properties: { items: { type: 'array', items: { $ref: '#/components/schemas/Van' } } },
        required: ['items'],
      },
      Van: {
        type: 'object',
        properties: {
          plate: { type: ['string', 'null'], maxLength: 20 },
          seats: { type: 'integer', minimum: 1, maximum: 9 },
          state: { type: 'string', enum: ['onTheRoad', 'laidUp'] },
          attention: { type: 'string', enum: ['none', 'some'], 'x-open-enum': true },
          wear: { oneOf: [{ $ref: '#/components/schemas/Worn' }, { $ref: '#/components/schemas/Unworn' }] },
          parent: { $ref: '#/components/schemas/Van' },
        },
        required: ['plate', 'seats', 'state'],
        additionalProperties: false,
      },
      NewVan: {
        type: 'object',
        properties: {
          plate: { type: ['string', 'null'], minLength: 0, maxLength: 20, pattern: '^[A-Z]+$' },
          seats: { type: 'number', minimum: 1, maximum: 9, default: 3 },
          state: { type: 'string', enum: ['onTheRoad', 'laidUp'] },
          wear: { oneOf: [{ $ref: '#/components/schemas/Worn' }, { $ref: '#/components/schemas/Unworn' }] },
          tags: { type: 'array', items: { type: 'string', maxLength: 9 }, maxItems: 5 },
        },
        required: ['plate'],
        additionalProperties: false,
      },
      Worn: { type: 'object', properties: { kind: { enum: ['worn'] } }, required: ['kind'] },
      Unworn: { type: 'object', properties: { kind: { enum: ['unworn'] } }, required: ['kind'] },
    } as Loose,
  },
});
type Small = ReturnType<typeof small>;
type Change = (document: Small) => void;

const vans = (document: Small) => document.paths['/v1/vans'];
const van = (document: Small) => document.components.schemas['Van'];
const newVan = (document: Small) => document.components.schemas['NewVan'];
const without = (values: string[], value: string): string[] => values.filter((each) => each !== value);

const breaks: readonly (readonly [string, Change, RegExp])[] = [
  ['a removed path', (d) => delete d.paths['/v1/fleets'], /^\/v1\/fleets: path removed/],
  ['a removed method', (d) => delete vans(d).post, /^POST \/v1\/vans: operation removed/],
  ['another operationId', (d) => (vans(d).get.operationId = 'findVans'), /operationId listVans/],
  ['a removed parameter', (d) => vans(d).get.parameters.pop(), /query plate: parameter removed/],
  ['a parameter now required', (d) => (vans(d).get.parameters[0].required = true), /is now required/],
  [
    'a new required parameter',
    (d) => vans(d).get.parameters.push({ name: 'by', in: 'query', required: true, schema: {} }),
    /query by: new required parameter/,
  ],
  [
    'a tighter parameter',
    (d) => (vans(d).get.parameters[0].schema.maxLength = 19),
    /maxLength tightened: 20 to 19/,
  ],
  ['a body now required', (d) => (vans(d).post.requestBody.required = true), /body is now required/],
  ['a removed success', (d) => delete vans(d).get.responses['200'], /200: answer removed/],
  ['a removed refusal', (d) => delete vans(d).get.responses['404'], /404: answer removed/],
  ['a new kind of success', (d) => (vans(d).get.responses['202'] = {}), /202: new kind of success/],
  [
    'a removed header field',
    (d) => delete vans(d).get.responses['200'].headers.ETag,
    /ETag: header field removed/,
  ],
  [
    'a removed media type',
    (d) => delete vans(d).get.responses['200'].content['text/csv'],
    /text\/csv removed/,
  ],
  ['another credential', (d) => (vans(d).get.security = [{ token: [] }]), /no longer taken/],
  ['a removed event', (d) => delete d.webhooks['vanRecorded'], /vanRecorded: event removed/],
  [
    'a removed member of an answer',
    (d) => delete van(d).properties.seats,
    /Van in answers.seats: member removed/,
  ],
  [
    'a removed member of a request',
    (d) => delete newVan(d).properties.seats,
    /requests.seats: member removed/,
  ],
  [
    'a member that may be absent',
    (d) => (van(d).required = ['plate', 'seats']),
    /state: member may now be absent/,
  ],
  [
    'a new required member',
    (d) => {
      newVan(d).properties.owner = { type: 'string' };
      newVan(d).required.push('owner');
    },
    /owner: new required member/,
  ],
  ['a member now required', (d) => newVan(d).required.push('state'), /state: member is now required/],
  [
    'a value no longer taken',
    (d) => (newVan(d).properties.state.enum = ['onTheRoad']),
    /value laidUp is no longer/,
  ],
  [
    'a value no longer answered',
    (d) => (van(d).properties.state.enum = ['onTheRoad']),
    /value laidUp removed/,
  ],
  [
    'a new value of a closed list',
    (d) => van(d).properties.state.enum.push('sold'),
    /new value sold of a closed/,
  ],
  [
    'a list that is now open',
    (d) => (van(d).properties.state['x-open-enum'] = true),
    /list of values is now open/,
  ],
  ['only listed values', (d) => (newVan(d).properties.plate.enum = ['A']), /only listed values/],
  [
    'a type no longer taken',
    (d) => (newVan(d).properties.seats.type = 'integer'),
    /type number is no longer taken/,
  ],
  [
    'null no longer taken',
    (d) => (newVan(d).properties.plate.type = 'string'),
    /type null is no longer taken/,
  ],
  [
    'null that may be answered',
    (d) => (van(d).properties.seats.type = ['integer', 'null']),
    /null may now be answered/,
  ],
  [
    'a wider type in an answer',
    (d) => (van(d).properties.seats.type = 'number'),
    /type number may now be answered/,
  ],
  [
    'a higher least value taken',
    (d) => (newVan(d).properties.seats.minimum = 2),
    /minimum tightened: 1 to 2/,
  ],
  [
    'a lower greatest value taken',
    (d) => (newVan(d).properties.seats.maximum = 8),
    /maximum tightened: 9 to 8/,
  ],
  ['a new least length', (d) => (newVan(d).properties.plate.minLength = 1), /minLength tightened: 0 to 1/],
  ['fewer items taken', (d) => (newVan(d).properties.tags.maxItems = 4), /maxItems tightened/],
  [
    'shorter items taken',
    (d) => (newVan(d).properties.tags.items.maxLength = 8),
    /tags\[\]: maxLength tightened/,
  ],
  ['items that must differ', (d) => (newVan(d).properties.tags.uniqueItems = true), /uniqueItems tightened/],
  ['another pattern', (d) => (newVan(d).properties.plate.pattern = '^[A-Z]$'), /pattern changed/],
  ['another default', (d) => (newVan(d).properties.seats.default = 2), /default changed: 3 to 2/],
  ['greater values in an answer', (d) => (van(d).properties.seats.maximum = 10), /maximum loosened: 9 to 10/],
  [
    'longer texts in an answer',
    (d) => delete van(d).properties.plate.maxLength,
    /maxLength loosened: 20 to none/,
  ],
  ['a choice no longer taken', (d) => newVan(d).properties.wear.oneOf.pop(), /choice Unworn removed/],
  [
    'a new choice in an answer',
    (d) => van(d).properties.wear.oneOf.push({ $ref: '#/components/schemas/NewVan' }),
    /new choice NewVan in answers/,
  ],
];

const harmless: readonly (readonly [string, Change])[] = [
  ['nothing', () => undefined],
  ['a new path', (d) => (d.paths['/v1/parts'] = { get: { responses: {} } })],
  ['a new parameter that may be left out', (d) => vans(d).get.parameters.push({ name: 'q', in: 'query' })],
  ['a new refusal', (d) => (vans(d).get.responses['410'] = {})],
  ['a new member of an answer', (d) => (van(d).properties.colour = { type: 'string' })],
  [
    'a new member of a request that may be left out',
    (d) => (newVan(d).properties.colour = { type: 'string' }),
  ],
  ['a member of a request that may now be left out', (d) => (newVan(d).required = [])],
  ['a member that is now always answered', (d) => van(d).required.push('attention')],
  ['a new value that is taken', (d) => newVan(d).properties.state.enum.push('sold')],
  ['a new value of an open list', (d) => van(d).properties.attention.enum.push('much')],
  ['a wider bound of a request', (d) => (newVan(d).properties.seats.maximum = 12)],
  ['a narrower bound of an answer', (d) => (van(d).properties.seats.maximum = 8)],
  ['null that is no longer answered', (d) => (van(d).properties.plate.type = 'string')],
  ['a new choice that is taken', (d) => newVan(d).properties.wear.oneOf.push({ type: 'null' })],
  ['other words', (d) => (van(d).properties.seats.description = 'Seats.')],
  ['a least length of none', (d) => delete newVan(d).properties.plate.minLength],
];

describe('the gate for breaking changes', () => {
  let gate: Gate;
  beforeAll(async () => {
    gate = (await valuesOf('.config/breaking-changes.mjs')) as unknown as Gate;
  });
  const changesBy = (change: Change): readonly string[] => {
    const current = small();
    change(current);
    return gate.breakingChanges(small(), current);
  };

  it.each(breaks)('finds %s', (_, change, line) => {
    expect(changesBy(change).filter((each) => line.test(each))).not.toEqual([]);
  });

  it.each(harmless)('lets %s pass', (_, change) => {
    expect(changesBy(change)).toEqual([]);
  });

  it('ends where a schema holds itself, and finds the break inside', () => {
    const found = changesBy((d) => (d.components.schemas['Worn'].required = without(['kind'], 'kind')));
    expect(found).toEqual(['Worn in answers.kind: member may now be absent']);
  });

  it('binds from 1.0.0 on', () => {
    expect(['0.1.0', '0.99.3', '1.0.0', '2.3.1', '10.0.0'].map((each) => gate.isBinding(each))).toEqual([
      false,
      false,
      true,
      true,
      true,
    ]);
  });

  it('compares with the latest release by number, not by letters', () => {
    expect(gate.latestVersion(['0.9.0', '0.10.0', '0.2.11'])).toBe('0.10.0');
    expect(gate.latestVersion([])).toBeUndefined();
  });

  it('finds planted breaks in the document itself', () => {
    const text = readProjectFile('libs/contracts/openapi/openapi.json');
    const [released, current] = [JSON.parse(text) as Loose, JSON.parse(text) as Loose];
    expect(gate.breakingChanges(released, current)).toEqual([]);
    delete current.paths['/v1/vehicles'].post;
    delete current.components.schemas.VehicleResponse.properties.id;
    expect(gate.breakingChanges(released, current)).toEqual(
      expect.arrayContaining([
        'POST /v1/vehicles: operation removed',
        'VehicleResponse in answers.id: member removed',
      ]),
    );
  });
});
