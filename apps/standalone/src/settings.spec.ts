import { readSettings, SettingsError } from './settings.js';

const shopId = '0193f2c0-0000-7000-8000-000000000001';
const issuer = {
  issuer: 'https://id.brindle.example',
  audience: 'https://vans.brindle.example',
  jwksUrl: 'https://id.brindle.example/keys',
  algorithms: ['ES256'],
  shop: { claim: 'tenant', values: { brindle: shopId } },
  person: { claim: 'sub' },
  roles: { claim: 'groups', values: { counter: ['desk'] } },
};

const refusal = (given: Record<string, string>, file = ''): readonly string[] => {
  try {
    readSettings(given, () => file);
  } catch (error) {
    if (error instanceof SettingsError) return error.message.split('\n');
    throw error;
  }
  return [];
};

describe('settings of a process', () => {
  it('have a default that works on one machine', () => {
    expect(readSettings({})).toMatchObject({
      host: '127.0.0.1',
      port: 3000,
      metricsPort: undefined,
      tokenIssuers: [],
      mostInFlight: 500,
    });
  });

  it('are refused all at once, each with what was found and what is wanted', () => {
    const faults = refusal({
      ENDFLOAT_PROT: '1',
      ENDFLOAT_PORT: '70000',
      ENDFLOAT_POOL_SIZE: '0x10',
      ENDFLOAT_DEMO: 'yes',
      ENDFLOAT_LOG: 'loud',
      ENDFLOAT_SECRET: 'short',
      ENDFLOAT_METRICS_PORT: '-1',
      ENDFLOAT_MOST_IN_FLIGHT: '0',
      DATABASE_URL: 'mysql://there',
    });
    expect(faults.map((fault) => /^\w+/.exec(fault)?.[0])).toEqual([
      'ENDFLOAT_PROT',
      'DATABASE_URL',
      'ENDFLOAT_SECRET',
      'ENDFLOAT_PORT',
      'ENDFLOAT_POOL_SIZE',
      'ENDFLOAT_DEMO',
      'ENDFLOAT_LOG',
      'ENDFLOAT_MOST_IN_FLIGHT',
      'ENDFLOAT_METRICS_PORT',
    ]);
    expect(faults).toContain('ENDFLOAT_PORT is "70000": give a whole number from 0 to 65535.');
  });

  it('want a secret beside a database of one’s own, and never repeat one', () => {
    expect(refusal({ DATABASE_URL: 'postgresql://there/x' })[0]).toContain('ENDFLOAT_SECRET is needed');
    expect(refusal({ ENDFLOAT_SECRET: 'canary' }).join()).not.toContain('canary');
  });

  it('read whose tokens are believed from a file', () => {
    const text = JSON.stringify({ issuers: [issuer] });
    expect(readSettings({ ENDFLOAT_TOKEN_ISSUERS: '/there.json' }, () => text).tokenIssuers).toEqual([
      issuer,
    ]);
  });

  it.each([
    ['no JSON', '{', ['it is no JSON']],
    ['no issuer', '{"issuers":[]}', ['issuers: ']],
    [
      'several faults',
      JSON.stringify({
        issuers: [
          {
            ...issuer,
            jwksUrl: 'http://id.brindle.example/keys',
            algorithms: ['HS256', 'none'],
            shop: { claim: 'tenant', values: { brindle: 'Brindle' } },
            roles: { claim: 'groups', values: { counter: ['boss'] } },
            secret: 'x',
          },
        ],
      }),
      [
        'issuers[0].secret',
        'issuers[0].jwksUrl',
        'issuers[0].algorithms',
        'issuers[0].shop.values.brindle',
        'issuers[0].roles.values.counter',
      ],
    ],
    ['the same issuer twice', JSON.stringify({ issuers: [issuer, issuer] }), ['issuers: ']],
  ])('refuse a file of issuers with %s, and say where', (_what, text, places) => {
    const faults = refusal({ ENDFLOAT_TOKEN_ISSUERS: '/there.json' }, text);
    expect(
      faults.map((fault, index) => fault.startsWith(`ENDFLOAT_TOKEN_ISSUERS, ${places[index]!}`)),
    ).toEqual(places.map(() => true));
  });

  it('refuse a file of issuers that is not there', () => {
    expect(() => readSettings({ ENDFLOAT_TOKEN_ISSUERS: '/nowhere/at-all.json' })).toThrow(
      'ENDFLOAT_TOKEN_ISSUERS is "/nowhere/at-all.json": there is no file that can be read.',
    );
  });
});
