import type { Evidence } from '../evidence/evidence.js';
import type { SettledCheck } from '../evidence/settle-results.js';
import { settleResults } from '../evidence/settle-results.js';
import { isDone } from '../ranking/prerequisite-standing.js';
import type { RankedChain } from '../ranking/rank-check-chains.js';
import { rankCheckChains } from '../ranking/rank-check-chains.js';
import type { CauseProbability, ImpossibleEvidence } from '../single-cause/single-cause-posterior.js';
import { singleCausePosterior } from '../single-cause/single-cause-posterior.js';
import type { CheckRow, DiagnosisTables } from '../tables/diagnosis-tables.js';

/** Why a check is proposed; sentences are made from code and values at the edge. */
export type NextCheckReason =
  | { readonly code: 'openingMove' }
  | { readonly code: 'informationPerMinute'; readonly bits: number; readonly minutes: number }
  | { readonly code: 'unlocks'; readonly targetCheckId: string; readonly chain: readonly string[] }
  | { readonly code: 'separatesCauses'; readonly likelier: string; readonly lessLikely: string }
  | { readonly code: 'repeatOfUndecided' }
  | { readonly code: 'provisionalUntilCorrected'; readonly findings: readonly string[] };

export const nextCheckReasonCodes = [
  'openingMove',
  'informationPerMinute',
  'unlocks',
  'separatesCauses',
  'repeatOfUndecided',
  'provisionalUntilCorrected',
] as const satisfies readonly NextCheckReason['code'][];

export interface ProposedCheck {
  readonly checkId: string;
  readonly minutes: number;
  readonly reasons: readonly NextCheckReason[];
}

export type NextChecks =
  | {
      readonly kind: 'proposed';
      readonly method: 'openingMovesThenJointInformationPerMinute';
      readonly tablesVersion: string;
      readonly checks: readonly ProposedCheck[];
      /** the likeliest causes so far; more than one fault stays open until the road test has passed */
      readonly leadingCauses: readonly CauseProbability[];
    }
  | {
      readonly kind: 'allChecksDone';
      readonly tablesVersion: string;
      readonly leadingCauses: readonly CauseProbability[];
    }
  | ImpossibleEvidence;

const LEADING = 3;

/**
 * The two or three checks most worth doing next, each with its reasons. Opening moves come first in sheet order because
 * they are safe, cheap and done anyway; then the first members of the best chains, each check once.
 *
 * @param tables  weights and minutes
 * @param evidence  what is known so far
 * @param count  how many to propose, 1 or more
 * @returns proposals, best first; or that all checks are done; or `impossibleEvidence`
 * @throws RangeError on unusable tables, unknown evidence, or a count below 1
 * @source expected information per minute as in `rankCheckChains`
 */
export function rankNextChecks(tables: DiagnosisTables, evidence: Evidence, count = 3): NextChecks {
  if (!Number.isInteger(count) || count < 1)
    throw new RangeError('count must be a whole number of 1 or more');
  const posterior = singleCausePosterior(tables, evidence);
  const ranking = rankCheckChains(tables, evidence);
  if (posterior.kind !== 'estimated') return posterior;
  if (ranking.kind !== 'ranked') return ranking;
  const settled = settleResults(tables, evidence);
  const leadingCauses = [...posterior.causes].sort((a, b) => b.probability - a.probability).slice(0, LEADING);
  const opening = tables.checks.filter((check) => check.openingMove && !isDone(check.id, settled));
  const proposed = new Map<string, ProposedCheck>();
  for (const check of opening) {
    const repeated: readonly NextCheckReason[] = settled.has(check.id) ? [{ code: 'repeatOfUndecided' }] : [];
    proposed.set(check.id, {
      checkId: check.id,
      minutes: check.minutes,
      reasons: [{ code: 'openingMove' }, ...repeated],
    });
  }
  for (const chain of ranking.chains) {
    if (proposed.has(chain.firstAction)) continue;
    const check = tables.checks.find((row) => row.id === chain.firstAction)!;
    proposed.set(check.id, {
      checkId: check.id,
      minutes: check.minutes,
      reasons: reasonsFor(check, chain, tables, leadingCauses, settled),
    });
  }
  const checks = [...proposed.values()].slice(0, count);
  if (checks.length === 0) return { kind: 'allChecksDone', tablesVersion: tables.version, leadingCauses };
  return {
    kind: 'proposed',
    method: 'openingMovesThenJointInformationPerMinute',
    tablesVersion: tables.version,
    checks,
    leadingCauses,
  };
}

function reasonsFor(
  check: CheckRow,
  chain: RankedChain,
  tables: DiagnosisTables,
  leading: readonly CauseProbability[],
  settled: ReadonlyMap<string, SettledCheck>,
): readonly NextCheckReason[] {
  const reasons: NextCheckReason[] = [
    { code: 'informationPerMinute', bits: chain.jointInformationBits, minutes: chain.minutes },
  ];
  if (chain.chain.length > 1)
    reasons.push({ code: 'unlocks', targetCheckId: chain.targetCheckId, chain: chain.chain });
  const target = tables.checks.find((row) => row.id === chain.targetCheckId)!;
  const apart = separatedPair(target, leading);
  if (apart !== null) reasons.push(apart);
  if (settled.has(check.id)) reasons.push({ code: 'repeatOfUndecided' });
  const findings = check.prerequisites.filter((id) => settled.get(id)?.standing === 'positive');
  if (findings.length > 0) reasons.push({ code: 'provisionalUntilCorrected', findings });
  return reasons;
}

/** The two leading causes that the check tells apart best, where it tells them apart by a factor of two or more. */
function separatedPair(check: CheckRow, leading: readonly CauseProbability[]): NextCheckReason | null {
  const positive = (cause: CauseProbability): number => check.positiveGivenCause[cause.causeId] ?? 0;
  const [first, ...others] = leading;
  if (first === undefined) return null;
  const high = others.reduce((best, cause) => (positive(cause) > positive(best) ? cause : best), first);
  const low = leading
    .filter((cause) => cause !== high)
    .reduce<CauseProbability | null>(
      (best, cause) => (best === null || positive(cause) < positive(best) ? cause : best),
      null,
    );
  if (low === null || positive(high) < 2 * positive(low) || positive(high) === 0) return null;
  return { code: 'separatesCauses', likelier: high.causeId, lessLikely: low.causeId };
}
