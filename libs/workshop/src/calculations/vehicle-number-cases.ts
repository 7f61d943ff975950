import { modelYearOf, vinCheckDigit } from '@endfloat/catalogue';
import { caseFigures, type PublishedCase } from '@endfloat/metrology';

function sumOf(number: string): number {
  const digit = vinCheckDigit(number);
  if (digit.kind !== 'checkDigit') throw new RangeError(`no vehicle identification number: ${digit.reason}`);
  return digit.sum;
}

function yearOf(number: string): number {
  const year = modelYearOf(number);
  if (year.kind !== 'modelYear') throw new RangeError(`no model year: ${year.reason}`);
  return year.year;
}

/** Vehicle identification numbers with a published check digit. */
export const vehicleNumberCases: readonly PublishedCase[] = [
  {
    id: 'cfr-565-sample-number',
    title: 'Weighted sums of two published numbers',
    source: '49 CFR 565, table V (sum 411, check digit 4); a second, widely printed example (sum 351, X)',
    provenance: ['published', 'computed'],
    input: '1G4AH59H45G118341 and 1M8GDM9AXKP042788',
    figures: caseFigures({ sum: 411, secondSum: 351, year: 2005 }, { kind: 'absolute', value: 0 }),
    compute: () => ({
      sum: sumOf('1G4AH59H45G118341'),
      secondSum: sumOf('1M8GDM9AXKP042788'),
      year: yearOf('1G4AH59H45G118341'),
    }),
  },
];
