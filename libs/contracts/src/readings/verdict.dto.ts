import {
  bladePairGrades,
  limitOrigins,
  noNumberSettlesReasons,
  notJudgedReasons,
  severities,
  uncertaintySources,
  verdictKinds,
  type BladePairGrade,
  type LimitOrigin,
  type NoNumberSettlesReason,
  type NotJudgedReason,
  type Severity,
  type UncertaintySource,
  type VerdictKind,
} from '@endfloat/metrology';
import {
  readingPhases,
  verdictOutcomes,
  type ReadingPhase,
  type VerdictOutcome,
} from '@endfloat/workshop/ports';
import {
  EnumField,
  FlagField,
  IdField,
  IntegerField,
  JoinTypes,
  KindField,
  ListField,
  NestedField,
  NumberField,
  TextField,
  UnionField,
} from '../fields/index.js';
import { LimitEditionDto } from '../limits/index.js';
import { ComputedQuantityDto } from '../quantity/index.js';
import { RecordedResponse } from '../recording/index.js';

const benchNotJudgedReasons = [...notJudgedReasons, 'noReadings'] as const;

export class NoFurtherReadingsDto {
  @KindField('none')
  kind!: 'none';
}

export class FurtherReadingsNeededDto {
  @KindField('needed')
  kind!: 'needed';

  @IntegerField({ description: 'So many more would settle it if their mean stayed.', min: 1 })
  count!: number;
}

export class NoNumberSettlesDto {
  @KindField('noNumberSettles')
  kind!: 'noNumberSettles';

  @EnumField({
    description: 'Why no number of further readings settles it.',
    values: noNumberSettlesReasons,
    enumName: 'NoNumberSettlesReason',
    open: true,
  })
  why!: NoNumberSettlesReason;
}

export type FurtherReadingsDto = NoFurtherReadingsDto | FurtherReadingsNeededDto | NoNumberSettlesDto;

/** One edge the value was compared with. */
export class AppliedBoundDto {
  @NestedField({
    description: 'The edge, after table, formula and correction.',
    type: () => ComputedQuantityDto,
  })
  at!: ComputedQuantityDto;

  @FlagField({ description: 'The edge itself is permitted.' })
  isInclusive!: boolean;
}

export class AppliedBoundsDto {
  @NestedField({ description: 'Lower edge.', nullable: true, type: () => AppliedBoundDto })
  lower!: AppliedBoundDto | null;

  @NestedField({ description: 'Upper edge.', nullable: true, type: () => AppliedBoundDto })
  upper!: AppliedBoundDto | null;
}

export class UncertaintyContributionDto {
  @EnumField({
    description: 'Where this part of the doubt comes from.',
    values: uncertaintySources,
    enumName: 'UncertaintySource',
    open: true,
  })
  source!: UncertaintySource;

  @NumberField({ description: 'Standard uncertainty in the unit of the value.', min: 0 })
  standardUncertainty!: number;

  @NumberField({ description: 'Degrees of freedom; null: as good as known.', nullable: true })
  degreesOfFreedom!: number | null;

  @NumberField({ description: 'Share of the variance.', min: 0, max: 1 })
  share!: number;
}

/** Class of a number that gives no verdict, with those its doubt leaves possible. */
export class ReadingClassDto {
  @TextField({ description: 'Class of the bare value.', max: 200 })
  name!: string;

  @ListField({ description: 'Classes that are possible, highest first.', max: 50, text: { max: 200 } })
  possible!: string[];
}

export class UsedLimitDto extends LimitEditionDto {
  @TextField({ description: 'Id of the limit.', max: 128 })
  id!: string;

  @EnumField({
    description: 'Where it comes from.',
    values: limitOrigins,
    enumName: 'LimitOrigin',
    open: true,
  })
  origin!: LimitOrigin;

  @TextField({ description: 'In the words of its source.', max: 2000 })
  asWritten!: string;
}

/** What readings say against one limit. */
export class JudgementDto {
  @NestedField({ description: 'The limit in the edition that was used.', type: () => UsedLimitDto })
  limit!: UsedLimitDto;

  @EnumField({ description: 'What they say.', values: verdictOutcomes, enumName: 'VerdictOutcome' })
  outcome!: VerdictOutcome;

  @EnumField({
    description:
      'judged: with the doubt counted in; faceValue: bare numbers compared, because the doubt is not known.',
    values: verdictKinds,
    enumName: 'VerdictKind',
  })
  basis!: VerdictKind;

  @NumberField({
    description:
      'Probability that the true value meets the limit; null where the rule is none of probability.',
    nullable: true,
    min: 0,
    max: 1,
  })
  probabilityInside!: number | null;

  @EnumField({ description: 'How bad it is to be outside.', values: severities, enumName: 'Severity' })
  severity!: Severity;

  @EnumField({
    description: 'Why nothing was judged; null where it was.',
    nullable: true,
    values: benchNotJudgedReasons,
    enumName: 'NotJudgedReason',
    open: true,
  })
  reason!: NotJudgedReason | 'noReadings' | null;

  @ListField({ description: 'What is missing or in the way.', max: 100, text: { max: 200 } })
  details!: string[];

  @NestedField({
    description: 'Mean of the readings, canonical unit.',
    nullable: true,
    type: () => ComputedQuantityDto,
  })
  value!: ComputedQuantityDto | null;

  @NumberField({ description: 'Standard uncertainty of the mean, in its unit.', nullable: true, min: 0 })
  standardUncertainty!: number | null;

  @NumberField({
    description: 'Effective degrees of freedom; null: as good as known, or none.',
    nullable: true,
  })
  effectiveDegreesOfFreedom!: number | null;

  @ListField({ description: 'What the doubt is made of.', max: 20, type: () => UncertaintyContributionDto })
  contributions!: UncertaintyContributionDto[];

  @IdField({
    description:
      'Gauge study the repeatability was taken from; null: the default of the kind of part, the repeats alone, or no number.',
    nullable: true,
  })
  gaugeStudyId!: string | null;

  @ListField({
    description: 'What is missing for the doubt to be known: instrument, resolution, setUp, repeatability.',
    max: 10,
    text: { max: 64 },
  })
  missing!: string[];

  @IntegerField({ description: 'Readings it rests on.' })
  count!: number;

  @NestedField({ description: 'Edges compared with.', nullable: true, type: () => AppliedBoundsDto })
  bounds!: AppliedBoundsDto | null;

  @EnumField({
    description: 'Outcome against the advisory criterion, where the limit has one.',
    nullable: true,
    values: verdictOutcomes,
    enumName: 'VerdictOutcome',
  })
  advisory!: VerdictOutcome | null;

  @UnionField({
    description: 'Readings still needed to decide.',
    types: () => [NoFurtherReadingsDto, FurtherReadingsNeededDto, NoNumberSettlesDto],
  })
  furtherReadings!: FurtherReadingsDto;

  @ListField({ description: 'Conditions the limit names that nobody stated.', max: 50, text: { max: 200 } })
  unstatedConditions!: string[];

  @EnumField({
    description: 'What a pair of blades says.',
    nullable: true,
    values: bladePairGrades,
    enumName: 'BladePairGrade',
    open: true,
  })
  grade!: BladePairGrade | null;

  @NestedField({ description: 'Class of the number.', nullable: true, type: () => ReadingClassDto })
  readingClass!: ReadingClassDto | null;

  @TextField({ description: 'Method.', nullable: true, max: 500 })
  method!: string | null;

  @ListField({ description: 'The verdict in words.', max: 20, text: { max: 2000 } })
  words!: string[];
}

/** A stored verdict of one check, phase, position and limit. */
export class VerdictResponse extends JoinTypes(RecordedResponse, JudgementDto) {
  @IdField({ description: 'The inspection.' })
  inspectionId!: string;

  @TextField({ description: 'The check.', max: 128 })
  checkId!: string;

  @EnumField({ description: 'Before or after work.', values: readingPhases, enumName: 'ReadingPhase' })
  phase!: ReadingPhase;

  @TextField({ description: 'Where on the vehicle.', max: 64 })
  position!: string;

  @TextField({ description: 'The worst of several like places.', nullable: true, max: 64 })
  place!: string | null;

  @FlagField({ description: 'It may change without this item being read again, or has to be repeated.' })
  provisional!: boolean;

  @TextField({
    description: 'Check whose functional answer outranks this number, whatever it says.',
    nullable: true,
    max: 128,
  })
  outrankedBy!: string | null;

  @ListField({ description: 'Readings it rests on.', max: 1000, ids: true })
  readingIds!: string[];

  @ListField({
    description: 'Instruments that were not in calibration on the day.',
    max: 100,
    ids: true,
  })
  overdueInstrumentIds!: string[];

  @TextField({
    description: 'What being outside means; null where it is not outside.',
    nullable: true,
    max: 2000,
  })
  outsideMeans!: string | null;

  @TextField({ description: 'What to do then.', nullable: true, max: 2000 })
  whatToDo!: string | null;
}
