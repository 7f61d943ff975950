import { caseFigures, type PublishedCase } from '@endfloat/metrology';
import { breakEvenProbability } from '../expected-cost/break-even-probability.js';
import { compareOptions } from '../expected-cost/compare-options.js';
import { shaftOverLimit, workedRates } from './worn-housing-example.js';

const halfCent = { kind: 'absolute', value: 0.005 } as const;

/** Every worked example that this room reproduces to its last digit. */
export const decisionPublishedCases: readonly PublishedCase[] = [
  {
    id: 'expected-costs-worn-housing',
    title: 'A throttle housing over its limit: five options',
    source: 'worked by hand from invented prices and judgement chances; common practice, no publication',
    provenance: ['byHand'],
    input:
      'EUR 80 an hour, 60 a day, 250 a comeback, 654 the repair after it; adjust 1.2 h, 0.60; re-bush 35 + 4 h + 2 d, 0.10; exchange 310 + 1.8 h + 3 d, 0.08 under warranty; used 120 + 1.8 h + 4 d, 0.22; new old stock 520 + 1.8 h + 14 d, 0.04 under warranty; adjusting is level with re-bushing at (565.40 - 96) / 904',
    figures: [
      ...caseFigures(
        {
          're-bush': 565.4,
          'adjust-only': 638.4,
          'remanufactured-exchange': 654,
          'used-measured': 702.88,
          'new-old-stock': 1514,
        },
        halfCent,
      ),
      ...caseFigures({ breakEvenOfAdjusting: 0.519248 }, { kind: 'absolute', value: 5e-7 }),
    ],
    compute: () => {
      const { cheapestFirst } = compareOptions(Object.values(shaftOverLimit), workedRates);
      const level = breakEvenProbability(shaftOverLimit.adjustOnly, shaftOverLimit.reBush, workedRates);
      return {
        ...Object.fromEntries(
          cheapestFirst.map(({ optionId, expectedTotal }) => [optionId, Number(expectedTotal.amount)]),
        ),
        ...(level.kind === 'at' ? { breakEvenOfAdjusting: level.probabilityOfComeback } : {}),
      };
    },
  },
];
