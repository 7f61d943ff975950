import type { LimitContext } from '../limits/applicability.js';
import type { Limit } from '../limits/limit.js';
import { matchesRule } from '../limits/matches-rule.js';
import { answerRules, editionStanding } from '../limits/select-applicable-limits.js';
import type { NotJudgedReason, NotJudgedVerdict } from './verdict.js';

/** What bars a verdict whatever the value is; everything is open when left out. */
export interface ReadingStanding {
  /** The value looked implausible and nobody has confirmed it. */
  readonly isValueToConfirm?: boolean;
  /** Ids of prerequisites of the check that are not passed yet. */
  readonly openPrerequisites?: readonly string[];
  /** Day whose limit editions count, YYYY-MM-DD; not checked when left out. */
  readonly asOf?: string;
}

/** Free to judge, with the conditions nobody stated; or the verdict that there is none. */
export type StandingResult =
  { readonly kind: 'free'; readonly unstatedConditions: readonly string[] } | NotJudgedVerdict;

/**
 * Checks what bars a verdict before any number is looked at, in this order: the value is still to be confirmed;
 * prerequisites are open; the limit is not confirmed, or not in force, or contradicted by what is known of the vehicle;
 * an exclusion holds; a test condition was not met.
 *
 * @param limit     the limit
 * @param context   what is known of vehicle, part and test
 * @param standing  what is known of the reading
 * @returns `free`, or `notJudged` with the first reason
 * @source judgement: the order
 */
export function checkStanding(
  limit: Limit,
  context: LimitContext,
  standing: ReadingStanding,
): StandingResult {
  const barred = (reason: NotJudgedReason, details: readonly string[] = []): NotJudgedVerdict =>
    notJudged(limit, reason, details);
  if (standing.isValueToConfirm === true) return barred('valueToConfirm');
  const open = standing.openPrerequisites ?? [];
  if (open.length > 0) return barred('prerequisitesOpen', open);
  if (limit.judging !== 'allowed') return barred('limitNotConfirmed');
  if (standing.asOf !== undefined && editionStanding(limit, standing.asOf) !== 'inForce') {
    return barred('limitNotInForce', [standing.asOf]);
  }
  const { notMet } = answerRules(limit.applicability, context);
  if (notMet.length > 0) return barred('limitNotApplicable', notMet);
  const exclusions = limit.exclusions.filter(({ key, rule }) => {
    const value = context[key];
    return value !== undefined && matchesRule(rule, value) === 'met';
  });
  if (exclusions.length > 0) {
    return barred(
      'excluded',
      exclusions.map(({ id }) => id),
    );
  }
  const conditions = answerRules(limit.conditions, context);
  if (conditions.notMet.length > 0) return barred('wrongConditions', conditions.notMet);
  return { kind: 'free', unstatedConditions: conditions.unknown };
}

/**
 * The verdict that there is none.
 *
 * @param limit    the limit
 * @param reason   stable code
 * @param details  keys or ids that are missing or in the way; none when left out
 * @returns a `notJudged` verdict
 * @source none needed
 */
export function notJudged(
  limit: Limit,
  reason: NotJudgedReason,
  details: readonly string[] = [],
): NotJudgedVerdict {
  return { kind: 'notJudged', limitId: limit.id, severity: limit.severity, reason, details };
}
