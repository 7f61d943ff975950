import * as fc from 'fast-check';
import { canonicalJson } from './canonical-json.js';

describe('canonical JSON', () => {
  it('RFC 8785, section 3.2.2: primitives as in its sample', () => {
    const sample = JSON.parse(
      '{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],' +
        '"string":"\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/","literals":[null,true,false]}',
    ) as unknown;
    expect(canonicalJson(sample)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],' +
        '"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    );
  });

  it('RFC 8785, section 3.2.3: names in the order of their UTF-16 code units', () => {
    const sample = {
      '€': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
      '\ud83d\ude00': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      ö: 'Latin Small Letter O With Diaeresis',
    };
    const order = Object.values(JSON.parse(canonicalJson(sample)) as object);
    // Integer-like names come first in an object of ECMAScript, so the text itself is looked at.
    const text = canonicalJson(sample);
    const names = ['\\r', '1', '\u0080', 'ö', '€', '\ud83d\ude00', '\ufb33'].map((name) =>
      text.indexOf(`"${name}"`),
    );
    expect(names).toEqual([...names].sort((a, b) => a - b));
    expect(names.every((at) => at >= 0)).toBe(true);
    expect(order).toHaveLength(7);
  });

  it('does not depend on the order of members, and says the same as it was given', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue(), { maxKeys: 6 }), (value) => {
        const turned = Object.fromEntries(Object.entries(value).reverse());
        expect(canonicalJson(turned)).toBe(canonicalJson(value));
        expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
      { seed: 11 },
    );
  });

  it('is empty where there is no body, which no body can be', () => {
    expect(canonicalJson(undefined)).toBe('');
  });
});
