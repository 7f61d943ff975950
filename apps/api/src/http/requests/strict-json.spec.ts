import fc from 'fast-check';
import { JsonFault, strictJson } from './strict-json.js';

const read = (text: string) => strictJson(Buffer.from(text));
const faultOf = (text: string | Uint8Array): string => {
  try {
    strictJson(typeof text === 'string' ? Buffer.from(text) : text);
    return 'read';
  } catch (error) {
    if (error instanceof JsonFault) return error.code;
    throw error;
  }
};

describe('strictJson', () => {
  it('reads what JSON.parse reads, wherever the root is an object without forbidden names and not too deep', () => {
    fc.assert(
      fc.property(
        fc.dictionary(fc.string(), fc.jsonValue({ maxDepth: 5 })),
        fc.nat({ max: 3 }),
        (value, indent) => {
          const text = JSON.stringify(value, null, indent);
          if (/"(?:__proto__|constructor|prototype)"/.test(text)) return;
          expect(read(text)).toEqual(JSON.parse(text));
        },
      ),
      { seed: 7, numRuns: 400 },
    );
  });

  it('never fails in another way than by its own faults, whatever bytes come', () => {
    const pieces = fc.constantFrom(
      '{',
      '}',
      '[',
      ']',
      '"',
      '\\',
      ',',
      ':',
      'a',
      '1',
      ' ',
      '"a":',
      '\\u0061',
      'null',
      '\ud83d\ude00',
      '\u0000',
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 40 }), (parts) => {
        const text = parts.join('');
        const fault = faultOf(text);
        if (fault === 'read') expect(JSON.parse(text)).toBeDefined();
      }),
      { seed: 8, numRuns: 3000 },
    );
  });

  it.each([
    ['{"a":1,"a":2}', 'duplicate-name'],
    ['{"a":1,"\\u0061":2}', 'duplicate-name'],
    ['{"a":[{"b":1,"b":1}]}', 'duplicate-name'],
    ['{"\\u005f_proto__":1}', 'forbidden-name'],
    ['{"a":{"constructor":1}}', 'forbidden-name'],
    ['{"a":"constructor"}', 'read'],
    ['{"a":{"b":1},"c":{"b":1}}', 'read'],
    ['{"a":"x\\"","b":"{\\"a\\":1,\\"a\\":2}"}', 'read'],
    ['{"a":"b', 'syntax'],
    ['{"a', 'syntax'],
    ['{a:1}', 'syntax'],
    ['{"a":1}}', 'syntax'],
    ['', 'syntax'],
    ['[]', 'not-object'],
    ['null', 'not-object'],
    ['"{}"', 'not-object'],
    ['\ufeff{}', 'bom'],
    [`${'{"a":'.repeat(17)}1${'}'.repeat(17)}`, 'depth'],
    [`${'{"a":'.repeat(16)}1${'}'.repeat(16)}`, 'read'],
  ])('%j is %s', (text, fault) => {
    expect(faultOf(text)).toBe(fault);
  });

  it('refuses bytes that are no UTF-8, overlong forms and encoded surrogates among them', () => {
    for (const bytes of [[0xff], [0xc0, 0xaf], [0xed, 0xa0, 0x80], [0xf4, 0x90, 0x80, 0x80]]) {
      expect(faultOf(Uint8Array.from([0x7b, 0x22, ...bytes, 0x22, 0x3a, 0x31, 0x7d]))).toBe('utf8');
    }
  });
});
