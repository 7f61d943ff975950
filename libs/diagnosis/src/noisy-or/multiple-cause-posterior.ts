import type { Evidence } from '../evidence/evidence.js';
import { settleResults } from '../evidence/settle-results.js';
import type { DiagnosisTables } from '../tables/diagnosis-tables.js';
import { requireUsableTables } from '../tables/require-usable-tables.js';
import type { NoisyOrFinding, NoisyOrPosterior } from './noisy-or-posterior.js';
import { noisyOrPosterior } from './noisy-or-posterior.js';

/**
 * Strengths such that with exactly one cause present a finding shows as often as the table says. The leak is the smallest
 * probability in the row: what shows under the cause that has least to do with it shows without any cause too. Judgement.
 */
function asFinding(
  id: string,
  present: boolean,
  given: Readonly<Record<string, number>>,
  causeIds: readonly string[],
): NoisyOrFinding {
  const leak = Math.min(...causeIds.map((cause) => given[cause] ?? 0));
  const strength = Object.fromEntries(
    causeIds.map((cause) => [
      cause,
      leak === 1 ? 0 : Math.max(0, 1 - (1 - (given[cause] ?? 0)) / (1 - leak)),
    ]),
  );
  return { id, present, leak, strength };
}

/**
 * Probability of each cause when several may be present at once, from the same tables as `singleCausePosterior`.
 * A cause with weight w is present with odds w, so that given exactly one cause the single-cause answer comes back.
 *
 * @param tables  weights; at most 16 causes
 * @param evidence  symptoms and check results, counted as in `singleCausePosterior`
 * @returns marginals that need not add up to one, likeliest combinations, or `impossibleEvidence`
 * @throws RangeError on unusable tables, more than 16 causes, or evidence that the tables do not hold
 * @source noisy-OR as in `noisyOrPosterior`; the conversion of tables is judgement
 */
export function multipleCausePosterior(tables: DiagnosisTables, evidence: Evidence): NoisyOrPosterior {
  requireUsableTables(tables);
  const causeIds = tables.causes.map((cause) => cause.id);
  const settled = settleResults(tables, evidence);
  const findings: NoisyOrFinding[] = [];
  const knownSymptoms = new Set(tables.symptoms.map((row) => row.id));
  for (const id of Object.keys(evidence.symptoms)) {
    if (!knownSymptoms.has(id)) throw new RangeError(`symptom ${id} is not in the tables`);
  }
  for (const row of tables.symptoms) {
    const state = evidence.symptoms[row.id] ?? 'notAsked';
    if (state !== 'notAsked')
      findings.push(asFinding(row.id, state === 'present', row.presentGivenCause, causeIds));
  }
  for (const row of tables.checks) {
    const counts = settled.get(row.id)?.countsAs ?? 'nothing';
    if (counts !== 'nothing')
      findings.push(asFinding(row.id, counts === 'positive', row.positiveGivenCause, causeIds));
  }
  const causes = tables.causes.map(({ id, prior }) => ({ id, prior: prior / (1 + prior) }));
  return noisyOrPosterior(causes, findings);
}
