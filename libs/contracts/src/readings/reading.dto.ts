import { unitCodes, type UnitCode } from '@endfloat/metrology';
import { readingPhases, type ReadingPhase } from '@endfloat/workshop/ports';
import {
  DecimalField,
  EnumField,
  FlagField,
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  KindField,
  ListField,
  NestedField,
  QuantityField,
  TextField,
  TextMapField,
  textPatterns,
  UnionField,
  type QuantityDto,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { ComputedQuantityDto } from '../quantity/index.js';
import { ReasonField, RecordedResponse, WarningResponse } from '../recording/index.js';
import { VerdictResponse } from './verdict.dto.js';

/** Digits, or for inches a fraction; kept as written. */
const shown = { max: 40, pattern: '^-?[0-9][0-9 ./]*$' } as const;
const unit = {
  description: 'Code of the unit as read (UCUM); never guessed.',
  values: unitCodes,
  enumName: 'UnitCode',
  open: true,
} as const;

export class NumberResultDto {
  @KindField('number')
  kind!: 'number';

  @TextField({ description: 'Exactly as read, e.g. 0.18, or 2/32 for inches.', ...shown, example: '0.18' })
  shown!: string;

  @EnumField({ ...unit })
  unit!: UnitCode;
}

export class BladePairResultDto {
  @KindField('bladePair')
  kind!: 'bladePair';

  @TextField({
    description: 'Largest blade at which the switch is still closed; null where none.',
    nullable: true,
    ...shown,
    example: '0.06',
  })
  largestClosed!: string | null;

  @TextField({
    description: 'Smallest blade at which it is open; null where none.',
    nullable: true,
    ...shown,
    example: '0.08',
  })
  smallestOpen!: string | null;

  @EnumField({ ...unit })
  unit!: UnitCode;
}

export class YesNoResultDto {
  @KindField('yesNo')
  kind!: 'yesNo';

  @FlagField({ description: 'Answer to the question of the check.' })
  answer!: boolean;
}

export class GradeResultDto {
  @KindField('grade')
  kind!: 'grade';

  @TextField({ description: 'Grade by the list of the limit.', max: 64 })
  grade!: string;
}

export type ReadingResultDto = NumberResultDto | BladePairResultDto | YesNoResultDto | GradeResultDto;

export const readingResultTypes = () => [NumberResultDto, BladePairResultDto, YesNoResultDto, GradeResultDto];

/** What a person enters about one reading. */
export class ReadingContent {
  @TextField({
    description: 'Check of the sheet.',
    max: 128,
    pattern: textPatterns.catalogueId,
    example: 'shaft-radial-play-lower',
  })
  checkId!: string;

  @EnumField({
    description: 'As found: before anything was adjusted. As left: after.',
    values: readingPhases,
    enumName: 'ReadingPhase',
  })
  phase!: ReadingPhase;

  @TextField({
    description: 'Where on the vehicle; null where this kind of part has one place only.',
    nullable: true,
    max: 64,
    pattern: '^[A-Za-z][A-Za-z0-9-]*$',
  })
  position!: string | null;

  @TextField({
    description: 'One of several like places of one part, e.g. cylinder-1 or left; null where there is one.',
    nullable: true,
    max: 64,
    pattern: '^[A-Za-z][A-Za-z0-9-]*$',
  })
  place!: string | null;

  @UnionField({ description: 'The result, as the check asks for it.', types: readingResultTypes })
  result!: ReadingResultDto;

  @IdField({ description: 'Instrument; null: its doubt is unknown.', nullable: true })
  instrumentId!: string | null;

  @IdField({ description: 'Person who measured; the caller where absent.', optional: true })
  measuredBy?: string;

  @InstantField({ description: 'When it was taken.' })
  takenAt!: string;

  @TextMapField({
    description: 'Conditions as met, e.g. engineState: hotIdling, airConditioning: off.',
    maxEntries: 30,
    max: 120,
  })
  conditions!: Record<string, string>;

  @TextField({ description: 'Remark.', nullable: true, max: 500 })
  note!: string | null;
}

export class RecordReadingRequest extends ReadingContent {
  @IdField({
    description: 'Id chosen by the client, so that a telephone can send again safely.',
    optional: true,
  })
  id?: string;
}

export class RecordReadingSetRequest {
  @ListField({
    description: 'All are recorded or none.',
    min: 1,
    max: 1000,
    type: () => RecordReadingRequest,
  })
  readings!: RecordReadingRequest[];
}

export class CorrectReadingRequest extends ReadingContent {
  @FlagField({
    description: 'Somebody has looked again and stands by a value that looked unlikely.',
  })
  valueConfirmed!: boolean;

  @ReasonField()
  reason!: string;
}

/** Why a reading is taken back. */
export class WithdrawReadingRequest {
  @ReasonField()
  reason!: string;
}

/** What the readings of the check say so far. */
export class ReadingJudgementDto {
  @ListField({ description: 'Verdicts, one for each limit.', max: 200, type: () => VerdictResponse })
  verdicts!: VerdictResponse[];

  @IntegerField({ description: 'Readings that are advised for this check and not there yet.' })
  advisedReadingsLeft!: number;
}

export class ExpectedRangeDto {
  @QuantityField({ description: 'Lowest plausible value.', kind: 'any' })
  lowest!: QuantityDto;

  @QuantityField({ description: 'Highest plausible value.', kind: 'any' })
  highest!: QuantityDto;
}

export class ReadingResponse extends JoinTypes(RecordedResponse, ReadingContent) {
  @IdField({ description: 'The inspection.' })
  inspectionId!: string;

  @IdField({ description: 'Person who measured.' })
  override measuredBy!: string;

  @TextField({ description: 'What was measured.', nullable: true, max: 64 })
  characteristic!: string | null;

  @IdField({ description: 'The part it was taken on.', nullable: true })
  fittedPartId!: string | null;

  @NestedField({
    description: 'Value in the canonical unit.',
    nullable: true,
    type: () => ComputedQuantityDto,
  })
  canonical!: ComputedQuantityDto | null;

  @DecimalField({
    description: 'Distance of the vehicle by its last reliable odometer entry, in km.',
    nullable: true,
  })
  distanceKm!: string | null;

  @FlagField({
    description: 'False: it looked unlikely and waits to be confirmed; it counts for nothing yet.',
  })
  valueConfirmed!: boolean;

  @NestedField({
    description: 'What was expected; set while the value waits to be confirmed.',
    nullable: true,
    type: () => ExpectedRangeDto,
  })
  expectedRange!: ExpectedRangeDto | null;

  @FlagField({
    description:
      'Taken back, e.g. read on the wrong van or part: it stays in the history and counts for nothing; the revision says why.',
  })
  withdrawn!: boolean;

  @FlagField({
    description:
      'Belongs into the series of its part: as found, confirmed, of something that wears or drifts.',
  })
  trendWorthy!: boolean;

  @ListField({ description: 'Oddities; they refuse nothing.', max: 20, type: () => WarningResponse })
  warnings!: WarningResponse[];

  @NestedField({
    description: 'What the readings of this check say now. On answers to writes only.',
    optional: true,
    type: () => ReadingJudgementDto,
  })
  judgement?: ReadingJudgementDto;
}

export class ReadingSetResponse {
  @ListField({ description: 'The readings, in the order sent.', max: 1000, type: () => ReadingResponse })
  readings!: ReadingResponse[];

  @ListField({
    description: 'Verdicts of the checks they belong to.',
    max: 2000,
    type: () => VerdictResponse,
  })
  verdicts!: VerdictResponse[];
}

export class ReadingRevisions {
  @ListField({ description: 'Revisions, oldest first.', max: 1000, type: () => ReadingResponse })
  items!: ReadingResponse[];
}

export class ReadingPage extends pageOf(() => ReadingResponse) {}

export class ListReadingsQuery extends PageQuery {
  @IdField({ description: 'Readings of this inspection.', optional: true })
  inspectionId?: string;

  @IdField({ description: 'Readings taken on this part.', optional: true })
  fittedPartId?: string;

  @IdField({ description: 'Readings taken on this vehicle.', optional: true })
  vehicleId?: string;

  @TextField({
    description: 'Readings of this characteristic.',
    optional: true,
    max: 64,
    pattern: textPatterns.catalogueId,
  })
  characteristic?: string;

  @IdField({ description: 'Readings taken with this instrument.', optional: true })
  instrumentId?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class ReadingPath {
  @IdField({ description: 'Id of the reading.' })
  readingId!: string;
}

/** Verdicts of the check and phase a reading belongs to. */
export class ReadingVerdicts extends ReadingJudgementDto {}
