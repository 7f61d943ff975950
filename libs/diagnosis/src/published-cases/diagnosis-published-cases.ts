import type { PublishedCase } from '@endfloat/metrology';
import { caseFigures } from '@endfloat/metrology';
import { noisyOrPosterior } from '../noisy-or/noisy-or-posterior.js';
import { noisyOrProbability } from '../noisy-or/noisy-or-probability.js';
import { singleCausePosterior } from '../single-cause/single-cause-posterior.js';

const exact = { kind: 'absolute', value: 1e-12 } as const;

/** Probability of the one condition after one positive test. */
function afterPositive(prevalence: number, sensitivity: number, falsePositive: number): number {
  const posterior = singleCausePosterior(
    {
      version: 'one-test',
      causes: [
        { id: 'there', prior: prevalence },
        { id: 'not-there', prior: 1 - prevalence },
      ],
      symptoms: [],
      checks: [
        {
          id: 'test',
          minutes: 1,
          openingMove: false,
          prerequisites: [],
          positiveGivenCause: { there: sensitivity, 'not-there': falsePositive },
        },
      ],
    },
    { symptoms: {}, results: [{ checkId: 'test', outcome: 'positive' }] },
  );
  return posterior.kind === 'estimated' ? posterior.causes[0]!.probability : Number.NaN;
}

/** One minus the textbook's inhibitions of .6, .2 and .1. */
const strength = { cold: 0.4, flu: 0.8, malaria: 0.9 } as const;

const feverPosterior = (): Readonly<Record<string, number>> => {
  const posterior = noisyOrPosterior(
    [
      { id: 'cold', prior: 0.1 },
      { id: 'flu', prior: 0.05 },
      { id: 'malaria', prior: 0.01 },
    ],
    [{ id: 'fever', present: true, leak: 0, strength }],
  );
  if (posterior.kind !== 'estimated') return {};
  return {
    fever: posterior.evidenceProbability,
    ...Object.fromEntries(posterior.causes.map((cause) => [cause.causeId, cause.probability])),
  };
};

/** Every worked example from outside that this room reproduces. */
export const diagnosisPublishedCases: readonly PublishedCase[] = [
  {
    id: 'bayes-mammography',
    title: 'One positive test of a rare condition',
    source: 'Eddy (1982); Gigerenzer & Hoffrage (1995), Psychological Review 102',
    provenance: ['published', 'computed'],
    input: 'prevalence .01, sensitivity .80, false positives .096; the source prints 7.8 %',
    figures: caseFigures({ probability: 0.0776397515528 }, exact),
    compute: () => ({ probability: afterPositive(0.01, 0.8, 0.096) }),
  },
  {
    id: 'bayes-calculated-risks',
    title: 'One positive test, natural frequencies beside it',
    source: 'Gigerenzer (2002), Calculated Risks',
    provenance: ['published', 'computed'],
    input: 'prevalence .008, sensitivity .90, false positives .07; the source prints 9 %',
    figures: caseFigures({ probability: 0.0939457202505 }, exact),
    compute: () => ({ probability: afterPositive(0.008, 0.9, 0.07) }),
  },
  {
    id: 'noisy-or-fever-table',
    title: 'Fever from cold, flu and malaria',
    source: 'Russell & Norvig, Artificial Intelligence: a Modern Approach, noisy-OR table',
    provenance: ['published', 'computed'],
    input: 'inhibitions: cold .6, flu .2, malaria .1; no leak',
    figures: caseFigures(
      {
        none: 0,
        malaria: 0.9,
        flu: 0.8,
        fluMalaria: 0.98,
        cold: 0.4,
        coldMalaria: 0.94,
        coldFlu: 0.88,
        all: 0.988,
      },
      { kind: 'absolute', value: 1e-15 },
    ),
    compute: () => ({
      none: noisyOrProbability(0, []),
      malaria: noisyOrProbability(0, [strength.malaria]),
      flu: noisyOrProbability(0, [strength.flu]),
      fluMalaria: noisyOrProbability(0, [strength.flu, strength.malaria]),
      cold: noisyOrProbability(0, [strength.cold]),
      coldMalaria: noisyOrProbability(0, [strength.cold, strength.malaria]),
      coldFlu: noisyOrProbability(0, [strength.cold, strength.flu]),
      all: noisyOrProbability(0, [strength.cold, strength.flu, strength.malaria]),
    }),
  },
  {
    id: 'noisy-or-fever-posterior',
    title: 'Causes of a fever that is there',
    source: 'the fever table of Russell & Norvig with priors .10, .05, .01; computed',
    provenance: ['computed'],
    input: 'priors cold .10, flu .05, malaria .01; fever present',
    figures: caseFigures(
      { fever: 0.0866944, cold: 0.49505389, flu: 0.467001329, malaria: 0.10471726 },
      { kind: 'absolute', value: 1e-9 },
    ),
    compute: feverPosterior,
  },
];
