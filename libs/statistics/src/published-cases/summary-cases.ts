import { observedToExpected } from '../charts/observed-to-expected.js';
import { meanInterval } from '../descriptive/mean-interval.js';
import { sampleQuantile } from '../descriptive/sample-quantile.js';
import { sampleVariance } from '../descriptive/sample-variance.js';
import { logRankTest } from '../survival/log-rank-test.js';
import { placeboRemissions, treatedRemissions } from './life-data.js';
import {
  answered,
  closedForm,
  exactly,
  figuresOf,
  printed,
  type StatisticsPublishedCase,
} from './published-case.js';

/** 1001 values about 10000000.2 by turns 0.1 below and 0.1 above. */
const nearlyEqual = [10000000.2, ...Array.from({ length: 500 }, () => [10000000.1, 10000000.3]).flat()];

/** Samples in short, two groups of lives against each other, and counts against what was expected. */
export const summaryCases: readonly StatisticsPublishedCase[] = [
  {
    id: 'nist-numacc-summaries',
    title: 'Mean and standard deviation of numbers that differ in their last digits',
    source: 'NIST Statistical Reference Datasets, NumAcc1 and NumAcc4, certified values',
    provenance: ['published', 'memory'],
    input: '10000001, 10000003, 10000002; and 10000000.2 with 500 times 10000000.1 and 10000000.3',
    figures: [
      ...figuresOf(exactly, { firstMean: 10000002, firstDeviation: 1, median: 10000002 }),
      ...figuresOf(closedForm, { fourthMean: 10000000.2 }),
      // Written in binary the values themselves are off by up to 9e-10, a hundred-millionth of their deviation.
      ...figuresOf({ kind: 'relative', value: 1e-7 }, { fourthDeviation: 0.1 }),
    ],
    compute: () => {
      const first = [10000001, 10000003, 10000002];
      const fourth = answered(sampleVariance(nearlyEqual), 'estimated');
      return {
        firstMean: answered(meanInterval(first), 'estimated').mean,
        firstDeviation: answered(sampleVariance(first), 'estimated').standardDeviation,
        median: answered(sampleQuantile(first, 0.5), 'estimated').quantile,
        fourthMean: fourth.mean,
        fourthDeviation: fourth.standardDeviation,
      };
    },
  },
  {
    id: 'freireich-remissions-log-rank',
    title: 'Weeks of remission with a drug and without',
    source:
      'Freireich et al. (1963), Blood 21:699-716; Kleinbaum & Klein, Survival Analysis, prints 16.79; digits by SciPy 1.17.1',
    provenance: ['memory', 'computed'],
    input: '21 with the drug, 9 relapses; 21 without, all relapsed',
    figures: [
      ...figuresOf(exactly, { observedWith: 9, observedWithout: 21 }),
      ...figuresOf(printed(0.005), { chiSquarePrinted: 16.79, expectedWith: 19.25, expectedWithout: 10.75 }),
      ...figuresOf(closedForm, { chiSquare: 4.097919104767264 ** 2, pValue: 4.168809109334529e-5 }),
    ],
    compute: () => {
      const test = answered(logRankTest(treatedRemissions, placeboRemissions), 'tested');
      return {
        observedWith: test.observed[0],
        observedWithout: test.observed[1],
        chiSquarePrinted: test.chiSquare,
        expectedWith: test.expected[0],
        expectedWithout: test.expected[1],
        chiSquare: test.chiSquare,
        pValue: test.pValue,
      };
    },
  },
  {
    id: 'garwood-poisson-limits',
    title: 'Exact limits of a count, over what was expected',
    source: 'Garwood (1936), Biometrika 28:437-442; figures by poisson.test of R 4.2.2',
    provenance: ['computed'],
    input: '0 of 2.5, 7 of 11 and 42 of 40 expected, 95 %',
    figures: figuresOf(closedForm, {
      upperOfNone: 1.47555178164557,
      lowerOf7: 0.255851186501806,
      upperOf7: 1.31115230560931,
      ratioOf42: 1.05,
      lowerOf42: 0.756747643311942,
      upperOf42: 1.41929496946227,
    }),
    compute: () => {
      const of = (observed: number, expected: number) =>
        answered(observedToExpected(observed, expected), 'estimated');
      const [none, seven, many] = [of(0, 2.5), of(7, 11), of(42, 40)];
      return {
        upperOfNone: none.interval.upper,
        lowerOf7: seven.interval.lower,
        upperOf7: seven.interval.upper,
        ratioOf42: many.ratio,
        lowerOf42: many.interval.lower,
        upperOf42: many.interval.upper,
      };
    },
  },
];
