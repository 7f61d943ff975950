import type { Evidence } from '../evidence/evidence.js';
import { settleResults } from '../evidence/settle-results.js';
import type { DiagnosisTables } from '../tables/diagnosis-tables.js';
import { requireUsableTables } from '../tables/require-usable-tables.js';
import { entropyBits } from './entropy-bits.js';

/** Weight of one cause given the evidence. */
export interface CauseProbability {
  readonly causeId: string;
  readonly probability: number;
}

export interface EstimatedPosterior {
  readonly kind: 'estimated';
  readonly method: 'singleCauseNaiveBayes';
  readonly tablesVersion: string;
  /** in table order */
  readonly causes: readonly CauseProbability[];
  readonly entropyBits: number;
  readonly symptomsUsed: number;
  readonly checksUsed: number;
  /** checks whose two last results contradict each other; they count for nothing */
  readonly contradictoryChecks: readonly string[];
}

/** No cause of the tables can produce this evidence: a probability of exactly 0 or 1 is contradicted. */
export interface ImpossibleEvidence {
  readonly kind: 'impossibleEvidence';
  readonly tablesVersion: string;
}

export type SingleCausePosterior = EstimatedPosterior | ImpossibleEvidence;

/** Multiplies the factors in; renormalises after each, so that many findings cannot underflow. */
function weigh(weights: number[], probability: (cause: number) => number): number {
  let total = 0;
  for (let i = 0; i < weights.length; i += 1) {
    weights[i] = (weights[i] ?? 0) * probability(i);
    total += weights[i] ?? 0;
  }
  if (total > 0) for (let i = 0; i < weights.length; i += 1) weights[i] = (weights[i] ?? 0) / total;
  return total;
}

function requireKnownSymptoms(tables: DiagnosisTables, evidence: Evidence): void {
  const known = new Set(tables.symptoms.map((row) => row.id));
  for (const id of Object.keys(evidence.symptoms)) {
    if (!known.has(id)) throw new RangeError(`symptom ${id} is not in the tables`);
  }
}

/**
 * Probability of each cause, assuming exactly one cause and findings that are independent given the cause:
 * prior times p for each symptom present or check positive, times 1 - p for each absent or negative, normalised.
 * Not asked, undecided, skipped and contradictory findings contribute a factor of one.
 *
 * @param tables  priors and probabilities
 * @param evidence  symptoms and check results; no evidence gives the priors back
 * @returns `estimated`, or `impossibleEvidence` when every cause has weight zero
 * @throws RangeError on unusable tables, an unknown symptom or an unknown check
 * @source Bayes' rule with conditional independence, for example Eddy (1982) for one finding
 * @oracle worked examples retyped in fixtures, agreeing to 1e-5
 */
export function singleCausePosterior(tables: DiagnosisTables, evidence: Evidence): SingleCausePosterior {
  requireUsableTables(tables);
  requireKnownSymptoms(tables, evidence);
  const ids = tables.causes.map((cause) => cause.id);
  const weights = tables.causes.map((cause) => cause.prior);
  const settled = settleResults(tables, evidence);
  let symptomsUsed = 0;
  let checksUsed = 0;
  for (const row of tables.symptoms) {
    const state = evidence.symptoms[row.id] ?? 'notAsked';
    if (state === 'notAsked') continue;
    symptomsUsed += 1;
    const p = ids.map((id) => row.presentGivenCause[id] ?? 0);
    if (weigh(weights, (i) => (state === 'present' ? p[i]! : 1 - p[i]!)) === 0) return impossible(tables);
  }
  for (const row of tables.checks) {
    const counts = settled.get(row.id)?.countsAs ?? 'nothing';
    if (counts === 'nothing') continue;
    checksUsed += 1;
    const p = ids.map((id) => row.positiveGivenCause[id] ?? 0);
    if (weigh(weights, (i) => (counts === 'positive' ? p[i]! : 1 - p[i]!)) === 0) return impossible(tables);
  }
  return {
    kind: 'estimated',
    method: 'singleCauseNaiveBayes',
    tablesVersion: tables.version,
    causes: ids.map((causeId, i) => ({ causeId, probability: weights[i]! })),
    entropyBits: entropyBits(weights),
    symptomsUsed,
    checksUsed,
    contradictoryChecks: [...settled.values()]
      .filter((c) => c.standing === 'contradictory')
      .map((c) => c.checkId),
  };
}

function impossible(tables: DiagnosisTables): ImpossibleEvidence {
  return { kind: 'impossibleEvidence', tablesVersion: tables.version };
}
