import { partConditions, type PartCondition } from '@endfloat/catalogue';
import { CheckDto } from '../check-sheets/index.js';
import {
  EnumField,
  FlagField,
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  ListField,
  OmitType,
  TextField,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { JudgementDto } from '../readings/verdict.dto.js';
import { ReadingContent } from '../readings/reading.dto.js';
import { ReasonField, RecordedResponse, WarningResponse } from '../recording/index.js';

/** What was read on a part that is on no vehicle: always as found. */
export class ArrivalReadingEntry extends OmitType(ReadingContent, ['phase', 'position']) {}

class ArrivalFacts {
  @InstantField({ description: 'When it was looked at.' })
  inspectedAt!: string;

  @EnumField({ description: 'As what it was bought.', values: partConditions, enumName: 'PartCondition' })
  condition!: PartCondition;

  @TextField({ description: 'Serial of the piece.', nullable: true, max: 80 })
  serial!: string | null;

  @TextField({ description: 'Anything else worth knowing.', nullable: true, max: 1000 })
  note!: string | null;
}

export class ArrivalInspectionContent extends ArrivalFacts {
  @ListField({ description: 'What was read.', min: 1, max: 200, type: () => ArrivalReadingEntry })
  readings!: ArrivalReadingEntry[];
}

export class RecordArrivalInspectionRequest extends ArrivalInspectionContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @IdField({ description: 'The part.' })
  partId!: string;

  @IdField({
    description: 'The version of the check sheet it follows: the one it is checked by on a vehicle.',
  })
  checkSheetId!: string;

  @IdField({ description: 'The receipt it came in by.', nullable: true })
  stockMoveId!: string | null;
}

export class CorrectArrivalInspectionRequest extends ArrivalInspectionContent {
  @ReasonField()
  reason!: string;
}

export class ArrivalReadingResponse extends ArrivalReadingEntry {
  @FlagField({ description: 'False: the value is unlikely and was not confirmed.' })
  valueConfirmed!: boolean;

  @ListField({ description: 'What looked odd.', max: 20, type: () => WarningResponse })
  warnings!: WarningResponse[];
}

export class ArrivalVerdictResponse extends JudgementDto {
  @TextField({ description: 'The check.', max: 120 })
  checkId!: string;

  @FlagField({ description: 'Judged before what it waits for was passed: it is repeated later.' })
  provisional!: boolean;

  @TextField({ description: 'Check whose functional answer outranks this number.', nullable: true, max: 120 })
  outrankedBy!: string | null;
}

export class ArrivalInspectionResponse extends JoinTypes(RecordedResponse, ArrivalFacts) {
  @IdField({ description: 'The part.' })
  partId!: string;

  @IdField({ description: 'The version of the check sheet it follows.' })
  checkSheetId!: string;

  @IdField({ description: 'The receipt it came in by.', nullable: true })
  stockMoveId!: string | null;

  @ListField({
    description: 'What was read, in the order given.',
    max: 200,
    type: () => ArrivalReadingResponse,
  })
  readings!: ArrivalReadingResponse[];

  @ListField({
    description: 'Verdicts by the rules and limits of the sheet.',
    max: 500,
    type: () => ArrivalVerdictResponse,
  })
  verdicts!: ArrivalVerdictResponse[];

  @ListField({
    description: 'Checks of the sheet that can be done on the part alone and were not.',
    max: 200,
    text: { max: 120, pattern: '^.*$' },
  })
  checksOpen!: string[];
}

export class ArrivalInspectionPage extends pageOf(() => ArrivalInspectionResponse) {}

export class ArrivalInspectionRevisions {
  @ListField({
    description: 'Every revision, oldest first.',
    max: 1000,
    type: () => ArrivalInspectionResponse,
  })
  items!: ArrivalInspectionResponse[];
}

export class ListArrivalInspectionsQuery extends PageQuery {
  @IdField({ description: 'Of this part.', optional: true })
  partId?: string;

  @TextField({ description: 'Of the piece with this serial.', optional: true, max: 80 })
  serial?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class ArrivalInspectionPath {
  @IdField({ description: 'Id of the inspection on arrival.' })
  arrivalInspectionId!: string;
}

export class ArrivalSheetDto {
  @IdField({ description: 'The version of the check sheet.' })
  checkSheetId!: string;

  @TextField({ description: 'Code of the sheet.', max: 64 })
  code!: string;

  @IntegerField({ description: 'Its version.', min: 1 })
  sheetVersion!: number;

  @TextField({ description: 'Title.', max: 200 })
  title!: string;

  @TextField({ description: 'What comes before this sheet.', max: 2000, min: 0 })
  precedence!: string;

  @ListField({
    description:
      'The checks that look at the part itself, in order, with instrument and cautions; what needs a vehicle is left out.',
    max: 200,
    type: () => CheckDto,
  })
  checks!: CheckDto[];
}

export class ArrivalSheetList {
  @ListField({ description: 'The latest version of each sheet.', max: 200, type: () => ArrivalSheetDto })
  items!: ArrivalSheetDto[];
}
