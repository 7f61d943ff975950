import {
  betaBinomialFit,
  betaPosterior,
  clopperPearsonInterval,
  jamesSteinProportions,
  jeffreysInterval,
  modifiedJeffreysInterval,
  newcombeDifference,
  wilsonInterval,
  type BinomialCount,
  type JamesSteinForm,
  type ProportionIntervalMethod,
} from '@endfloat/statistics';
import { calculated, type CalculationMethod } from './calculation-method.js';
import { refusing } from './refusing.js';

export const proportions: CalculationMethod = {
  id: 'proportions',
  title: 'A share with its interval',
  name: 'proportionInterval',
  variant:
    'wilson (score, without continuity correction), clopperPearson (beta quantiles), jeffreys (quantiles of Beta(x + 1/2, n - x + 1/2), 0 at x = 0 and 1 at x = n), modifiedJeffreys (Brown, Cai and DasGupta)',
  source:
    'Wilson (1927), JASA 22:209-212; Clopper & Pearson (1934), Biometrika 26:404-413; Brown, Cai & DasGupta (2001), Statistical Science 16:101-133',
  caseIds: ['newcombe-1998-proportions'],
};

const intervals = {
  wilson: wilsonInterval,
  clopperPearson: clopperPearsonInterval,
  jeffreys: jeffreysInterval,
  modifiedJeffreys: modifiedJeffreysInterval,
} as const;

/** One proportion by the asked interval. */
export function calculateProportion({
  successes,
  trials,
  interval = 'wilson',
  level = 0.95,
}: BinomialCount & {
  readonly interval?: ProportionIntervalMethod | undefined;
  readonly level?: number | undefined;
}) {
  const result = refusing(['successes', 'trials'], () => intervals[interval]({ successes, trials }, level));
  return calculated(proportions, trials, { result });
}

export const proportionDifferences: CalculationMethod = {
  id: 'proportion-differences',
  title: 'Difference of two independent shares',
  name: 'newcombeDifference',
  variant: 'method 10: Wilson limits squared and added, without continuity correction',
  source: 'Newcombe (1998), Statistics in Medicine 17:873-890',
  caseIds: ['newcombe-1998-differences'],
};

/** First share minus second. */
export function calculateProportionDifference({
  first,
  second,
  level = 0.95,
}: {
  readonly first: BinomialCount;
  readonly second: BinomialCount;
  readonly level?: number | undefined;
}) {
  const result = refusing(['first', 'second'], () => newcombeDifference(first, second, level));
  return calculated(proportionDifferences, first.trials + second.trials, { result });
}

export const shrinkages: CalculationMethod = {
  id: 'shrinkages',
  title: 'Shares of like groups, drawn together as far as their own numbers leave them in doubt',
  name: 'empiricalBayes',
  variant:
    'beta-binomial maximum likelihood with the posterior of each group (doubt about the common distribution left out), or James-Stein on the arcsine or the untransformed scale for equal numbers of trials',
  source:
    'Griffiths (1973), Biometrics 29:637-648; Efron & Morris (1975), JASA 70:311-319 and (1977), Scientific American 236(5):119-127',
  caseIds: ['efron-morris-batting'],
};

export interface ShrinkageCommand {
  readonly form?: 'betaBinomial' | JamesSteinForm | undefined;
  readonly groups: readonly BinomialCount[];
  readonly level?: number | undefined;
}

/** Shrunken shares of groups. */
export function calculateShrinkage({ form = 'betaBinomial', groups, level = 0.95 }: ShrinkageCommand) {
  const observations = groups.reduce((sum, { trials }) => sum + trials, 0);
  const result = refusing(['groups'], () => {
    if (form !== 'betaBinomial') {
      const found = jamesSteinProportions(groups, form);
      return found.kind === 'estimated' ? { ...found, kind: 'jamesStein' as const } : found;
    }
    const fit = betaBinomialFit(groups);
    if (fit.kind !== 'estimated') return fit;
    return {
      ...fit,
      kind: 'betaBinomial' as const,
      level,
      groups: groups.map((group) => {
        const { mean, interval } = betaPosterior(fit, group, level);
        return { ...group, mean, interval };
      }),
    };
  });
  return calculated(shrinkages, observations, { result });
}
