import type { Check } from '@endfloat/catalogue';
import {
  notJudged,
  selectApplicableLimits,
  type Limit,
  type LimitContext,
  type ReadingStanding,
  type UnitCode,
} from '@endfloat/metrology';
import type { ReadingPhase, Verdict, VerdictDetail } from '../../ports/records/bench.records.js';
import {
  characteristicOf,
  positionsOf,
  type BenchCase,
  type JudgedRow,
  type ReadingGroup,
} from './bench-case.js';
import { standingOf } from './check-standing.js';
import { companionFor } from './companion.js';
import {
  judgeAnswers,
  judgeFunctional,
  judgePairs,
  type ObservationJudgement,
} from './judge-observations.js';
import { studiedFor, type StudiedRepeatability } from '../gauge-studies/studied-repeatability.js';
import { limitsOf } from './limits-of-check.js';
import { judgeNumbers, type NumberJudgement, type PlaceNumbers } from './judge-numbers.js';
import { contextOfTexts } from './limit-context.js';
import { openPrerequisites, type GroupWithRows } from './open-prerequisites.js';
import { readingGroups } from './reading-groups.js';

/**
 * All verdicts of an inspection: one for each check, phase, position and limit that may apply. Checks are judged after
 * those they wait for; a valid functional failure then marks the numbers it outranks.
 */
export function judgeInspection(bench: BenchCase): readonly JudgedRow[] {
  const done = new Map<string, readonly GroupWithRows[]>();
  const judge = (check: Check): readonly GroupWithRows[] => {
    const known = done.get(check.id);
    if (known !== undefined) return known;
    const before = new Map(
      check.prerequisites.map((id) => {
        const needed = bench.sheet.checks.find((each) => each.id === id);
        return [id, needed === undefined ? [] : judge(needed)] as const;
      }),
    );
    const groups = readingGroups(bench, check).map((group) => ({
      group,
      rows: judgeGroup(bench, group, openPrerequisites(bench, group, before)),
    }));
    done.set(check.id, groups);
    return groups;
  };
  return markOutranked(bench, bench.sheet.checks.flatMap(judge));
}

function judgeGroup(bench: BenchCase, group: ReadingGroup, open: readonly string[]): readonly JudgedRow[] {
  const { check, readings } = group;
  const last = readings[readings.length - 1];
  if (last === undefined) return [];
  const context: LimitContext = {
    ...bench.context,
    position: group.position,
    ...contextOfTexts(last.content.conditions),
  };
  const day = bench.localDay(last.content.takenAt);
  const { applicable, undetermined } = selectApplicableLimits(limitsOf(bench, check), context, day);
  const standing: ReadingStanding = {
    isValueToConfirm: readings.some(({ content }) => !content.valueConfirmed),
    openPrerequisites: open,
    asOf: day,
  };
  const severalPositions = positionsOf(bench.componentTypes, check).length > 1;
  const rowOf = (limit: Limit, judged: Judged): JudgedRow => ({
    checkId: check.id,
    phase: group.phase,
    limitId: severalPositions ? `${limit.id}@${group.position}` : limit.id,
    content: verdictOf(bench, group, limit, judged),
  });
  return [
    ...applicable.map((limit) => rowOf(limit, judgeLimit(bench, group, limit, context, standing))),
    ...undetermined.map(({ limit, missing }) =>
      rowOf(limit, { ...nothing, judgement: notJudged(limit, 'contextMissing', missing) }),
    ),
  ];
}

type Judged = Pick<NumberJudgement, 'judgement' | 'uncertainty' | 'readingClass' | 'place'> &
  Pick<ObservationJudgement, 'grade' | 'isProvisional'> & {
    readonly readingIds: readonly string[] | null;
    readonly gaugeStudyId: string | null;
  };

const nothing: Omit<Judged, 'judgement'> = {
  uncertainty: null,
  readingClass: null,
  place: null,
  grade: null,
  isProvisional: false,
  readingIds: null,
  gaugeStudyId: null,
};

function judgeLimit(
  bench: BenchCase,
  group: ReadingGroup,
  limit: Limit,
  context: LimitContext,
  standing: ReadingStanding,
): Judged {
  const { check, readings } = group;
  switch (check.resultKind) {
    case 'number': {
      const instrumentId = readings[0]?.content.instrumentId ?? null;
      const instrument = instrumentId === null ? undefined : bench.instruments.get(instrumentId);
      const studied = studiedFor(bench.studies, check.characteristicId, instrument?.instrument.kind ?? null);
      const judged = judgeNumbers({
        limit,
        characteristic: characteristicOf(bench.componentTypes, check),
        places: placesOf(group),
        instrument: instrument?.instrument.properties ?? null,
        studied,
        context,
        standing,
      });
      return { ...nothing, ...judged, gaugeStudyId: studyUsed(studied, judged) };
    }
    case 'bladePair':
      return { ...nothing, ...judgePairs(limit, readings, context, standing) };
    case 'yesNo':
    case 'grade': {
      const judged =
        check.functional === null
          ? judgeAnswers(limit, readings, context, standing)
          : judgeFunctional({
              limit,
              check,
              readings,
              context,
              standing,
              ...companionFor(bench, group, check.functional.companionCheckId, context),
            });
      return { ...nothing, ...judged };
    }
  }
}

/** The study a judgement rests on: none where nothing was judged with the doubt counted in. */
export function studyUsed(
  studied: StudiedRepeatability | null,
  { judgement, uncertainty }: NumberJudgement,
): string | null {
  return uncertainty?.kind === 'known' || judgement.kind === 'judged' ? (studied?.studyId ?? null) : null;
}

function placesOf({ readings }: ReadingGroup): readonly PlaceNumbers[] {
  const places = [...new Set(readings.map(({ content }) => content.place))];
  return places.map((place) => ({
    place,
    shown: readings
      .filter(({ content }) => content.place === place)
      .map(({ content }) => ({ text: content.shown ?? '', unit: content.unit as UnitCode })),
  }));
}

function verdictOf(bench: BenchCase, group: ReadingGroup, limit: Limit, judged: Judged): Verdict {
  const { judgement } = judged;
  const readingIds = judged.readingIds ?? group.readings.map(({ id }) => id);
  const detail: VerdictDetail = {
    judgement,
    uncertainty: judged.uncertainty,
    grade: judged.grade,
    readingClass: judged.readingClass,
    outrankedBy: null,
    position: group.position,
    place: judged.place,
    limit: { ...limit.edition, origin: limit.origin, asWritten: limit.asWritten },
    ...(judged.gaugeStudyId === null ? {} : { gaugeStudyId: judged.gaugeStudyId }),
  };
  return {
    outcome: judgement.kind === 'notJudged' ? 'notJudged' : judgement.outcome,
    probabilityInside: judgement.kind === 'judged' ? probabilityText(judgement.probabilityInside) : null,
    provisional:
      judged.isProvisional || (judgement.kind === 'notJudged' && judgement.reason === 'prerequisitesOpen'),
    severity: judgement.severity,
    readingIds,
    overdueInstrumentIds: overdue(bench, readingIds),
    detail,
  };
}

/** Nine decimals are what the column holds. */
function probabilityText(probability: number | null): string | null {
  if (probability === null) return null;
  return probability.toFixed(9).replace(/\.?0+$/, '');
}

function overdue(bench: BenchCase, readingIds: readonly string[]): readonly string[] {
  const found = bench.readings
    .filter(({ id }) => readingIds.includes(id))
    .flatMap(({ content: { instrumentId, takenAt } }) => {
      const instrument = instrumentId === null ? undefined : bench.instruments.get(instrumentId);
      return instrumentId !== null && instrument?.isOverdueOn(bench.localDay(takenAt)) === true
        ? [instrumentId]
        : [];
    });
  return [...new Set(found)];
}

/** A functional answer that validly failed outranks the numbers it names, in the phase in which it was given. */
function markOutranked(bench: BenchCase, judged: readonly GroupWithRows[]): readonly JudgedRow[] {
  const by = (checkId: string, phase: ReadingPhase): string | null => {
    const characteristicId = bench.sheet.checks.find(({ id }) => id === checkId)?.characteristicId ?? '';
    const failed = judged.find(
      ({ group, rows }) =>
        group.phase === phase &&
        group.check.functional?.outranks.includes(characteristicId) === true &&
        standingOf(rows).state === 'failed',
    );
    return failed?.group.check.id ?? null;
  };
  return judged.flatMap(({ rows }) =>
    rows.map((row) => {
      const outrankedBy = by(row.checkId, row.phase);
      if (outrankedBy === null) return row;
      return { ...row, content: { ...row.content, detail: { ...row.content.detail, outrankedBy } } };
    }),
  );
}
