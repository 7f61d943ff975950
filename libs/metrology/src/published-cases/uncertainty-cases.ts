import type { InstrumentErrorModel } from '../instruments/instrument.js';
import { instrumentUncertainty } from '../instruments/instrument-uncertainty.js';
import type { QuantityKind } from '../quantities/quantity-kind.js';
import type { Quantity } from '../quantities/quantity.js';
import { meanOfQuantities } from '../quantities/mean-of-quantities.js';
import { combineUncertainty } from '../uncertainty/combine-uncertainty.js';
import { expandedUncertainty } from '../uncertainty/expanded-uncertainty.js';
import { productTermUncertainty } from '../uncertainty/product-term.js';
import { rectangularUncertainty, resolutionUncertainty } from '../uncertainty/standard-uncertainty.js';
import { uncertaintyOfMean } from '../uncertainty/uncertainty-of-mean.js';
import type { PublishedCase } from './published-case.js';
import { caseFigures } from './published-case.js';

/** Components of the end gauge in nm with their degrees of freedom; the last two are products, not rounded. */
const endGauge: readonly (readonly [nanometres: number, degreesOfFreedom: number])[] = [
  [25, 18],
  [5.8, 24],
  [3.9, 5],
  [6.7, 8],
  [50e6 * 0.1 * 0.58e-6, 50],
  [50e6 * 11.5e-6 * 0.029, 2],
];

const endGaugeBudget = (from = 0, to = endGauge.length): ReturnType<typeof combineUncertainty> =>
  combineUncertainty(
    endGauge.slice(from, to).map(([standardUncertainty, degreesOfFreedom]) => ({
      source: 'other',
      standardUncertainty,
      degreesOfFreedom,
    })),
  );

const temperatures =
  '96.90 98.18 98.25 98.61 99.03 99.49 99.56 99.74 99.89 100.07 100.33 100.42 100.68 100.95 101.11 101.20 101.57 101.84 102.36 102.72';

const exact = { kind: 'relative', value: 1e-9 } as const;

/** Combined uncertainty by the guide. */
export const uncertaintyCases: readonly PublishedCase[] = [
  {
    id: 'gum-end-gauge',
    title: 'Calibration of an end gauge of 50 mm',
    source:
      'JCGM 100:2008, H.1 and table H.1; prints u_c 32 nm, 16.7 degrees of freedom (from rounded parts), U99 93 nm',
    provenance: ['published', 'computed'],
    input: 'u in nm (degrees of freedom): 25 (18), 5.8 (24), 3.9 (5), 6.7 (8), 2.9 (50), 16.675 (2)',
    figures: [
      ...caseFigures({ comparison: 9.7 }, { kind: 'absolute', value: 0.05 }),
      ...caseFigures({ combinedPrinted: 32 }, { kind: 'absolute', value: 0.5 }),
      ...caseFigures({ combined: 31.7049779215, effectiveDegreesOfFreedom: 16.6449010297 }, exact),
      ...caseFigures({ usedDegreesOfFreedom: 16 }, { kind: 'absolute', value: 0 }),
      ...caseFigures({ factor95: 2.11990529922, factor99: 2.92078162243, expanded99: 93.4650119176 }, exact),
    ],
    compute: () => {
      const { standardUncertainty, effectiveDegreesOfFreedom } = endGaugeBudget();
      if (effectiveDegreesOfFreedom === 'infinite')
        throw new RangeError('degrees of freedom are finite here');
      const at = (level: number): ReturnType<typeof expandedUncertainty> =>
        expandedUncertainty(32, effectiveDegreesOfFreedom, { kind: 'level', level });
      return {
        comparison: endGaugeBudget(1, 4).standardUncertainty,
        combinedPrinted: standardUncertainty,
        combined: standardUncertainty,
        effectiveDegreesOfFreedom,
        usedDegreesOfFreedom: Number(at(0.99).degreesOfFreedom),
        factor95: at(0.95).coverageFactor,
        factor99: at(0.99).coverageFactor,
        expanded99: at(0.99).expanded,
      };
    },
  },
  {
    id: 'gum-end-gauge-second-order',
    title: 'Second-order terms of the end gauge',
    source: 'JCGM 100:2008, H.1.7; prints 11.7 nm, 1.7 nm and 34 nm',
    provenance: ['memory', 'computed'],
    input:
      'length 50e6 nm; u of the expansion difference 1e-6/sqrt(3), of the temperature 0.4062, of the coefficient 2e-6/sqrt(3), of the temperature difference 0.05/sqrt(3)',
    figures: caseFigures(
      { expansionTerm: 11.7260393996, temperatureTerm: 1.66666666667, combined: 33.8449908078 },
      exact,
    ),
    compute: () => {
      const temperature = Math.hypot(0.2, 0.5 / Math.sqrt(2));
      const expansionTerm = productTermUncertainty(50e6, rectangularUncertainty(1e-6), temperature);
      const temperatureTerm = productTermUncertainty(
        50e6,
        rectangularUncertainty(2e-6),
        rectangularUncertainty(0.05),
      );
      const combined = combineUncertainty(
        [endGaugeBudget().standardUncertainty, expansionTerm, temperatureTerm].map((standardUncertainty) => ({
          source: 'other',
          standardUncertainty,
          degreesOfFreedom: 'infinite',
        })),
      );
      return { expansionTerm, temperatureTerm, combined: combined.standardUncertainty };
    },
  },
  {
    id: 'gum-twenty-temperatures',
    title: 'Mean of twenty readings of a temperature',
    source: 'JCGM 100:2008, 4.4.3 and table 1; prints 100.145, 1.489, 0.333',
    provenance: ['memory', 'computed'],
    input: temperatures,
    figures: caseFigures({ mean: 100.145, standardDeviation: 1.48884448306, ofMean: 0.332915747205 }, exact),
    compute: () => {
      const readings = temperatures.split(' ').map((value): Quantity => ({ value, unit: 'Cel' }));
      const zero = { value: '0', unit: 'Cel' } as const;
      const budget = uncertaintyOfMean({
        readings,
        quantityKind: 'temperature',
        instrument: { errorModel: { kind: 'maximumPermissibleError', limit: zero }, resolution: zero },
        setUp: { standardUncertainty: zero, degreesOfFreedom: 'infinite' },
        priorRepeatability: null,
      });
      const mean = meanOfQuantities(readings, 'temperature');
      if (budget.kind !== 'known' || budget.repeatability === null || mean.kind !== 'converted') {
        throw new RangeError('the readings are complete');
      }
      return {
        mean: Number(mean.value),
        standardDeviation: budget.repeatability.standardDeviation,
        ofMean: budget.standardUncertainty,
      };
    },
  },
  {
    id: 'gum-resolution',
    title: 'Reading to the nearest step',
    source: 'JCGM 100:2008, F.2.2.1; prints 0.29',
    provenance: ['memory', 'computed'],
    input: 'steps of 1 g and of 0.01 mm',
    figures: caseFigures(
      { gram: 0.288675134595, gramVariance: 1 / 12, hundredth: 0.00288675134595 },
      { kind: 'relative', value: 2e-12 },
    ),
    compute: () => ({
      gram: resolutionUncertainty(1),
      gramVariance: resolutionUncertainty(1) ** 2,
      hundredth: resolutionUncertainty(0.01),
    }),
  },
  {
    id: 'gum-rectangular',
    title: 'Expansion coefficient known within bounds',
    source: 'JCGM 100:2008, 4.3.7, example 1; prints 53.3e-15 and 0.23e-6',
    provenance: ['memory', 'computed'],
    input: 'half-width 0.40e-6',
    figures: caseFigures({ variance: 5.33333333333e-14, standardUncertainty: 2.30940107676e-7 }, exact),
    compute: () => ({
      variance: rectangularUncertainty(0.4e-6) ** 2,
      standardUncertainty: rectangularUncertainty(0.4e-6),
    }),
  },
  {
    id: 'gum-instrument-specifications',
    title: 'What the specification of an instrument, a certificate and an accuracy class come to',
    source:
      'JCGM 100:2008, 4.3.7 example 2 (prints 15 uV, 8.7 uV) and 4.3.4 (prints 50 uOhm); EN 837-1 class, worked by hand',
    provenance: ['memory', 'computed'],
    input:
      '0.928571 V by 14e-6 of the reading + 2e-6 V; 129 uOhm with factor 2.58; class 1.6 of a span of 100 kPa',
    figures: [
      ...caseFigures({ voltHalfWidth: 15e-6, ohm: 50e-6 }, { kind: 'relative', value: 1e-5 }),
      ...caseFigures({ volt: 8.7e-6 }, { kind: 'absolute', value: 0.05e-6 }),
      ...caseFigures({ kilopascal: 1.6 / Math.sqrt(3) }, exact),
    ],
    compute: () => {
      const volts = specified(
        {
          kind: 'percentOfReadingPlusDigits',
          percent: '0.0014',
          digits: 2,
          digit: { value: '0.000001', unit: 'V' },
        },
        { value: '0.928571', unit: 'V' },
        'voltage',
      );
      const ohms = specified(
        {
          kind: 'expandedUncertainty',
          expanded: { value: '0.000129', unit: 'Ohm' },
          coverageFactor: 2.58,
          degreesOfFreedom: 'infinite',
        },
        { value: '10.000742', unit: 'Ohm' },
        'resistance',
      );
      const pressure = specified(
        { kind: 'accuracyClassOfSpan', accuracyClass: '1.6', span: { value: '100', unit: 'kPa' } },
        { value: '50', unit: 'kPa' },
        'vacuum',
      );
      return {
        voltHalfWidth: volts.halfWidth ?? NaN,
        volt: volts.standardUncertainty,
        ohm: ohms.standardUncertainty,
        kilopascal: pressure.standardUncertainty,
      };
    },
  },
];

/** The uncertainty of an instrument whose error is stated. */
function specified(model: InstrumentErrorModel, reading: Quantity, kind: QuantityKind) {
  const found = instrumentUncertainty(model, reading, kind);
  if (found.kind !== 'known') throw new RangeError(`not known: ${found.why}`);
  return found;
}
