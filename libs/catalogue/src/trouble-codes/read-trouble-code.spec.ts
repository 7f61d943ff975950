import fc from 'fast-check';
import { readTroubleCode } from './read-trouble-code.js';
import { troubleCodes } from './trouble-codes.js';

describe('readTroubleCode', () => {
  it('reads a known code in any case and with spaces around it', () => {
    expect(readTroubleCode(' p0510 ')).toMatchObject({
      normalised: 'P0510',
      control: 'standard',
      meaning: 'closed-throttle (idle) switch: fault',
      warnings: [],
    });
  });

  it('takes the last three as hexadecimal, and a failure-type byte', () => {
    expect(readTroubleCode('P000A')).toMatchObject({ control: 'standard', warnings: ['notInCatalogue'] });
    expect(readTroubleCode('P0507-1F')).toMatchObject({
      meaning: 'idle higher than commanded',
      warnings: [],
    });
  });

  it.each([
    ['P0120', 'standard'],
    ['P1120', 'manufacturer'],
    ['P2111', 'standard'],
    ['B2111', 'manufacturer'],
    ['P3300', 'manufacturer'],
    ['P3400', 'standard'],
    ['P3A00', 'unknown'],
    ['C3000', 'unknown'],
  ] as const)('says that %s is controlled by: %s', (code, control) => {
    expect(readTroubleCode(code).control).toBe(control);
  });

  it('warns of other forms and refuses none', () => {
    expect(readTroubleCode('4444').warnings).toEqual(['notGenericForm']);
    expect(readTroubleCode('').warnings).toEqual(['notGenericForm']);
    expect(readTroubleCode('P4000').warnings).toEqual(['notGenericForm']);
    fc.assert(
      fc.property(
        fc.string(),
        (text) =>
          readTroubleCode(text).warnings.length > 0 ||
          troubleCodes.some((entry) => readTroubleCode(text).normalised.startsWith(entry.code)),
      ),
      { seed: 33 },
    );
  });

  it('never translates a code of another scheme', () => {
    expect(readTroubleCode('P0510', 'blink')).toMatchObject({ meaning: null, warnings: ['otherScheme'] });
  });

  it('holds 16 codes of the generic form, each once', () => {
    expect(new Set(troubleCodes.map((entry) => entry.code)).size).toBe(16);
    for (const entry of troubleCodes) expect(readTroubleCode(entry.code).warnings).toEqual([]);
  });
});
