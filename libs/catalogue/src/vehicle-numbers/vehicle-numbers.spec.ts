import fc from 'fast-check';
import { characterRefusals } from './character-refusals.js';
import { examineVehicleNumber } from './examine-vehicle-number.js';
import { modelYearOf } from './model-year-of.js';
import { examinePlate, plateKey } from './plate-key.js';
import { checkDigitOfSum, vinCheckDigit } from './vin-check-digit.js';

const seed = { seed: 20260801, numRuns: 300 };
const vinCharacters = Array.from('ABCDEFGHJKLMNPRSTUVWXYZ0123456789');
const anyVin = fc
  .array(fc.constantFrom(...vinCharacters), { minLength: 17, maxLength: 17 })
  .map((all) => all.join(''));
const codes = (found: { readonly code: string }[] | readonly { readonly code: string }[]) =>
  found.map(({ code }) => code);

describe('vinCheckDigit', () => {
  it('turns the published sums into the published digits', () => {
    // NHTSA outline for new manufacturers: 314 gives 6; 49 CFR 565 table V: 411 gives 4; remainder 10 is written X.
    expect([314, 411, 351].map(checkDigitOfSum)).toEqual(['6', '4', 'X']);
  });

  it('weighs the positions as table V of 49 CFR 565 prints the products', () => {
    // Printed products 8+49+24+5+32+15+18+80+0+45+56+7+6+40+12+12+2 = 411; divided by the weights they give these digits.
    expect(vinCheckDigit('17418598457118341')).toEqual({
      kind: 'checkDigit',
      sum: 411,
      digit: '4',
      matches: true,
    });
  });

  it('sums the widely printed example with remainder ten to 351', () => {
    // Its transliterated values written as digits: 1 4 8 7 4 4 9 1 _ 2 7 0 4 2 7 8 8.
    expect(vinCheckDigit('14874491X27042788')).toEqual({
      kind: 'checkDigit',
      sum: 351,
      digit: 'X',
      matches: true,
    });
  });

  it('adds up a row of ones by hand: the weights sum to 89, and 89 leaves 1', () => {
    expect(vinCheckDigit('11111111111111111')).toEqual({
      kind: 'checkDigit',
      sum: 89,
      digit: '1',
      matches: true,
    });
  });

  it('accepts the invented numbers with X and with 4', () => {
    expect(vinCheckDigit('ZZZTEST7XZA000014')).toMatchObject({ digit: 'X', matches: true });
    expect(vinCheckDigit('ZZZTEST74ZA000042')).toMatchObject({ digit: '4', matches: true });
  });

  it('finds every change of one character that changes its value, and none that does not', () => {
    const values: Record<string, number> = {};
    for (const [index, letter] of Array.from('ABCDEFGH').entries()) values[letter] = index + 1;
    for (const [index, letter] of Array.from('JKLMN').entries()) values[letter] = index + 1;
    for (const [index, letter] of Array.from('STUVWXYZ').entries()) values[letter] = index + 2;
    for (const digit of '0123456789') values[digit] = Number(digit);
    values['P'] = 7;
    values['R'] = 9;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 16 }), fc.constantFrom(...vinCharacters), (position, put) => {
        const good = 'ZZZTEST7XZA000014';
        const was = good[position]!;
        const changed = good.slice(0, position) + put + good.slice(position + 1);
        const result = vinCheckDigit(changed);
        const staysRight = position === 8 ? put === 'X' : values[put] === values[was];
        expect(result).toMatchObject({ kind: 'checkDigit', matches: staysRight });
      }),
      seed,
    );
  });

  it('has no answer for another length or for letters that are not used', () => {
    expect(vinCheckDigit('1111')).toEqual({ kind: 'notAVin', reason: 'length' });
    expect(vinCheckDigit('1111111111111111O')).toEqual({ kind: 'notAVin', reason: 'alphabet' });
    expect(() => checkDigitOfSum(-1)).toThrow(RangeError);
  });

  it('matches exactly one of the eleven characters at position nine', () => {
    fc.assert(
      fc.property(anyVin, (number) => {
        const matching = Array.from('0123456789X').filter((digit) => {
          const result = vinCheckDigit(number.slice(0, 8) + digit + number.slice(9));
          return result.kind === 'checkDigit' && result.matches;
        });
        expect(matching).toHaveLength(1);
      }),
      seed,
    );
  });
});

describe('modelYearOf', () => {
  it('reads a digit at position seven as the years to 2009 and a letter as those from 2010', () => {
    // The published example has year code 5 and a digit at position 7: 2005.
    expect(modelYearOf('17418598457118341')).toEqual({ kind: 'modelYear', year: 2005, otherCycleYear: 2035 });
    expect(modelYearOf('174185A8457118341')).toEqual({ kind: 'modelYear', year: 2035, otherCycleYear: 2005 });
    expect(modelYearOf('ZZZTEST7XZA000014')).toEqual({ kind: 'notCoded', reason: 'code' });
  });

  it('knows the first and the last code of both cycles', () => {
    const at = (seventh: string, code: string) => modelYearOf(`111111${seventh}11${code}1111111`);
    expect(at('1', 'A')).toMatchObject({ year: 1980 });
    expect(at('1', '9')).toMatchObject({ year: 2009 });
    expect(at('A', 'A')).toMatchObject({ year: 2010 });
    expect(at('A', '9')).toMatchObject({ year: 2039 });
    expect(at('1', 'Y')).toMatchObject({ year: 2000 });
    expect(at('1', 'T')).toMatchObject({ year: 1996 });
  });

  it('codes no year by I, O, Q, U, Z and 0, nor in another length', () => {
    for (const code of 'IOQUZ0')
      expect(modelYearOf(`111111111${code}1111111`)).toMatchObject({ reason: 'code' });
    expect(modelYearOf('111')).toEqual({ kind: 'notCoded', reason: 'length' });
  });
});

describe('examineVehicleNumber', () => {
  it('accepts a right number in any spelling without a word', () => {
    expect(examineVehicleNumber({ asRead: '*zzz test7-xza 000014*', firstUsedOn: '1994-05-01' })).toEqual({
      normalised: 'ZZZTEST7XZA000014',
      numberKind: 'vin',
      warnings: [],
      refusals: [],
    });
  });

  it('calls a differing check digit normal, and asks to read again only for North America from 1981', () => {
    const asRead = 'ZZZTEST71ZA000014';
    const advice = (more: object) =>
      examineVehicleNumber({ asRead, ...more }).warnings.map(({ values }) => values['advice']);
    expect(advice({})).toEqual(['normalOutsideNorthAmerica']);
    expect(advice({ market: 'elsewhere', firstUsedOn: '1994-05-01' })).toEqual(['normalOutsideNorthAmerica']);
    expect(advice({ market: 'northAmerica' })).toEqual(['normalOutsideNorthAmerica']);
    expect(advice({ market: 'northAmerica', firstUsedOn: '1980-12-31' })).toEqual([
      'normalOutsideNorthAmerica',
    ]);
    expect(advice({ market: 'northAmerica', firstUsedOn: '1981-01-01' })).toEqual(['pleaseReread']);
    expect(examineVehicleNumber({ asRead }).warnings[0]).toMatchObject({
      code: 'checkDigitDiffers',
      values: { read: '1', computed: 'X' },
    });
  });

  it('offers the reading in 1 and 0 for I, O and Q and leaves what was read as it is', () => {
    const examined = examineVehicleNumber({ asRead: 'ZZZTEST7XZAOOQOI4' });
    expect(examined.normalised).toBe('ZZZTEST7XZAOOQOI4');
    expect(examined.warnings).toEqual([
      {
        code: 'lettersNotUsed',
        values: {
          positions: '12,13,14,15,16',
          letters: 'I,O,Q',
          offered: 'ZZZTEST7XZA000014',
          checkDigitOfOffered: 'matches',
        },
      },
    ]);
  });

  it('warns about another length only where first use in 1981 or later is known', () => {
    expect(examineVehicleNumber({ asRead: '21-345 678' })).toMatchObject({
      normalised: '21345678',
      numberKind: 'chassisNumber',
      warnings: [],
    });
    expect(examineVehicleNumber({ asRead: '21345678', firstUsedOn: '1978-03-01' }).warnings).toEqual([]);
    expect(examineVehicleNumber({ asRead: '21345678', firstUsedOn: '1981-01-01' }).warnings).toEqual([
      { code: 'lengthNot17', values: { length: '8' } },
    ]);
  });

  it('keeps count of characters that could not be read', () => {
    expect(examineVehicleNumber({ asRead: 'ZZZT?ST7XZA0000*4', firstUsedOn: '1994-05-01' })).toEqual({
      normalised: 'ZZZTST7XZA00004',
      numberKind: 'vin',
      warnings: [{ code: 'illegibleCharacters', values: { positions: '5,16' } }],
      refusals: [],
    });
  });

  it('records a missing number as a warning', () => {
    expect(codes(examineVehicleNumber({ asRead: '  ' }).warnings)).toEqual(['numberMissing']);
    expect(codes(examineVehicleNumber({ asRead: '???' }).warnings)).toEqual(['numberMissing']);
  });

  it.each([
    ['a line break', 'ZZZTEST7XZA0000\n14', 'controlCharacter'],
    ['a null character', 'ZZZTEST7XZA0000\u000014', 'controlCharacter'],
    ['a lone surrogate', 'ZZZTEST7XZA0000\ud80014', 'controlCharacter'],
    ['a zero-width space', 'ZZZTEST7XZA0000\u200b14', 'invisibleCharacter'],
    ['a byte order mark', '\ufeffZZZTEST7XZA000014', 'invisibleCharacter'],
    ['a right-to-left override', 'ZZZTEST7XZA0000\u202e14', 'invisibleCharacter'],
    ['a soft hyphen', 'ZZZTEST7XZA0000\u00ad14', 'invisibleCharacter'],
    ['full-width letters', 'ＺZZTEST7XZA000014', 'lookAlikeCharacter'],
    ['a Cyrillic A', 'ZZZTEST7XZ\u0410000014', 'lookAlikeCharacter'],
    ['a Greek capital', 'ZZZ\u03a4EST7XZA000014', 'lookAlikeCharacter'],
    ['an Arabic-Indic digit', 'ZZZTEST7XZA00001\u0664', 'lookAlikeCharacter'],
    ['a mathematical letter', 'ZZZTEST7XZ\u{1d400}000014', 'lookAlikeCharacter'],
    ['a dotless i', 'ZZZTEST7XZA0000\u013114', 'lookAlikeCharacter'],
    ['a loose combining mark', 'ZZZTEST7XZA0000\u033514', 'lookAlikeCharacter'],
  ])('refuses %s apart from the warnings', (_, asRead, code) => {
    const examined = examineVehicleNumber({ asRead });
    expect(codes(examined.refusals)).toEqual([code]);
    expect(examined.warnings).toEqual([]);
  });

  it('says where the refused characters stand', () => {
    expect(characterRefusals('A\u0410B\u200b\u0410')).toEqual([
      { code: 'invisibleCharacter', values: { positions: '4', codePoints: 'U+200B' } },
      { code: 'lookAlikeCharacter', values: { positions: '2,5', codePoints: 'U+0410' } },
    ]);
  });

  it('only warns about an accented letter, which can be seen for what it is', () => {
    expect(examineVehicleNumber({ asRead: 'ÄB-1234' })).toMatchObject({
      normalised: 'ÄB1234',
      warnings: [{ code: 'unusualCharacters', values: { positions: '1' } }],
      refusals: [],
    });
  });

  it('throws on a first-use date that is no date, because that is a fault of the caller', () => {
    expect(() => examineVehicleNumber({ asRead: 'X', firstUsedOn: 'May 1994' })).toThrow(RangeError);
  });

  it('never refuses what can be typed on a plain keyboard, and normalises the normalised form to itself', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary-ascii' }).map((text) => text.replace(/[^\x20-\x7e]/g, '')),
        (asRead) => {
          const examined = examineVehicleNumber({ asRead });
          expect(examined.refusals).toEqual([]);
          expect(examined.normalised).toMatch(/^[A-Z0-9]*$/);
          expect(examineVehicleNumber({ asRead: examined.normalised }).normalised).toBe(examined.normalised);
        },
      ),
      seed,
    );
  });
});

describe('plateKey', () => {
  it('is the same however a plate is spelled', () => {
    expect(plateKey('abc 1o5')).toBe('ABC105');
    expect(plateKey('ABC-105')).toBe('ABC105');
    expect(plateKey('ＡＢＣ１０５')).toBe('ABC105');
    expect(plateKey('А123ВС')).toBe(plateKey('A123BC'));
    expect(plateKey('ΙΟΑ-1234')).toBe(plateKey('IOA 1234'));
  });

  it('does not depend on how an accent was typed', () => {
    expect(plateKey('MU\u0308-AB 12')).toBe(plateKey('M\u00dc-AB 12'));
  });

  it('folds digits of other scripts onto ours', () => {
    expect(plateKey('\u0661\u0662\u0663')).toBe('123');
  });

  it('is its own key', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (plate) => {
        expect(plateKey(plateKey(plate))).toBe(plateKey(plate));
      }),
      seed,
    );
  });
});

describe('examinePlate', () => {
  it('stores the composed form and looks up by the key', () => {
    expect(examinePlate(' MU\u0308-AB 12 ')).toEqual({ plate: 'M\u00dc-AB 12', key: 'MUAB12', refusals: [] });
  });

  it('takes the scripts plates are written in and refuses what cannot be seen', () => {
    expect(examinePlate('А 123 ВС').refusals).toEqual([]);
    expect(codes(examinePlate('AB\u200b12').refusals)).toEqual(['invisibleCharacter']);
    expect(codes(examinePlate('AB\n12').refusals)).toEqual(['controlCharacter']);
    expect(codes(examinePlate('ＡＢ12').refusals)).toEqual(['lookAlikeCharacter']);
    expect(codes(examinePlate('\u13aaB12').refusals)).toEqual(['lookAlikeCharacter']);
  });
});
