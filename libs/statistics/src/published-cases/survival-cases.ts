import { kaplanMeier } from '../survival/kaplan-meier.js';
import { survivalAtAge } from '../survival/curve-lookup.js';
import { turnbullEstimate } from '../survival/turnbull-estimate.js';
import { weibayes } from '../survival/weibayes.js';
import { handbook, heatExchangerLives } from './life-cases.js';
import { generatorFans, nistLives } from './life-data.js';
import {
  answered,
  closedForm,
  figuresOf,
  given,
  maximum,
  printed,
  type StatisticsPublishedCase,
} from './published-case.js';

/** Shares surviving without a distribution, and a mean life. */
export const survivalCases: readonly StatisticsPublishedCase[] = [
  {
    id: 'nist-weibull-kaplan-meier',
    title: 'Share of the same units surviving, with three kinds of limits',
    source: `${handbook}, listing; limits by R package survival`,
    provenance: ['published', 'computed'],
    input: 'ten failures from 54 h on, ten units taken off at 500 h; at 386 h',
    figures: [
      ...figuresOf(closedForm, { first: 0.95, last: 0.5 }),
      ...figuresOf(printed(5e-9), {
        standardError: 0.111803399,
        logLower: 0.3225786,
        logUpper: 0.77500491,
        logLogLower: 0.27132776,
        logLogUpper: 0.69189246,
        plainLower: 0.28086936,
        plainUpper: 0.71913064,
      }),
    ],
    compute: () => {
      const curve = (limitForm: 'plain' | 'log' | 'logLog') =>
        answered(kaplanMeier(nistLives, { limitForm }), 'estimated');
      const [plain, log, logLog] = [curve('plain'), curve('log'), curve('logLog')];
      return {
        first: given(plain.survival[0]),
        last: given(plain.survival.at(-1)),
        standardError: given(plain.standardErrors.at(-1)),
        logLower: given(log.lower.at(-1)),
        logUpper: given(log.upper.at(-1)),
        logLogLower: given(logLog.lower.at(-1)),
        logLogUpper: given(logLog.upper.at(-1)),
        plainLower: given(plain.lower.at(-1)),
        plainUpper: given(plain.upper.at(-1)),
      };
    },
  },
  {
    id: 'generator-fans-kaplan-meier',
    title: 'Share of the fans surviving',
    source: 'Nelson (1982), as above; figures by R package survival',
    provenance: ['computed'],
    input: '70 fans, 12 failed; at 8750 h, limits of the log-log form',
    figures: figuresOf(printed(5e-9), {
      survival: 0.70703782,
      standardError: 0.098041977,
      lower: 0.46801156,
      upper: 0.8536053,
    }),
    compute: () => {
      const curve = answered(kaplanMeier(generatorFans), 'estimated');
      const { survival, lower, upper } = answered(survivalAtAge(curve, 8750), 'estimated');
      return {
        survival,
        standardError: given(curve.standardErrors.at(-1)),
        lower: given(lower),
        upper: given(upper),
      };
    },
  },
  {
    id: 'generator-fans-exponential',
    title: 'Mean life of the fans if they do not age: hours over failures',
    source: 'Nelson (1982), as above: 344440 h / 12',
    provenance: ['published', 'computed'],
    input: '70 fans, 12 failed, shape 1',
    figures: figuresOf(closedForm, { mean: 344440 / 12, events: 12 }),
    compute: () => {
      const { characteristicLife, events } = answered(weibayes(generatorFans, 1), 'estimated');
      return { mean: characteristicLife, events };
    },
  },
  {
    id: 'heat-exchanger-turnbull',
    title: 'The same without a distribution',
    source: 'Meeker & Escobar (1998), ch. 3, prints .0133 .0384 .0582; standard errors by R package survival',
    provenance: ['memory', 'computed'],
    input: '300 tubes, 11 found cracked between yearly inspections',
    figures: [
      ...figuresOf(printed(5e-9), { failedBy1: 0.01333333, failedBy2: 0.03837563, failedBy3: 0.05820294 }),
      ...figuresOf(maximum, { standardErrorBy2: 0.012802115, standardErrorBy3: 0.01870063 }),
    ],
    compute: () => {
      const { upperAges, survival, standardErrors } = answered(
        turnbullEstimate(heatExchangerLives),
        'estimated',
      );
      const at = (age: number): number => upperAges.indexOf(age);
      return {
        failedBy1: 1 - given(survival[at(1)]),
        failedBy2: 1 - given(survival[at(2)]),
        failedBy3: 1 - given(survival[at(3)]),
        standardErrorBy2: given(standardErrors[at(2)]),
        standardErrorBy3: given(standardErrors[at(3)]),
      };
    },
  },
];
