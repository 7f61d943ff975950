import { convertQuantity } from '../quantities/convert-quantity.js';
import type { QuantityKind } from '../quantities/quantity-kind.js';
import type { UnitCode } from '../quantities/unit-code.js';
import type { PublishedCase } from './published-case.js';
import { caseFigures } from './published-case.js';

function converted(value: string, from: UnitCode, kind: QuantityKind, to: UnitCode): number {
  const result = convertQuantity({ value, unit: from }, kind, to);
  if (result.kind !== 'converted') throw new RangeError(`${from} was refused: ${result.kind}`);
  return Number(result.value);
}

/** Half a unit of the seventh printed digit, relative to the smallest factor. */
const printed = { kind: 'relative', value: 3e-7 } as const;
const exact = { kind: 'relative', value: 1e-12 } as const;

/** Unit factors. */
export const unitCases: readonly PublishedCase[] = [
  {
    id: 'sp-811-printed-factors',
    title: 'Factors as printed with seven digits',
    source: 'NIST SP 811 (2008), Appendix B.8 and B.9',
    provenance: ['published'],
    input: 'one of each unit',
    figures: caseFigures(
      { inchOfMercury: 3386.389, psi: 6894.757, millibar: 100, inch: 0.0254, mil: 2.54e-5, mile: 1609.344 },
      printed,
    ),
    compute: () => ({
      inchOfMercury: converted('1', "[in_i'Hg]", 'vacuum', 'Pa'),
      psi: converted('1', '[psi]', 'gaugePressure', 'Pa'),
      millibar: converted('1', 'mbar', 'gaugePressure', 'Pa'),
      inch: converted('1', '[in_i]', 'length', 'm'),
      mil: converted('1', '[mil_i]', 'length', 'm'),
      mile: converted('1', '[mi_i]', 'distance', 'm'),
    }),
  },
  {
    id: 'sp-811-exact-factors',
    title: 'Factors from the exact definitions',
    source: 'NIST SP 811 (2008), Appendix B; conventional mercury 13595.1 kg/m3 at 9.80665 m/s2',
    provenance: ['published', 'computed'],
    input: 'one of each unit; 18 inches of mercury',
    figures: caseFigures(
      {
        inchOfMercury: 3386.388640341,
        psi: 6894.757293168,
        mil: 2.54e-5,
        mile: 1609.344,
        psiPerBar: 14.503773773022,
        inchOfMercuryPerKilopascal: 0.29529983301,
        eighteenInches: 60.9549955261,
        eighteenInchesMillibar: 609.549955261,
      },
      exact,
    ),
    compute: () => ({
      inchOfMercury: converted('1', "[in_i'Hg]", 'vacuum', 'Pa'),
      psi: converted('1', '[psi]', 'gaugePressure', 'Pa'),
      mil: converted('1', '[mil_i]', 'length', 'm'),
      mile: converted('1', '[mi_i]', 'distance', 'm'),
      psiPerBar: converted('1', 'bar', 'gaugePressure', '[psi]'),
      inchOfMercuryPerKilopascal: converted('1', 'kPa', 'vacuum', "[in_i'Hg]"),
      eighteenInches: converted('18', "[in_i'Hg]", 'vacuum', 'kPa'),
      eighteenInchesMillibar: converted('18', "[in_i'Hg]", 'vacuum', 'mbar'),
    }),
  },
];
