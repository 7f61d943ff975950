import { countChart } from '../charts/count-chart.js';
import { funnelLimits } from '../charts/funnel-limits.js';
import { proportionChart } from '../charts/proportion-chart.js';
import { betaBinomialFit } from '../proportions/beta-binomial-fit.js';
import { betaPosterior } from '../proportions/beta-posterior.js';
import { clopperPearsonInterval } from '../proportions/clopper-pearson-interval.js';
import { jamesSteinProportions } from '../proportions/james-stein-proportions.js';
import { jeffreysInterval } from '../proportions/jeffreys-interval.js';
import { newcombeDifference } from '../proportions/newcombe-difference.js';
import type { ProportionIntervalOutcome } from '../proportions/proportion-interval.js';
import { wilsonInterval } from '../proportions/wilson-interval.js';
import { battingHits, defectiveChips, timesAtBat, waferDefects } from './count-data.js';
import {
  answered,
  closedForm,
  exactly,
  figuresOf,
  given,
  maximum,
  printed,
  type StatisticsPublishedCase,
} from './published-case.js';

const ends = (name: string, outcome: ProportionIntervalOutcome): Readonly<Record<string, number>> => {
  const { lower, upper } = answered(outcome, 'estimated');
  return { [`${name}Lower`]: lower, [`${name}Upper`]: upper };
};

const batters = battingHits.map((successes) => ({ successes, trials: timesAtBat }));

const differences = [
  [56, 70, 48, 80],
  [9, 10, 3, 10],
  [6, 7, 2, 7],
  [5, 56, 0, 29],
] as const;

const outOfControl = (places: readonly { readonly signals: readonly string[] }[]): readonly number[] =>
  places.flatMap(({ signals }, index) =>
    signals.some((signal) => signal === 'aboveUpperLimit' || signal === 'belowLowerLimit') ? [index + 1] : [],
  );

/** Shares, charts and limits about a target. */
export const countCases: readonly StatisticsPublishedCase[] = [
  {
    id: 'newcombe-1998-proportions',
    title: 'Three intervals of four shares',
    source: 'Newcombe (1998), Statistics in Medicine 17:857-872, table I',
    provenance: ['published', 'memory', 'computed'],
    input: '81/263 and 0/20 by Wilson, Clopper-Pearson and Jeffreys; 95 %',
    figures: [
      ...figuresOf(printed(5e-5), {
        wilson81Lower: 0.2553,
        wilson81Upper: 0.3662,
        exact81Lower: 0.2527,
        exact81Upper: 0.3676,
        wilson0Upper: 0.1611,
        exact0Upper: 0.1684,
      }),
      ...figuresOf(closedForm, {
        jeffreys81Lower: 0.254521934991,
        jeffreys81Upper: 0.365647499174,
        jeffreys0Upper: 0.116638982905,
      }),
      ...figuresOf(exactly, { wilson0Lower: 0, exact0Lower: 0, jeffreys0Lower: 0 }),
    ],
    compute: () => {
      const [many, none] = [
        { successes: 81, trials: 263 },
        { successes: 0, trials: 20 },
      ];
      return {
        ...ends('wilson81', wilsonInterval(many)),
        ...ends('wilson0', wilsonInterval(none)),
        ...ends('exact81', clopperPearsonInterval(many)),
        ...ends('exact0', clopperPearsonInterval(none)),
        ...ends('jeffreys81', jeffreysInterval(many)),
        ...ends('jeffreys0', jeffreysInterval(none)),
      };
    },
  },
  {
    id: 'newcombe-1998-differences',
    title: 'Differences of two independent shares',
    source: 'Newcombe (1998), Statistics in Medicine 17:873-890, table II, method 10',
    provenance: ['published', 'computed'],
    input: '56/70 - 48/80, 9/10 - 3/10, 6/7 - 2/7, 5/56 - 0/29; 95 %',
    figures: figuresOf(printed(5e-5), {
      lower0: 0.0524,
      upper0: 0.3339,
      lower1: 0.1705,
      upper1: 0.809,
      lower2: 0.0582,
      upper2: 0.8062,
      lower3: -0.0381,
      upper3: 0.1926,
    }),
    compute: () => {
      const figures: Record<string, number> = {};
      differences.forEach(([a, m, b, n], index) => {
        const found = answered(
          newcombeDifference({ successes: a, trials: m }, { successes: b, trials: n }),
          'estimated',
        );
        figures[`lower${index}`] = found.lower;
        figures[`upper${index}`] = found.upper;
      });
      return figures;
    },
  },
  {
    id: 'efron-morris-batting',
    title: 'Batting averages drawn together in three ways',
    source: 'Efron & Morris (1975), JASA 70:311-319 and (1977), Scientific American 236(5):119-127',
    provenance: ['published', 'memory', 'computed'],
    input: '18 batters, 45 times at bat each; best and worst batter',
    figures: [
      ...figuresOf(closedForm, {
        spread: 18.962719811,
        factor: 0.208974232098,
        arcsineBest: 0.290127227944,
        arcsineWorst: 0.238700135434,
        plainFactor: 0.211653417144,
        plainBest: 0.2939138549,
      }),
      ...figuresOf(maximum, { bestPosterior: 0.272656634692 }),
      ...figuresOf({ kind: 'relative', value: 1e-4 }, { alpha: 210.550881554, beta: 582.686126 }),
    ],
    compute: () => {
      const arcsine = answered(jamesSteinProportions(batters, 'arcsine'), 'estimated');
      const plain = answered(jamesSteinProportions(batters, 'untransformed'), 'estimated');
      const fit = answered(betaBinomialFit(batters), 'estimated');
      return {
        spread: arcsine.spread,
        factor: arcsine.factor,
        arcsineBest: given(arcsine.proportions[0]),
        arcsineWorst: given(arcsine.proportions.at(-1)),
        plainFactor: plain.factor,
        plainBest: given(plain.proportions[0]),
        alpha: fit.alpha,
        beta: fit.beta,
        bestPosterior: betaPosterior(fit, batters[0]!).mean,
      };
    },
  },
  {
    id: 'nist-wafer-counts',
    title: 'Chart of defects per wafer',
    source: 'NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.3.1',
    provenance: ['published', 'computed'],
    input: '25 wafers; wafer 24 is out, wafer 3 lies exactly on the limit and is not',
    figures: figuresOf(exactly, { centre: 16, upper: 28, lower: 4, out: 24, howMany: 1 }),
    compute: () => {
      const { centre, places } = answered(countChart(waferDefects), 'estimated');
      const out = outOfControl(places);
      const [first] = places;
      return {
        centre,
        upper: given(first?.upper),
        lower: given(first?.lower),
        out: given(out[0]),
        howMany: out.length,
      };
    },
  },
  {
    id: 'nist-wafer-proportions',
    title: 'Chart of defective chips per wafer',
    source: 'NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.3.2',
    provenance: ['published', 'computed'],
    input: '30 wafers of 50 chips; wafers 15 and 23 are out',
    figures: [
      ...figuresOf(closedForm, { centre: 347 / 1500, upper: 0.410239118595, lower: 0.0524275480719 }),
      ...figuresOf(exactly, { first: 15, second: 23, howMany: 2 }),
    ],
    compute: () => {
      const samples = defectiveChips.map((successes) => ({ successes, trials: 50 }));
      const { centre, places } = answered(proportionChart(samples), 'estimated');
      const out = outOfControl(places);
      const [place] = places;
      return {
        centre,
        upper: given(place?.upper),
        lower: given(place?.lower),
        first: given(out[0]),
        second: given(out[1]),
        howMany: out.length,
      };
    },
  },
  {
    id: 'spiegelhalter-funnel',
    title: 'Funnel limits about a target of 0.08',
    source: 'Spiegelhalter (2005), Statistics in Medicine 24:1185-1202, appendix; figures computed',
    provenance: ['memory', 'computed'],
    input: '10, 100 and 250 trials; 95 % and 99.8 %',
    figures: [
      ...figuresOf(closedForm, {
        upper10: 0.243984880139,
        lower100: 0.0253973754676,
        upper100: 0.1321659995804,
        wideLower250: 0.0298962275331,
        wideUpper250: 0.1355400091531,
      }),
      ...figuresOf(exactly, { lower10: 0 }),
    ],
    compute: () => {
      const [few, many, wide] = [
        funnelLimits(0.08, 10, 0.95),
        funnelLimits(0.08, 100, 0.95),
        funnelLimits(0.08, 250, 0.998),
      ];
      return {
        lower10: few.lower,
        upper10: few.upper,
        lower100: many.lower,
        upper100: many.upper,
        wideLower250: wide.lower,
        wideUpper250: wide.upper,
      };
    },
  },
];
