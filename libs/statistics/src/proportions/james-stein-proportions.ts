import { insufficientData, type InsufficientData } from '../descriptive/outcomes.js';
import { requireBinomialCount, type BinomialCount } from './binomial-count.js';
import { jamesSteinShrinkage } from './james-stein-shrinkage.js';

/** On which scale proportions are treated as normal with equal variance. */
export const jamesSteinForms = ['arcsine', 'untransformed'] as const;
export type JamesSteinForm = (typeof jamesSteinForms)[number];

export interface JamesSteinProportions {
  readonly kind: 'estimated';
  readonly form: JamesSteinForm;
  /** Centre on the scale of the form. */
  readonly centre: number;
  readonly spread: number;
  readonly factor: number;
  readonly proportions: readonly number[];
}

export type JamesSteinProportionsOutcome =
  | JamesSteinProportions
  /** The forms hold for equal numbers of trials only; a beta-binomial fit takes unequal ones. */
  | { readonly kind: 'unequalTrials'; readonly fewest: number; readonly most: number }
  /** Not a single success, or not a single failure: nothing to draw in. */
  | { readonly kind: 'allAlike'; readonly proportion: number }
  | InsufficientData;

/**
 * James–Stein estimates of the proportions of k ≥ 4 groups with the same number n of trials.
 *
 * 'arcsine': x = √n · asin(2p − 1) has variance 1 (nearly), values are drawn in on that scale and turned back.
 * 'untransformed': the proportions themselves, with the common variance p̄(1 − p̄)/n.
 *
 * @param groups  successes out of trials, the same number of trials each
 * @param form  scale of the drawing in
 * @returns drawn proportions in the order given; the kinds above; `insufficientData` with fewer than four groups or
 *   without a trial
 * @throws RangeError on counts that are not whole, negative or contradictory
 * @source arcsine: Efron & Morris (1975), JASA 70:311–319; untransformed: Efron & Morris (1977), Sci. Am. 236(5):119–127
 * @oracle test/oracles/statistics-regression/generate.R
 * @example jamesSteinProportions([{ successes: 1, trials: 2 }], 'arcsine') // => { kind: 'insufficientData', of: 'groups', needed: 4, got: 1 }
 */
export function jamesSteinProportions(
  groups: readonly BinomialCount[],
  form: JamesSteinForm,
): JamesSteinProportionsOutcome {
  groups.forEach(requireBinomialCount);
  if (groups.length < 4) return insufficientData('groups', 4, groups.length);
  const sizes = groups.map(({ trials }) => trials);
  const fewest = sizes.reduce((a, b) => Math.min(a, b));
  const most = sizes.reduce((a, b) => Math.max(a, b));
  if (fewest !== most) return { kind: 'unequalTrials', fewest, most };
  if (most === 0) return insufficientData('trials', 1, 0);
  const shares = groups.map(({ successes }) => successes / most);
  const mean = groups.reduce((sum, { successes }) => sum + successes, 0) / (most * groups.length);
  if (mean === 0 || mean === 1) return { kind: 'allAlike', proportion: mean };

  const root = Math.sqrt(most);
  const arcsine = form === 'arcsine';
  const drawn = jamesSteinShrinkage(
    arcsine ? shares.map((share) => root * Math.asin(2 * share - 1)) : shares,
    arcsine ? 1 : (mean * (1 - mean)) / most,
  );
  if (drawn.kind !== 'estimated') return drawn;
  const { centre, spread, factor, values } = drawn;
  const proportions = arcsine ? values.map((value) => (1 + Math.sin(value / root)) / 2) : values;
  return { kind: 'estimated', form, centre, spread, factor, proportions };
}
