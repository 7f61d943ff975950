import type { Check } from '@endfloat/catalogue';
import {
  checkStanding,
  judgeBladePair,
  judgeFunctionalCriterion,
  judgeGrade,
  judgeYesNo,
  notJudged,
  type BladePair,
  type BladePairGrade,
  type Limit,
  type LimitContext,
  type ReadingStanding,
  type UnitCode,
  type Verdict as Judgement,
} from '@endfloat/metrology';
import type { Reading } from '../../ports/records/bench.records.js';
import { quantityOf } from './judge-numbers.js';

/** The part of a reading that is judged here. */
export interface Observation {
  readonly id: string;
  readonly content: Pick<Reading, 'resultKind' | 'pair' | 'unit' | 'answer' | 'grade'>;
}

export interface ObservationJudgement {
  readonly judgement: Judgement;
  readonly grade: BladePairGrade | null;
  /** a negative functional answer that is repeated once its companion is right */
  readonly isProvisional: boolean;
  readonly readingIds: readonly string[];
}

/** The pair of blades as it was entered. */
export function pairOf({ content }: Observation): BladePair | null {
  const { pair, unit } = content;
  if (pair === null || unit === null) return null;
  const blade = (text: string | null) =>
    text === null ? null : quantityOf({ text, unit: unit as UnitCode });
  return { largestHolding: blade(pair.largestClosed), smallestChanged: blade(pair.smallestOpen) };
}

/** The last pair counts; pairs are never averaged. */
export function judgePairs(
  limit: Limit,
  readings: readonly Observation[],
  context: LimitContext,
  standing: ReadingStanding,
): ObservationJudgement {
  const last = readings[readings.length - 1];
  const pair = last === undefined ? null : pairOf(last);
  if (last === undefined || pair === null) throw new RangeError('nothing to judge');
  const { grade, verdict } = judgeBladePair(limit, pair, context, standing);
  return { judgement: verdict, grade, isProvisional: false, readingIds: [last.id] };
}

/**
 * Yes/no answers and grades. Of repeats with no work between them one bad answer is enough: what holds "every time" does
 * not hold when it failed once.
 */
export function judgeAnswers(
  limit: Limit,
  readings: readonly Observation[],
  context: LimitContext,
  standing: ReadingStanding,
): ObservationJudgement {
  const judged = readings.map(({ content }) =>
    content.resultKind === 'grade'
      ? judgeGrade(limit, content.grade ?? '', context, standing)
      : judgeYesNo(limit, yesNo(content.answer), context, standing),
  );
  const bad = judged.find((each) => each.kind === 'judged' && each.outcome === 'outside');
  const judgement = bad ?? judged[judged.length - 1];
  if (judgement === undefined) throw new RangeError('nothing to judge');
  return { judgement, grade: null, isProvisional: false, readingIds: readings.map(({ id }) => id) };
}

const yesNo = (answer: boolean | null): 'yes' | 'no' => (answer === true ? 'yes' : 'no');

export interface FunctionalInput {
  readonly limit: Limit;
  readonly check: Check;
  readonly readings: readonly Observation[];
  /** the companion's last pair of the same phase, with no work between */
  readonly companion: Observation | null;
  /** limit that says which window the companion must be in; null where none applies */
  readonly companionLimit: Limit | null;
  readonly context: LimitContext;
  readonly standing: ReadingStanding;
}

/** A behaviour that decides without a number, given the state of its companion. */
export function judgeFunctional(input: FunctionalInput): ObservationJudgement {
  const { limit, check, readings, companion, companionLimit, context, standing } = input;
  const plain = judgeAnswers(limit, readings, context, standing);
  const { functional } = check;
  if (functional === null || checkStanding(limit, context, standing).kind !== 'free') return plain;
  const accepted = limit.criterion.kind === 'yesNo' ? limit.criterion.accepted : 'no';
  const isPositive = readings.some(({ content }) => yesNo(content.answer) !== accepted);
  if (companionLimit?.criterion.kind !== 'pair') {
    return isPositive ? barred(plain, limit, 'companionMissing', functional.companionCheckId) : plain;
  }
  const pair = companion === null ? null : pairOf(companion);
  const verdict = judgeFunctionalCriterion(
    { isPositive, companion: pair },
    { leastGapForPositive: functional.conclusiveFrom, window: companionLimit.criterion },
  );
  const readingIds = companion === null ? plain.readingIds : [...plain.readingIds, companion.id];
  switch (verdict.kind) {
    case 'failed':
      return { ...plain, readingIds };
    case 'passed':
      return { ...plain, readingIds };
    case 'provisional':
      return { ...plain, readingIds, isProvisional: functional.negativeRepeatedAfterCompanion };
    case 'notJudged': {
      const reason = verdict.reason === 'companionMissing' ? 'companionMissing' : 'companionNotConclusive';
      return barred({ ...plain, readingIds }, limit, reason, functional.companionCheckId);
    }
  }
}

function barred(
  plain: ObservationJudgement,
  limit: Limit,
  reason: 'companionMissing' | 'companionNotConclusive',
  companionCheckId: string,
): ObservationJudgement {
  return { ...plain, judgement: notJudged(limit, reason, [companionCheckId]) };
}
