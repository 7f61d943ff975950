import type { LimitContext } from './applicability.js';
import type { Limit, LimitOrigin } from './limit.js';
import { matchesRule } from './matches-rule.js';

/** Why a limit does not apply; stable codes. */
export const notApplicableReasons = [
  'otherJurisdiction',
  'notYetInForce',
  'noLongerInForce',
  'ruleNotMet',
] as const;

/** A reason of `notApplicableReasons`. */
export type NotApplicableReason = (typeof notApplicableReasons)[number];

/** Which limits hold for a vehicle on a day; every limit given is in exactly one list. */
export interface LimitSelection {
  /** In the order given. Limits of several jurisdictions stand side by side, never merged. */
  readonly applicable: readonly Limit[];
  /** Applicable, but another origin comes first; `by` is the id of the limit that does. */
  readonly superseded: readonly { readonly limit: Limit; readonly by: string }[];
  /** The context does not say what the limit asks for. */
  readonly undetermined: readonly { readonly limit: Limit; readonly missing: readonly string[] }[];
  readonly notApplicable: readonly {
    readonly limit: Limit;
    readonly reason: NotApplicableReason;
    readonly keys: readonly string[];
  }[];
}

/** Precedence by origin, lowest first. A number from memory ranks with a published one, for that is what it claims to be. */
const rank: Readonly<Record<LimitOrigin, number>> = {
  maker: 0,
  shop: 1,
  published: 2,
  memory: 2,
  commonPractice: 3,
  judgement: 4,
};

/**
 * Limits that hold for a vehicle, a part and a test on a day.
 *
 * A limit applies when its edition is in force, its jurisdiction is one of those asked for (or it has none), and every
 * entry of its applicability is met by the context. Of those, maker comes before shop before published before common
 * practice before judgement, within one characteristic and one tier of severity (advisory, dangerous, everything else)
 * and only where the places agree: a maker's or shop's limit without jurisdiction stands before every place's rule, one
 * with a jurisdiction only before rules of that place. Several limits of the same rank all stay, and a limit that is not
 * to be used for judging yet stands before none.
 *
 * @param limits   any limits
 * @param context  what is known; `jurisdiction` names the place or places whose rules are wanted
 * @param asOf     the day, YYYY-MM-DD
 * @returns the four lists
 * @throws RangeError on a text that is not written YYYY-MM-DD
 * @source judgement: the order of precedence
 * @example selectApplicableLimits([], {}, '2026-05-04')
 *   // => { applicable: [], superseded: [], undetermined: [], notApplicable: [] }
 */
export function selectApplicableLimits(
  limits: readonly Limit[],
  context: LimitContext,
  asOf: string,
): LimitSelection {
  if (!/^[0-9]{4}-[0-9]{2}-[0-9]{2}$/.test(asOf)) throw new RangeError(`not a date: ${asOf.slice(0, 16)}`);
  const undetermined: { limit: Limit; missing: readonly string[] }[] = [];
  const notApplicable: { limit: Limit; reason: NotApplicableReason; keys: readonly string[] }[] = [];
  const candidates: Limit[] = [];
  for (const limit of limits) {
    const standing = standingOf(limit, context, asOf);
    if (standing.kind === 'applicable') candidates.push(limit);
    else if (standing.kind === 'undetermined') undetermined.push({ limit, missing: standing.missing });
    else notApplicable.push({ limit, reason: standing.reason, keys: standing.keys });
  }
  const applicable: Limit[] = [];
  const superseded: { limit: Limit; by: string }[] = [];
  const byRank = [...candidates].sort((a, b) => rank[a.origin] - rank[b.origin]);
  for (const limit of candidates) {
    const first = byRank.find((other) => comesBefore(other, limit));
    if (first === undefined) applicable.push(limit);
    else superseded.push({ limit, by: first.id });
  }
  return { applicable, superseded, undetermined, notApplicable };
}

/**
 * Whether a limit's edition is in force on a day.
 *
 * @param limit  its `edition` is looked at
 * @param asOf   YYYY-MM-DD, not checked
 * @returns `inForce`, `notYetInForce` or `noLongerInForce` (from `validTo` on); an open end counts as in force
 * @source definition
 */
export function editionStanding(
  { edition }: Pick<Limit, 'edition'>,
  asOf: string,
): 'inForce' | 'notYetInForce' | 'noLongerInForce' {
  if (edition.validFrom !== null && asOf < edition.validFrom) return 'notYetInForce';
  return edition.validTo !== null && asOf >= edition.validTo ? 'noLongerInForce' : 'inForce';
}

type Standing =
  | { readonly kind: 'applicable' }
  | { readonly kind: 'undetermined'; readonly missing: readonly string[] }
  | {
      readonly kind: 'notApplicable';
      readonly reason: NotApplicableReason;
      readonly keys: readonly string[];
    };

function standingOf(limit: Limit, context: LimitContext, asOf: string): Standing {
  const inForce = editionStanding(limit, asOf);
  if (inForce !== 'inForce') return { kind: 'notApplicable', reason: inForce, keys: [] };
  const missing: string[] = [];
  if (limit.jurisdiction !== null) {
    const place = context['jurisdiction'];
    if (place === undefined) missing.push('jurisdiction');
    else if (matchesRule({ kind: 'oneOf', values: [limit.jurisdiction] }, place) !== 'met') {
      return { kind: 'notApplicable', reason: 'otherJurisdiction', keys: ['jurisdiction'] };
    }
  }
  const { notMet, unknown } = answerRules(limit.applicability, context);
  if (notMet.length > 0) return { kind: 'notApplicable', reason: 'ruleNotMet', keys: notMet };
  missing.push(...unknown);
  return missing.length > 0 ? { kind: 'undetermined', missing } : { kind: 'applicable' };
}

/**
 * Keys of a record of rules that the context contradicts, and keys it does not answer.
 *
 * @param rules    rules by key
 * @param context  what is known
 * @returns both lists, in the order of the record
 */
export function answerRules(
  rules: Limit['applicability'],
  context: LimitContext,
): { readonly notMet: readonly string[]; readonly unknown: readonly string[] } {
  const notMet: string[] = [];
  const unknown: string[] = [];
  for (const [key, rule] of Object.entries(rules)) {
    const value = context[key];
    const match = value === undefined ? 'cannotTell' : matchesRule(rule, value);
    if (match === 'notMet') notMet.push(key);
    if (match === 'cannotTell') unknown.push(key);
  }
  return { notMet, unknown };
}

const tierOf = ({ severity }: Limit): 'advisory' | 'dangerous' | 'requirement' =>
  severity === 'advisory' || severity === 'dangerous' ? severity : 'requirement';

function comesBefore(first: Limit, second: Limit): boolean {
  const isSamePlace =
    first.jurisdiction === second.jurisdiction ||
    (first.jurisdiction === null && rank[first.origin] <= rank.shop);
  return (
    isSamePlace &&
    first.judging === 'allowed' &&
    rank[first.origin] < rank[second.origin] &&
    first.characteristic === second.characteristic &&
    tierOf(first) === tierOf(second)
  );
}
