import { bayesBinary, noisyOr, noisyOrPosterior, type NoisyOrFinding } from '@endfloat/statistics';
import { calculated, type CalculationMethod } from './calculation-method.js';
import { refusing } from './refusing.js';

export const bayesPosteriors: CalculationMethod = {
  id: 'bayes-posteriors',
  title: 'What one yes-or-no result says about one condition',
  name: 'bayesTheorem',
  variant: 'prior, sensitivity and false positive rate, all taken as known',
  source: 'Bayes (1763); Gigerenzer & Hoffrage (1995), Psychological Review 102:684-704',
  caseIds: ['bayes-mammography', 'bayes-calculated-risks'],
};

/** Probability of the condition after the result. */
export function calculateBayesPosterior({
  prior,
  sensitivity,
  falsePositiveRate,
  isPositive,
}: {
  readonly prior: number;
  readonly sensitivity: number;
  readonly falsePositiveRate: number;
  readonly isPositive: boolean;
}) {
  const result = refusing(['prior', 'sensitivity', 'falsePositiveRate'], () =>
    bayesBinary(prior, { sensitivity, falsePositiveRate }, isPositive),
  );
  return calculated(bayesPosteriors, 1, { result });
}

export const noisyOrs: CalculationMethod = {
  id: 'noisy-or-posteriors',
  title: 'Several causes that may each bring about a finding on their own',
  name: 'noisyOr',
  variant:
    'P(finding) = 1 - (1 - leak) x product of (1 - strength) over the causes that hold; findings independent given the causes; exact sum over all combinations of up to 16 causes',
  source:
    'Pearl (1988), Probabilistic Reasoning in Intelligent Systems, 4.3; Russell & Norvig, noisy-OR table',
  caseIds: ['noisy-or-fever-table', 'noisy-or-fever-posterior'],
};

export interface NoisyOrCommand {
  readonly priors: readonly number[];
  readonly findings: readonly NoisyOrFinding[];
}

/** Posterior of every cause, and what each finding's chance is when all causes hold. */
export function calculateNoisyOr({ priors, findings }: NoisyOrCommand) {
  const found = refusing(['findings', 'priors'], () => {
    const posterior = noisyOrPosterior(priors, findings);
    return {
      result:
        posterior.kind === 'estimated'
          ? {
              ...posterior,
              mostProbable: { ...posterior.mostProbable, holds: posterior.mostProbable.holds.map(Number) },
            }
          : posterior,
      whenAllHold: findings.map(({ strengths, leak }) => noisyOr(strengths, leak)),
    };
  });
  return calculated(noisyOrs, findings.length, found);
}
