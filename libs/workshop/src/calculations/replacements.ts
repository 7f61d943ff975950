import {
  ageReplacement,
  ageReplacementCostRate,
  challengerRule,
  economicLife,
  weibullAgeReplacement,
  weibullLogPdf,
  weibullSurvival,
  type HoldingPeriod,
  type LifeDistribution,
} from '@endfloat/statistics';
import type { UnitCode } from '@endfloat/metrology';
import { calculated, type CalculationMethod } from './calculation-method.js';
import { refusing } from './refusing.js';

export const ageReplacements: CalculationMethod = {
  id: 'age-replacements',
  title: 'At which age is planned replacement cheapest?',
  name: 'ageReplacement',
  variant:
    'cost per unit of age C(t) = (planned R(t) + failure F(t)) / integral of R; Weibull by the incomplete gamma function, uniform lives by quadrature; run to failure where no finite age is better',
  source:
    'Barlow & Hunter (1960), Operations Research 8:90-100; Jardine & Tsang, Maintenance, Replacement and Reliability, ch. 2',
  caseIds: ['jardine-uniform-life', 'ross-car', 'weibull-age-replacement'],
};

export type ReplacedLife =
  | { readonly kind: 'weibull'; readonly shape: number; readonly scale: number }
  | { readonly kind: 'uniform'; readonly from: number; readonly to: number };

export interface AgeReplacementCommand {
  readonly unit?: UnitCode | undefined;
  readonly life: ReplacedLife;
  readonly plannedCost: number;
  readonly failureCost: number;
  readonly atAges?: readonly number[] | undefined;
}

function distributionOf(life: ReplacedLife): LifeDistribution {
  if (life.kind === 'weibull') {
    const { shape, scale } = life;
    return {
      survival: (age) => weibullSurvival(age, scale, shape),
      density: (age) => Math.exp(weibullLogPdf(age, scale, shape)),
      end: Infinity,
      typical: scale,
    };
  }
  const { from, to } = life;
  if (!(to > from)) throw new RangeError(`a uniform life ends after it begins, got ${from} and ${to}`);
  return {
    survival: (age) => Math.min(1, Math.max(0, (to - age) / (to - from))),
    density: (age) => (age >= from && age <= to ? 1 / (to - from) : 0),
    end: to,
    typical: (from + to) / 2,
  };
}

/** Optimal age of planned replacement, and the cost of other ages. */
export function calculateAgeReplacement(command: AgeReplacementCommand) {
  const { unit = '1', life, plannedCost, failureCost, atAges = [] } = command;
  const costs = { planned: plannedCost, failure: failureCost };
  const found = refusing(['life', 'plannedCost', 'failureCost'], () => ({
    result:
      life.kind === 'weibull'
        ? weibullAgeReplacement(life, costs)
        : ageReplacement(distributionOf(life), costs),
    costRates: atAges.map((age) => ({
      age,
      costRate: ageReplacementCostRate(distributionOf(life), costs, age),
    })),
  }));
  return calculated(ageReplacements, 0, { unit, ...found });
}

export const economicLives: CalculationMethod = {
  id: 'economic-lives',
  title: 'After how many periods is a machine cheapest to replace?',
  name: 'economicLife',
  variant:
    'average cost per period (price - resale + running costs) / periods, or the equivalent annuity at a discount rate with costs at the end of each period; against a challenger: kept for its own economic life and then while the next period alone does not cost more',
  source:
    'Jardine & Tsang, Maintenance, Replacement and Reliability, ch. 2; challenger: Terborgh (1949), Dynamic Equipment Policy',
  caseIds: ['machine-economic-life', 'truck-economic-life'],
};

export interface EconomicLifeCommand {
  readonly price: number;
  readonly periods: readonly HoldingPeriod[];
  readonly discountRate?: number | undefined;
  /** cost per period of the machine that would take its place */
  readonly challengerCost?: number | undefined;
}

/** Economic life, and where a challenger's cost is given whether it is time. */
export function calculateEconomicLife(command: EconomicLifeCommand) {
  const { price, periods, discountRate, challengerCost } = command;
  const options = discountRate === undefined ? {} : { discountRate };
  const found = refusing(['periods', 'price', 'discountRate', 'challengerCost'], () => ({
    result: economicLife(price, periods, options),
    challenger: challengerCost === undefined ? null : challengerRule(price, periods, challengerCost, options),
  }));
  return calculated(economicLives, periods.length, found);
}
