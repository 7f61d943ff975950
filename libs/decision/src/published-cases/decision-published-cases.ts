import { caseFigures, type PublishedCase } from '@endfloat/metrology';
import { breakEvenProbability } from '../expected-cost/break-even-probability.js';
import { compareOptions } from '../expected-cost/compare-options.js';
import type { CostRates, OptionCostTerms } from '../expected-cost/option-cost-terms.js';

const cents = { kind: 'absolute', value: 0.005 } as const;
const euro = (amount: string) => ({ amount, currency: 'EUR' });

const rates: CostRates = {
  labourPerHour: euro('80.00'),
  downtimePerDay: euro('60.00'),
  comebackHandling: euro('250.00'),
  followUpRepair: euro('654.00'),
};

const option = (
  optionId: string,
  [parts, labourHours, downtimeDays, probabilityOfComeback]: readonly [string, string, string, string],
  comebackConsequence: OptionCostTerms['comebackConsequence'],
): OptionCostTerms => ({
  optionId,
  parts: euro(parts),
  labourHours,
  downtimeDays,
  probabilityOfComeback,
  comebackConsequence,
  core: null,
});

const adjust = option('adjust', ['0.00', '1.2', '0', '0.60'], 'handlingPlusFollowUpRepair');
const reBush = option('reBush', ['35.00', '4.0', '2', '0.10'], 'handlingPlusFollowUpRepair');
const exchange = option('exchange', ['310.00', '1.8', '3', '0.08'], 'handlingOnly');

/** Every worked example that this room reproduces to its last digit. */
export const decisionPublishedCases: readonly PublishedCase[] = [
  {
    id: 'expected-costs-worn-housing',
    title: 'A throttle housing over its limit: adjust, re-bush or exchange',
    source: 'worked by hand from invented prices and judgement chances; common practice, no publication',
    provenance: ['computed'],
    input:
      'EUR 80 an hour, 60 a day, 250 a comeback, 654 the repair after it; adjust 1.2 h, 0.60; re-bush 35 + 4 h + 2 d, 0.10; exchange 310 + 1.8 h + 3 d, 0.08 under warranty',
    figures: caseFigures(
      {
        adjust: 96 + 0.6 * (250 + 654),
        reBush: 35 + 320 + 120 + 0.1 * (250 + 654),
        exchange: 310 + 144 + 180 + 0.08 * 250,
        breakEvenOfAdjusting: (565.4 - 96) / 904,
      },
      cents,
    ),
    compute: () => {
      const { cheapestFirst } = compareOptions([adjust, reBush, exchange], rates);
      const level = breakEvenProbability(adjust, reBush, rates);
      return {
        ...Object.fromEntries(
          cheapestFirst.map(({ optionId, expectedTotal }) => [optionId, Number(expectedTotal.amount)]),
        ),
        ...(level.kind === 'at' ? { breakEvenOfAdjusting: level.probabilityOfComeback } : {}),
      };
    },
  },
];
