import { ageReplacement } from '../replacement/age-replacement.js';
import { ageReplacementCostRate } from '../replacement/age-replacement-cost-rate.js';
import { economicLife } from '../replacement/economic-life.js';
import type { LifeDistribution } from '../replacement/life-distribution.js';
import { weibullAgeReplacement } from '../replacement/weibull-age-replacement.js';
import { croston } from '../stock-levels/croston.js';
import { newsvendorNormal } from '../stock-levels/newsvendor-normal.js';
import { newsvendorPoisson, newsvendorPoissonCost } from '../stock-levels/newsvendor-poisson.js';
import { poissonBaseStock } from '../stock-levels/poisson-base-stock.js';
import { syntetosBoylan } from '../stock-levels/syntetos-boylan.js';
import { productSales } from './count-data.js';
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

const uniform = (end: number): LifeDistribution => ({
  survival: (age) => Math.max(0, 1 - age / end),
  density: (age) => (age <= end ? 1 / end : 0),
  end,
  typical: end / 2,
});

const integrated = { kind: 'relative', value: 1e-8 } as const;
const library = 'Snyder & Shen (2019), Fundamentals of Supply Chain Theory, 2nd ed.';

/** Ages and levels that cost least. */
export const costCases: readonly StatisticsPublishedCase[] = [
  {
    id: 'jardine-uniform-life',
    title: 'Planned replacement of a part that fails anywhere up to 40 000 km',
    source: 'Jardine & Tsang, Maintenance, Replacement and Reliability, ch. 2, problem 2',
    provenance: ['published', 'computed'],
    input: 'planned 100, failure 200; ages 10 000 to 40 000 km',
    figures: [
      ...figuresOf(printed(5e-5), { rate10: 0.0143, rate20: 0.01, rate30: 0.0093, rate40: 0.01 }),
      ...figuresOf(integrated, { age: 40000 * (Math.sqrt(3) - 1), costRate: 0.00933012701892 }),
    ],
    compute: () => {
      const costs = { planned: 100, failure: 200 };
      const best = answered(ageReplacement(uniform(40000), costs), 'optimum');
      const rate = (age: number): number => ageReplacementCostRate(uniform(40000), costs, age);
      return {
        rate10: rate(10000),
        rate20: rate(20000),
        rate30: rate(30000),
        rate40: rate(40000),
        age: best.age,
        costRate: best.costRate,
      };
    },
  },
  {
    id: 'ross-car',
    title: 'When to buy the next car',
    source: 'Ross, Introduction to Probability Models, renewal-reward example; prints 9.25, rounded',
    provenance: ['memory', 'computed'],
    input: 'life uniform up to 10 years, price 3, breakdown 0.5 more',
    figures: figuresOf(integrated, { age: Math.sqrt(4800) - 60, costRate: 0.696410161514 }),
    compute: () => {
      const { age, costRate } = answered(
        ageReplacement(uniform(10), { planned: 3, failure: 3.5 }),
        'optimum',
      );
      return { age, costRate };
    },
  },
  {
    id: 'weibull-age-replacement',
    title: 'Planned replacement with a Weibull life',
    source: 'model of Barlow & Hunter (1960), Operations Research 8:90-100; computed in two ways',
    provenance: ['computed'],
    input: 'shape 2, scale 1000, costs 1 and 10; shape 3, scale 10, costs 1 and 5',
    figures: figuresOf(maximum, {
      age: 336.451191255,
      costRate: 0.0060561214426,
      saving: 0.463290211376,
      secondAge: 5.02609582103,
      secondCostRate: 0.303139670426,
    }),
    compute: () => {
      const first = answered(
        weibullAgeReplacement({ shape: 2, scale: 1000 }, { planned: 1, failure: 10 }),
        'optimum',
      );
      const second = answered(
        weibullAgeReplacement({ shape: 3, scale: 10 }, { planned: 1, failure: 5 }),
        'optimum',
      );
      return {
        age: first.age,
        costRate: first.costRate,
        saving: first.saving,
        secondAge: second.age,
        secondCostRate: second.costRate,
      };
    },
  },
  {
    id: 'machine-economic-life',
    title: 'A machine without resale whose running cost rises evenly',
    source: 'published exercise in operations research; replace after year 5 at 35 000 a year',
    provenance: ['published', 'computed'],
    input: 'price 80 000, running 5000 rising 7000 a year',
    figures: figuresOf(exactly, { periods: 5, cost: 35000, firstCost: 85000, fourthCost: 35500 }),
    compute: () => {
      const years = [0, 1, 2, 3, 4, 5].map((year) => ({ running: 5000 + 7000 * year, resale: 0 }));
      const { periods, cost, costs } = answered(economicLife(80000, years), 'minimumInside');
      return { periods, cost, firstCost: given(costs[0]), fourthCost: given(costs[3]) };
    },
  },
  {
    id: 'truck-economic-life',
    title: 'A truck with resale',
    source: 'textbook example in operations research; replace after year 5',
    provenance: ['published', 'computed'],
    input: 'price 6000, running 1000 to 4000, resale 3000 down to 200',
    figures: figuresOf(exactly, { periods: 5, cost: 2700, fourthCost: 2756.25, lastCost: 2962.5 }),
    compute: () => {
      const running = [1000, 1200, 1400, 1800, 2300, 2800, 3400, 4000];
      const resale = [3000, 1500, 750, 375, 200, 200, 200, 200];
      const years = running.map((cost, year) => ({ running: cost, resale: resale[year]! }));
      const { periods, cost, costs } = answered(economicLife(6000, years), 'minimumInside');
      return { periods, cost, fourthCost: given(costs[3]), lastCost: given(costs.at(-1)) };
    },
  },
  {
    id: 'poisson-base-stocks',
    title: 'Base stock for Poisson demand',
    source: 'Poisson distribution; computed with R',
    provenance: ['computed'],
    input: 'mean demand 0.5, 1, 2, 4.2 over the lead time; cycle service 0.90, 0.95, 0.99',
    figures: [
      ...figuresOf(exactly, { at05: 123, at1: 234, at2: 456, at42: 790 }),
      ...figuresOf(closedForm, { backorders: 0.103638323514 }),
    ],
    compute: () => {
      const level = (mean: number, target: number): number =>
        answered(poissonBaseStock(mean, target, 'cycleService'), 'found').level;
      const digits = (mean: number): number =>
        100 * level(mean, 0.9) + 10 * level(mean, 0.95) + level(mean, 0.99);
      return {
        at05: digits(0.5),
        at1: digits(1),
        at2: digits(2),
        at42: digits(4.2),
        backorders: answered(poissonBaseStock(1, 0.9, 'cycleService'), 'found').expectedBackorders,
      };
    },
  },
  {
    id: 'newsvendor-normal',
    title: 'Stock for one period with normal demand',
    source: `${library}, examples 4.1, 4.3 and 4.4`,
    provenance: ['published', 'computed'],
    input: 'over 0.18, under 0.70; mean 50, sd 8; and over five periods',
    figures: figuresOf(integrated, {
      level: 56.6039559274,
      cost: 1.9976051932,
      longLevel: 264.766894374,
      longCost: 4.46678100415,
    }),
    compute: () => {
      const costs = { over: 0.18, under: 0.7 };
      const [short, long] = [newsvendorNormal(costs, 50, 8), newsvendorNormal(costs, 250, 8 * Math.sqrt(5))];
      return {
        level: short.level,
        cost: short.expectedCost,
        longLevel: long.level,
        longCost: long.expectedCost,
      };
    },
  },
  {
    id: 'newsvendor-poisson',
    title: 'Stock for one period with Poisson demand',
    source: `${library}, example 4.7`,
    provenance: ['published', 'computed'],
    input: 'over 1, under 4, mean 6; over 0.18, under 0.70, mean 50',
    figures: [
      ...figuresOf(exactly, { level: 8, secondLevel: 56 }),
      ...figuresOf(integrated, { cost: 3.5701069458, costAt5: 6.5902960246, secondCost: 1.7972352118 }),
    ],
    compute: () => {
      const costs = { over: 1, under: 4 };
      const [first, second] = [
        newsvendorPoisson(costs, 6),
        newsvendorPoisson({ over: 0.18, under: 0.7 }, 50),
      ];
      return {
        level: first.level,
        cost: first.expectedCost,
        costAt5: newsvendorPoissonCost(costs, 6, 5),
        secondLevel: second.level,
        secondCost: second.expectedCost,
      };
    },
  },
  {
    id: 'product-c-croston',
    title: 'Demand of a product that sells in few months',
    source: 'Hyndman & Athanasopoulos, Forecasting: Principles and Practice, 2nd ed., product C',
    provenance: ['published', 'computed'],
    input: '36 months, 11 with sales; smoothing 0.1 and 0.2',
    figures: figuresOf(closedForm, {
      size: 2.7502538401,
      interval: 2.79328007,
      perPeriod: 0.984596521358,
      corrected: 0.93536669529,
      faster: 0.848411662176,
    }),
    compute: () => {
      const slow = answered(croston(productSales, 0.1), 'estimated');
      return {
        size: slow.size,
        interval: slow.interval,
        perPeriod: slow.perPeriod,
        corrected: answered(syntetosBoylan(productSales, 0.1), 'estimated').perPeriod,
        faster: answered(croston(productSales, 0.2), 'estimated').perPeriod,
      };
    },
  },
];
