import fc from 'fast-check';
import { canonicalNumber, canonicalStep } from './canonical-number.js';
import { compareQuantities } from './compare-quantities.js';
import { convertQuantity, toCanonical } from './convert-quantity.js';
import { ExactDecimal } from './exact-decimal.js';
import { meanOfQuantities } from './mean-of-quantities.js';
import { parseDecimalText } from './parse-decimal-text.js';
import { parseQuantity } from './parse-quantity.js';
import { parseReadingText } from './parse-reading-text.js';
import type { Quantity } from './quantity.js';
import type { QuantityKind } from './quantity-kind.js';
import { quantityKinds, quantityKindTable } from './quantity-kind.js';
import { unitCodes } from './unit-code.js';
import { unitTable } from './unit-table.js';

const seed = { seed: 20260504, numRuns: 300 };

/** Positive decimal texts of up to 12 digits, with and without decimals. */
const positiveText = fc
  .tuple(
    fc.integer({ min: 0, max: 999_999 }),
    fc.integer({ min: 1, max: 999_999 }),
    fc.integer({ min: 0, max: 6 }),
  )
  .map(([whole, decimals, length]) => {
    const fraction = String(decimals).padStart(6, '0').slice(0, length);
    return fraction === '' ? String(whole + 1) : `${whole}.${fraction}1`;
  });

const kindAndUnits = fc.constantFrom(...quantityKinds).chain((kind) =>
  fc.record({
    kind: fc.constant(kind),
    from: fc.constantFrom(...quantityKindTable[kind].units),
    to: fc.constantFrom(...quantityKindTable[kind].units),
    value: positiveText,
  }),
);

describe('decimal text', () => {
  it.each(['0', '0.10', '-5.4', '120000', '999999999999999999', '0.00000000000000001'])(
    'accepts %s as it is',
    (text) => {
      expect(parseDecimalText(text)).toEqual({ kind: 'decimal', text });
    },
  );

  it.each([
    '',
    ' 1',
    '1 ',
    '+1',
    '1e3',
    '.5',
    '5.',
    '01',
    '1,5',
    '--1',
    'NaN',
    'Infinity',
    '0x10',
    '１',
    '1.2.3',
    '-',
  ])('refuses %j', (text) => {
    expect(parseDecimalText(text).kind).toBe('notDecimal');
  });

  it('takes the sign off minus zero and keeps its decimals', () => {
    expect(parseDecimalText('-0')).toEqual({ kind: 'decimal', text: '0' });
    expect(parseDecimalText('-0.00')).toEqual({ kind: 'decimal', text: '0.00' });
  });

  it('refuses more than 18 digits, wherever the point is', () => {
    expect(parseDecimalText('1234567890123456789')).toEqual({
      kind: 'tooManyDigits',
      digits: 19,
      allowed: 18,
    });
    expect(parseDecimalText('0.123456789012345678').kind).toBe('tooManyDigits');
  });
});

describe('the tables of units and kinds', () => {
  it('give every kind a canonical unit that it allows, of one dimension, and not a reciprocal one', () => {
    for (const kind of quantityKinds) {
      const { canonical, units } = quantityKindTable[kind];
      expect(units).toContain(canonical);
      expect(new Set(units.map((unit) => unitTable[unit].dimension)).size).toBe(1);
      expect(unitTable[canonical].isReciprocal).toBe(false);
      expect(new Set(units).size).toBe(units.length);
    }
  });

  it('leave no unit without a kind', () => {
    const used = new Set(quantityKinds.flatMap((kind) => quantityKindTable[kind].units));
    expect(unitCodes.filter((unit) => !used.has(unit))).toEqual([]);
  });
});

describe('conversion', () => {
  it('turns two thirty-seconds of an inch into 1.5875 mm and not into 1.6', () => {
    expect(toCanonical({ value: '0.0625', unit: '[in_i]' }, 'length')).toEqual({
      kind: 'converted',
      value: '1.5875',
      unit: 'mm',
    });
  });

  it('handles temperatures with their offset and differences without: by hand, 68 degF is 20 degC, a step of 9 degF is 5 K', () => {
    expect(toCanonical({ value: '68', unit: '[degF]' }, 'temperature')).toMatchObject({ value: '20' });
    expect(toCanonical({ value: '-40', unit: '[degF]' }, 'temperature')).toMatchObject({ value: '-40' });
    expect(toCanonical({ value: '0', unit: 'K' }, 'temperature')).toMatchObject({ value: '-273.15' });
    expect(toCanonical({ value: '9', unit: '[degF]' }, 'temperatureDifference')).toMatchObject({
      value: '5',
    });
    expect(toCanonical({ value: '5', unit: 'Cel' }, 'temperatureDifference')).toMatchObject({ value: '5' });
  });

  it('turns distance per volume over: by hand, 20 km/L is 5 L/100 km, and 235.214583333 / mpg(US) is L/100 km', () => {
    expect(toCanonical({ value: '20', unit: 'km/L' }, 'fuelConsumption')).toMatchObject({ value: '5' });
    expect(convertQuantity({ value: '5', unit: 'L/(100.km)' }, 'fuelConsumption', 'km/L')).toMatchObject({
      value: '20',
    });
    expect(canonicalNumber({ value: '1', unit: '[mi_i]/[gal_us]' }, 'fuelConsumption')).toBeCloseTo(
      235.214583333,
      8,
    );
    expect(canonicalNumber({ value: '1', unit: '[mi_i]/[gal_br]' }, 'fuelConsumption')).toBeCloseTo(
      282.480936332,
      8,
    );
  });

  it('keeps the inch of mercury at 32 and 60 degF apart from the conventional one', () => {
    const kilopascals = ["[in_i'Hg]", "[in_i'Hg_32degF]", "[in_i'Hg_60degF]"].map((unit) =>
      toCanonical({ value: '1', unit: unit as Quantity['unit'] }, 'vacuum'),
    );
    expect(kilopascals).toMatchObject([
      { value: '3.386388640341' },
      { value: '3.38638' },
      { value: '3.37685' },
    ]);
  });

  it('refuses a unit of another kind and says which are allowed', () => {
    expect(convertQuantity({ value: '1', unit: 'kPa' }, 'length', 'mm')).toMatchObject({
      kind: 'wrongKindOfUnit',
      unit: 'kPa',
      quantityKind: 'length',
    });
    expect(convertQuantity({ value: '1', unit: 'mm' }, 'length', 'km').kind).toBe('wrongKindOfUnit');
  });

  it('refuses what cannot exist: below absolute zero, negative absolute pressure or vacuum, no distance per volume', () => {
    const refused: readonly [Quantity, QuantityKind][] = [
      [{ value: '-460', unit: '[degF]' }, 'temperature'],
      [{ value: '-0.1', unit: 'bar' }, 'absolutePressure'],
      [{ value: '-60', unit: 'kPa' }, 'vacuum'],
      [{ value: '0', unit: '[mi_i]/[gal_us]' }, 'fuelConsumption'],
      [{ value: '-1', unit: '1' }, 'count'],
    ];
    for (const [quantity, kind] of refused)
      expect(toCanonical(quantity, kind).kind).toBe('outsidePhysicalRange');
    expect(toCanonical({ value: '-60', unit: 'kPa' }, 'gaugePressure').kind).toBe('converted');
    expect(convertQuantity({ value: '0', unit: 'L/(100.km)' }, 'fuelConsumption', 'km/L').kind).toBe(
      'outsidePhysicalRange',
    );
  });

  it('there and back, rounded to 18 digits, is exactly what was entered, in every kind and unit', () => {
    fc.assert(
      fc.property(kindAndUnits, ({ kind, from, to, value }) => {
        const there = convertQuantity({ value, unit: from }, kind, to);
        // A positive value is refused only below absolute zero, which no positive value in these scales is.
        if (there.kind !== 'converted') throw new Error(there.kind);
        const back = convertQuantity(there, kind, from);
        if (back.kind !== 'converted') throw new Error(back.kind);
        const rounded = new ExactDecimal(back.value).toSignificantDigits(18).toFixed();
        expect(rounded).toBe(new ExactDecimal(value).toFixed());
      }),
      { ...seed, numRuns: 1000 },
    );
  });

  it('to a unit that is a power of ten away and back is exact text for text', () => {
    fc.assert(
      fc.property(positiveText, (value) => {
        const there = convertQuantity({ value, unit: 'mm' }, 'length', 'um');
        if (there.kind !== 'converted') throw new Error(there.kind);
        const back = convertQuantity(there, 'length', 'mm');
        expect(back).toMatchObject({ value: new ExactDecimal(value).toFixed() });
      }),
      seed,
    );
  });

  it('keeps the order of values, turned round on a reciprocal scale', () => {
    fc.assert(
      fc.property(kindAndUnits, positiveText, ({ kind, from, to, value }, other) => {
        const [a, b] = [value, other].map((text) => convertQuantity({ value: text, unit: from }, kind, to));
        if (a?.kind !== 'converted' || b?.kind !== 'converted') return;
        const isTurned = unitTable[from].isReciprocal !== unitTable[to].isReciprocal;
        const before = new ExactDecimal(value).cmp(other);
        const after = new ExactDecimal(a.value).cmp(b.value);
        expect(after).toBe(isTurned ? -before + 0 : before);
      }),
      seed,
    );
  });
});

describe('comparison', () => {
  it('compares as written: 2/32 in is less than 1.6 mm, and 1 inHg is more than 3.386 kPa', () => {
    const compare = (a: Quantity, b: Quantity, kind: QuantityKind): unknown => compareQuantities(a, b, kind);
    expect(compare({ value: '0.0625', unit: '[in_i]' }, { value: '1.6', unit: 'mm' }, 'length')).toEqual({
      kind: 'compared',
      order: 'less',
    });
    expect(compare({ value: '1', unit: "[in_i'Hg]" }, { value: '3.386', unit: 'kPa' }, 'vacuum')).toEqual({
      kind: 'compared',
      order: 'greater',
    });
    expect(compare({ value: '1.60', unit: 'mm' }, { value: '1600', unit: 'um' }, 'length')).toEqual({
      kind: 'compared',
      order: 'equal',
    });
  });

  it('finds a value equal to its own conversion where that is exact', () => {
    fc.assert(
      fc.property(positiveText, (value) => {
        const inch: Quantity = { value, unit: '[in_i]' };
        const millimetres = toCanonical(inch, 'length');
        if (millimetres.kind !== 'converted' || parseDecimalText(millimetres.value).kind !== 'decimal')
          return;
        expect(compareQuantities(inch, millimetres, 'length')).toMatchObject({ order: 'equal' });
      }),
      seed,
    );
  });

  it('passes a refusal on', () => {
    expect(compareQuantities({ value: '1', unit: 'mm' }, { value: 'x', unit: 'mm' }, 'length').kind).toBe(
      'notDecimal',
    );
    expect(compareQuantities({ value: '1', unit: 'V' }, { value: '1', unit: 'mm' }, 'length').kind).toBe(
      'wrongKindOfUnit',
    );
  });
});

describe('mean of quantities', () => {
  it('is exact and in the canonical unit: by hand, 0.17, 0.19 and 180 um have the mean 0.18 mm', () => {
    const quantities: readonly Quantity[] = [
      { value: '0.17', unit: 'mm' },
      { value: '0.19', unit: 'mm' },
      { value: '180', unit: 'um' },
    ];
    expect(meanOfQuantities(quantities, 'length')).toEqual({ kind: 'converted', value: '0.18', unit: 'mm' });
  });

  it('does not depend on the order', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(positiveText, fc.constantFrom('mm' as const, '[in_i]' as const, '[mil_i]' as const)),
          {
            minLength: 2,
            maxLength: 6,
          },
        ),
        (values) => {
          const quantities = values.map(([value, unit]): Quantity => ({
            value,
            unit: unit,
          }));
          expect(meanOfQuantities([...quantities].reverse(), 'length')).toEqual(
            meanOfQuantities(quantities, 'length'),
          );
        },
      ),
      seed,
    );
  });

  it('averages many readings in units with a denominator', () => {
    const psi = Array.from({ length: 60 }, (_, index): Quantity => ({
      value: String(100 + index),
      unit: '[psi]',
    }));
    const mean = meanOfQuantities(psi, 'gaugePressure');
    const middle = toCanonical({ value: '129.5', unit: '[psi]' }, 'gaugePressure');
    expect(mean).toEqual(middle);
  });

  it('needs at least one, and passes a refusal on', () => {
    expect(() => meanOfQuantities([], 'length')).toThrow(RangeError);
    expect(meanOfQuantities([{ value: '1', unit: 'V' }], 'length').kind).toBe('wrongKindOfUnit');
  });
});

describe('steps on a scale', () => {
  it('have no offset, and no fixed size on a reciprocal scale', () => {
    expect(canonicalStep({ value: '1.8', unit: '[degF]' }, 'temperature')).toEqual({
      kind: 'step',
      value: 1,
    });
    expect(canonicalStep({ value: '1', unit: 'km/L' }, 'fuelConsumption')).toEqual({
      kind: 'scaleNotLinear',
    });
    expect(() => canonicalStep({ value: '-1', unit: 'mm' }, 'length')).toThrow(RangeError);
    expect(() => canonicalStep({ value: '1', unit: 'V' }, 'length')).toThrow(RangeError);
  });
});

describe('text of a reading', () => {
  it('reads fractions of an inch and keeps them as entered', () => {
    expect(parseReadingText(' 2/32 ', '[in_i]')).toEqual({
      kind: 'reading',
      asEntered: '2/32',
      value: '0.0625',
      form: 'fraction',
      step: '0.03125',
    });
    expect(parseReadingText('4 1/4', '[in_i]')).toMatchObject({ value: '4.25', asEntered: '4 1/4' });
    expect(parseReadingText('0 3/128', '[in_i]')).toMatchObject({ value: '0.0234375' });
  });

  it('reads a decimal in any unit and guesses nothing else', () => {
    expect(parseReadingText('1.60', 'mm')).toMatchObject({
      kind: 'reading',
      value: '1.60',
      form: 'decimal',
      step: null,
    });
    expect(parseReadingText('2/32', 'mm').kind).toBe('fractionNotOfInches');
    for (const text of ['1,6', '2/30', '1/0', '2 /32', 'two', ''])
      expect(parseReadingText(text, '[in_i]').kind).toBe('notAReading');
  });
});

describe('a quantity from outside', () => {
  it('comes back as entered and canonical, or refused', () => {
    expect(parseQuantity('-0.0', 'mm', 'length')).toMatchObject({
      quantity: { value: '0.0' },
      canonical: { value: '0' },
    });
    expect(parseQuantity('1', 'in', 'length')).toMatchObject({ kind: 'wrongKindOfUnit', unit: 'in' });
    expect(parseQuantity('1', 'bar', 'voltage').kind).toBe('wrongKindOfUnit');
    expect(parseQuantity('1,0', 'bar', 'vacuum').kind).toBe('notDecimal');
  });
});
