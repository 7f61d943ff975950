import type { LimitContext } from '../limits/applicability.js';
import type { Limit } from '../limits/limit.js';
import type { Severity } from '../limits/severity.js';
import { canonicalNumber } from '../quantities/canonical-number.js';
import type { BladePair, BladePairGrade, GapWindow } from './grade-blade-pair.js';
import { gradeBladePair } from './grade-blade-pair.js';
import type { JudgedVerdict, NotJudgedVerdict, VerdictOutcome } from './verdict.js';
import type { ReadingStanding } from './verdict-standing.js';
import { checkStanding, notJudged } from './verdict-standing.js';

/** A verdict by a stated rule instead of a probability. */
export type RuleVerdict = JudgedVerdict | NotJudgedVerdict;

/** A verdict of a blade pair with its grade; the grade is given even where the verdict is barred. */
export interface BladePairVerdict {
  readonly grade: BladePairGrade;
  readonly verdict: RuleVerdict;
}

/**
 * Judges a go/no-go pair of blades against a window of gaps, by simple acceptance (see `gradeBladePair`). For
 * information, `probabilityInside` is the share of the bracket that lies in the window, all gaps in the bracket alike;
 * it is not what the verdict rests on, and null where the bracket is open or contradictory.
 *
 * @param limit     a limit with a `pair` criterion
 * @param pair      the two blades
 * @param context   what is known of vehicle and test
 * @param standing  what is known of the reading
 * @returns grade and verdict: pass is inside, too small and too large are outside, a contradictory pair is not judged
 * @throws RangeError on a limit of another shape, when no blade is known, on a value that is no length
 * @source common practice, no published source
 */
export function judgeBladePair(
  limit: Limit,
  pair: BladePair,
  context: LimitContext,
  standing: ReadingStanding = {},
): BladePairVerdict {
  const { criterion } = limit;
  if (criterion.kind !== 'pair') throw new RangeError(`limit ${limit.id} is no pair of blades`);
  const grade = gradeBladePair(pair, criterion);
  const free = checkStanding(limit, context, standing);
  if (free.kind !== 'free') return { grade, verdict: free };
  if (grade === 'contradictory') return { grade, verdict: notJudged(limit, 'contradictoryPair') };
  const verdict = byRule(
    limit,
    outcomeOfGrade[grade],
    free.unstatedConditions,
    'blade pair, simple acceptance',
  );
  const isUndecided = grade === 'undecided';
  return {
    grade,
    verdict: {
      ...verdict,
      probabilityInside: shareInWindow(pair, criterion),
      // The two blades of the edges settle it, unless the gap lies on an edge.
      furtherReadings: isUndecided ? { kind: 'needed', count: 1 } : { kind: 'none' },
    },
  };
}

/**
 * Judges a yes/no observation.
 *
 * @param limit     a limit with a `yesNo` criterion
 * @param answer    what was observed
 * @param context   what is known of vehicle and test
 * @param standing  what is known of the reading
 * @returns inside where the answer is the accepted one, else outside; or why it is not judged
 * @throws RangeError on a limit of another shape
 * @source definition
 */
export function judgeYesNo(
  limit: Limit,
  answer: 'yes' | 'no',
  context: LimitContext,
  standing: ReadingStanding = {},
): RuleVerdict {
  if (limit.criterion.kind !== 'yesNo') throw new RangeError(`limit ${limit.id} is no yes/no`);
  const free = checkStanding(limit, context, standing);
  if (free.kind !== 'free') return free;
  const outcome = answer === limit.criterion.accepted ? 'inside' : 'outside';
  return byRule(limit, outcome, free.unstatedConditions, 'yes/no');
}

/**
 * Judges a grade given by eye. A rejected grade carries its own severity, which replaces the limit's.
 *
 * @param limit     a limit with a `grade` criterion
 * @param grade     the grade given
 * @param context   what is known of vehicle and test
 * @param standing  what is known of the reading
 * @returns inside for an accepted grade, outside for a rejected one, `gradeUnknown` for any other; or why it is not
 *   judged
 * @throws RangeError on a limit of another shape
 * @source definition
 */
export function judgeGrade(
  limit: Limit,
  grade: string,
  context: LimitContext,
  standing: ReadingStanding = {},
): RuleVerdict {
  const { criterion } = limit;
  if (criterion.kind !== 'grade') throw new RangeError(`limit ${limit.id} is no grade`);
  const free = checkStanding(limit, context, standing);
  if (free.kind !== 'free') return free;
  if (criterion.accepted.includes(grade)) return byRule(limit, 'inside', free.unstatedConditions, 'grade');
  const rejected = criterion.rejected.find((candidate) => candidate.grade === grade);
  if (rejected === undefined) return notJudged(limit, 'gradeUnknown', [grade.slice(0, 64)]);
  return byRule(limit, 'outside', free.unstatedConditions, 'grade', rejected.severity);
}

const outcomeOfGrade: Readonly<Record<Exclude<BladePairGrade, 'contradictory'>, VerdictOutcome>> = {
  pass: 'inside',
  tooSmall: 'outside',
  tooLarge: 'outside',
  undecided: 'undecided',
};

function byRule(
  limit: Limit,
  outcome: VerdictOutcome,
  unstatedConditions: readonly string[],
  method: string,
  severity: Severity = limit.severity,
): JudgedVerdict {
  return {
    kind: 'judged',
    limitId: limit.id,
    severity,
    outcome,
    probabilityInside: null,
    value: null,
    standardUncertainty: null,
    effectiveDegreesOfFreedom: null,
    count: 1,
    bounds: null,
    advisory: null,
    furtherReadings: { kind: 'none' },
    unstatedConditions,
    method,
  };
}

function shareInWindow({ largestHolding, smallestChanged }: BladePair, window: GapWindow): number | null {
  if (largestHolding === null || smallestChanged === null) return null;
  const [from, to, lower, upper] = [largestHolding, smallestChanged, window.lower, window.upper].map((gap) =>
    canonicalNumber(gap, 'length'),
  ) as [number, number, number, number];
  return Math.max(0, Math.min(to, upper) - Math.max(from, lower)) / (to - from);
}
