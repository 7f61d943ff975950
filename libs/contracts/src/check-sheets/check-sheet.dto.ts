import {
  adjustabilities,
  checkSections,
  hazards,
  instrumentKinds,
  requiredStates,
  resultKinds,
  type Adjustability,
  type CheckSection,
  type Hazard,
  type InstrumentKind,
  type RequiredState,
  type ResultKind,
} from '@endfloat/catalogue';
import { unitCodes, type UnitCode } from '@endfloat/metrology';
import { CharacteristicDto, EvidenceDto } from '../characteristics/index.js';
import {
  EnumField,
  FlagField,
  IdField,
  InstantField,
  IntegerField,
  JsonField,
  ListField,
  NestedField,
  NumberField,
  QuantityField,
  TextField,
  textPatterns,
  type QuantityDto,
} from '../fields/index.js';
import { LimitDto } from '../limits/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { RecordedResponse } from '../recording/index.js';

const ids = { max: 200, text: { max: 128, pattern: textPatterns.catalogueId } } as const;

/** A warning that travels with the step it belongs to. */
export class CautionDto {
  @TextField({ description: 'Id of the caution.', max: 128, pattern: textPatterns.catalogueId })
  id!: string;

  @EnumField({ description: 'What can hurt.', values: hazards, enumName: 'Hazard', open: true })
  hazard!: Hazard;

  @TextField({ description: 'The warning.', max: 2000 })
  text!: string;

  @NestedField({ description: 'What supports it.', type: () => EvidenceDto })
  source!: EvidenceDto;
}

export class FunctionalCriterionDto {
  @ListField({ description: 'Characteristics whose numbers it outranks.', ...ids })
  outranks!: string[];

  @TextField({ description: 'Check that decides whether the answer counts.', max: 128 })
  companionCheckId!: string;

  @QuantityField({
    description: 'A positive answer counts from this value of the companion on.',
    kind: 'any',
  })
  conclusiveFrom!: QuantityDto;

  @FlagField({ description: 'A negative answer is repeated once the companion is right.' })
  negativeRepeatedAfterCompanion!: boolean;
}

/** One thing to observe or measure. */
export class CheckDto {
  @TextField({ description: 'Id, unique in the sheet.', max: 128, pattern: textPatterns.catalogueId })
  id!: string;

  @TextField({ description: 'In words.', max: 2000 })
  title!: string;

  @EnumField({ description: 'Part of the job.', values: checkSections, enumName: 'CheckSection', open: true })
  section!: CheckSection;

  @ListField({ description: 'What to do, in short steps.', max: 100, text: { max: 2000 } })
  steps!: string[];

  @TextField({ description: 'The question a yes/no check answers.', nullable: true, max: 2000 })
  question!: string | null;

  @TextField({ description: 'Kind of part.', max: 64 })
  componentTypeId!: string;

  @TextField({ description: 'What is measured.', max: 64 })
  characteristicId!: string;

  @NestedField({
    description: 'The characteristic in full. On whole sheets only.',
    optional: true,
    type: () => CharacteristicDto,
  })
  characteristic?: CharacteristicDto;

  @EnumField({ description: 'Shape of a result.', values: resultKinds, enumName: 'ResultKind' })
  resultKind!: ResultKind;

  @ListField({
    description: 'Units a number may be entered in; empty where there is no number.',
    max: 80,
    choice: { values: unitCodes, enumName: 'UnitCode', open: true },
  })
  units!: UnitCode[];

  @TextField({ description: 'Row of the diagnosis tables it feeds.', nullable: true, max: 128 })
  diagnosticCheckId!: string | null;

  @FlagField({ description: 'Safe, cheap and done anyway, before any ranking.' })
  openingMove!: boolean;

  @ListField({ description: 'Not judged before these are passed.', ...ids })
  prerequisites!: string[];

  @ListField({ description: 'Better done after these.', ...ids })
  advisedAfter!: string[];

  @ListField({ description: 'To be read again after this item was adjusted.', ...ids })
  alsoRemeasure!: string[];

  @ListField({
    description: 'State the vehicle must be in.',
    max: 30,
    choice: { values: requiredStates, enumName: 'RequiredState', open: true },
  })
  requiredStates!: RequiredState[];

  @EnumField({
    description: 'Instrument it takes.',
    values: instrumentKinds,
    enumName: 'InstrumentKind',
    open: true,
  })
  instrumentKind!: InstrumentKind;

  @NumberField({ description: 'Minutes it takes.', min: 0 })
  minutes!: number;

  @ListField({ description: 'Warnings for this step.', max: 50, type: () => CautionDto })
  cautions!: CautionDto[];

  @ListField({
    description: 'Limits of the sheet, with origin, citation and comparator.',
    max: 200,
    type: () => LimitDto,
  })
  limits!: LimitDto[];

  @EnumField({
    description: 'Whether the item may be adjusted; a protected one needs a reason.',
    values: adjustabilities,
    enumName: 'Adjustability',
  })
  adjustable!: Adjustability;

  @TextField({ description: 'What a result outside means.', max: 2000 })
  outsideMeans!: string;

  @TextField({ description: 'What to do then.', max: 2000 })
  whatToDo!: string;

  @ListField({ description: 'Causes it looks for.', ...ids })
  targetCauses!: string[];

  @NestedField({
    description: 'Set where the answer decides without a number.',
    nullable: true,
    type: () => FunctionalCriterionDto,
  })
  functional!: FunctionalCriterionDto | null;

  @FlagField({ description: 'Left out where the vehicle has no such item.' })
  whereFitted!: boolean;
}

export class RecordCheckSheetRequest {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @JsonField({
    description:
      'The sheet: id, title, componentTypeIds and checks, optionally proofPointIds and precedence. Its edition is given by the server: the same id again makes the next version. Checked as a whole; findings point into it.',
    maxMembers: 20,
  })
  checkSheet!: Record<string, unknown>;
}

export class CheckSheetSummary extends RecordedResponse {
  @TextField({ description: 'Id of the sheet, the same in all versions.', max: 128 })
  code!: string;

  @IntegerField({ description: 'Version of the sheet; never changed once recorded.', min: 1 })
  sheetVersion!: number;

  @TextField({ description: 'In words.', max: 2000 })
  title!: string;

  @ListField({ description: 'Kinds of part it looks at.', ...ids })
  componentTypeIds!: string[];

  @IntegerField({ description: 'Number of checks.' })
  checkCount!: number;

  @NumberField({ description: 'Minutes of all checks together.', min: 0 })
  minutes!: number;
}

export class CheckSheetResponse extends CheckSheetSummary {
  @ListField({ description: 'Checks in their order.', max: 500, type: () => CheckDto })
  checks!: CheckDto[];

  @ListField({ description: 'Points that prove a job done by this sheet.', ...ids })
  proofPointIds!: string[];

  @TextField({ description: 'What comes before the sheet.', max: 2000 })
  precedence!: string;
}

export class CheckSheetPage extends pageOf(() => CheckSheetSummary) {}

export class ListCheckSheetsQuery extends PageQuery {
  @TextField({
    description: 'Versions of this sheet, newest first.',
    optional: true,
    max: 128,
    pattern: textPatterns.catalogueId,
  })
  code?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class CheckSheetPath {
  @IdField({ description: 'Id of a version of a check sheet.' })
  checkSheetId!: string;
}
