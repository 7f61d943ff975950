import type { AppliedBoundDto, JudgementDto, VerdictResponse } from '@endfloat/contracts';
import type { BenchJudgement, Evaluation, VerdictView } from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';
import { verdictWords } from './verdict-words.js';

type Detail = VerdictView['record']['content']['detail'];
type Bound = NonNullable<Extract<BenchJudgement, { kind: 'judged' }>['bounds']>['lower'];

interface Presentable extends Pick<Detail, 'judgement' | 'uncertainty' | 'grade' | 'readingClass'> {
  readonly gaugeStudyId?: string | null;
  readonly limit: JudgementDto['limit'];
  readonly title: string;
  readonly outrankedBy: string | null;
}

export function presentVerdict({ record, check }: VerdictView): VerdictResponse {
  const { identity, content } = record;
  const { detail } = content;
  const isBad = content.outcome === 'outside' || detail.outrankedBy !== null;
  return {
    ...presentRecorded(record),
    ...presentJudgement({
      ...detail,
      limit: { id: detail.judgement.limitId, ...detail.limit },
      title: check.title,
    }),
    inspectionId: identity.inspectionId,
    checkId: identity.checkId,
    phase: identity.phase,
    position: detail.position,
    place: detail.place,
    provisional: content.provisional,
    outrankedBy: detail.outrankedBy,
    readingIds: [...content.readingIds],
    overdueInstrumentIds: [...content.overdueInstrumentIds],
    outsideMeans: isBad ? check.outsideMeans : null,
    whatToDo: isBad ? check.whatToDo : null,
  };
}

export function presentEvaluation({ limit, ...judged }: Evaluation): JudgementDto {
  const { id, edition, origin, asWritten } = limit;
  const used = { id, origin, asWritten, ...edition };
  return presentJudgement({ ...judged, limit: used, title: limit.characteristic, outrankedBy: null });
}

export function presentJudgement(given: Presentable): JudgementDto {
  const { judgement, uncertainty, grade, readingClass, limit } = given;
  const isJudged = judgement.kind === 'judged';
  const isNotJudged = judgement.kind === 'notJudged';
  return {
    limit: {
      id: limit.id,
      origin: limit.origin,
      asWritten: limit.asWritten,
      validFrom: limit.validFrom,
      validTo: limit.validTo,
      source: limit.source,
      citation: limit.citation,
    },
    outcome: isNotJudged ? 'notJudged' : judgement.outcome,
    basis: judgement.kind,
    probabilityInside: isJudged ? judgement.probabilityInside : null,
    severity: judgement.severity,
    reason: isNotJudged ? judgement.reason : null,
    details: isNotJudged ? [...judgement.details] : [],
    ...presentFigures(judgement, uncertainty),
    gaugeStudyId: given.gaugeStudyId ?? null,
    bounds: isNotJudged ? null : presentBounds(judgement.bounds),
    advisory: isNotJudged ? null : judgement.advisory,
    furtherReadings: isJudged ? { ...judgement.furtherReadings } : { kind: 'none' },
    unstatedConditions: isNotJudged ? [] : [...judgement.unstatedConditions],
    grade,
    readingClass:
      readingClass === null ? null : { name: readingClass.name, possible: [...readingClass.possible] },
    method: isNotJudged ? null : judgement.method,
    words: verdictWords({
      judgement,
      value: valueWords(judgement, grade),
      title: given.title,
      outrankedBy: given.outrankedBy,
    }),
  };
}

function presentFigures(
  judgement: BenchJudgement,
  uncertainty: Detail['uncertainty'],
): Pick<
  JudgementDto,
  'value' | 'standardUncertainty' | 'effectiveDegreesOfFreedom' | 'contributions' | 'missing' | 'count'
> {
  const isJudged = judgement.kind === 'judged';
  const isNotJudged = judgement.kind === 'notJudged';
  const freedom = isJudged ? judgement.effectiveDegreesOfFreedom : null;
  const known = uncertainty?.kind === 'known' ? uncertainty.contributions : [];
  return {
    value: isNotJudged ? null : judgement.value,
    standardUncertainty:
      isJudged && judgement.standardUncertainty !== null ? Number(judgement.standardUncertainty.value) : null,
    effectiveDegreesOfFreedom: freedom === 'infinite' ? null : freedom,
    contributions: known.map(({ source, standardUncertainty, degreesOfFreedom, share }) => ({
      source,
      standardUncertainty,
      degreesOfFreedom: degreesOfFreedom === 'infinite' ? null : degreesOfFreedom,
      share: Math.min(1, share),
    })),
    missing: missingFor(judgement, uncertainty),
    count: isNotJudged ? 0 : judgement.count,
  };
}

/** A class of a number says too when its doubt is not known. */
function missingFor(judgement: BenchJudgement, uncertainty: Detail['uncertainty']): string[] {
  if (judgement.kind === 'faceValue') return [...judgement.missing];
  return uncertainty?.kind === 'unknown' ? [...uncertainty.missing] : [];
}

function presentBounds(
  bounds: Extract<BenchJudgement, { kind: 'judged' }>['bounds'],
): JudgementDto['bounds'] {
  return bounds === null ? null : { lower: presentBound(bounds.lower), upper: presentBound(bounds.upper) };
}

function presentBound(bound: Bound): AppliedBoundDto | null {
  if (bound === null) return null;
  const { value, unit, isInclusive } = bound;
  return { at: { value, unit }, isInclusive };
}

const gradeWords = {
  pass: 'the pair of blades',
  tooSmall: 'the pair of blades (gap too small)',
  tooLarge: 'the pair of blades (gap too large)',
  undecided: 'the pair of blades',
  contradictory: 'the pair of blades',
} as const;

function valueWords(judgement: BenchJudgement, grade: Detail['grade']): string {
  if (grade !== null) return gradeWords[grade];
  if (judgement.kind === 'notJudged' || judgement.value === null) return 'what was seen';
  const { value, unit } = judgement.value;
  return `${shortened(value)} ${unit}`;
}

/** A mean may not end; four significant digits are enough for a sentence. */
function shortened(value: string): string {
  return value.replace('.', '').length > 8 ? String(Number(Number(value).toPrecision(4))) : value;
}
