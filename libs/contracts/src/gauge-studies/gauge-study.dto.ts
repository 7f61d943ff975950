import { instrumentKinds, type InstrumentKind } from '@endfloat/catalogue';
import { unitCodes, type UnitCode } from '@endfloat/metrology';
import { gaugeStudyLayouts, type GaugeStudyLayout } from '@endfloat/workshop/ports';
import {
  AverageAndRangeStudyDto,
  CalculationMethodDto,
  CrossedGaugeStudyDto,
  GaugeMeasurementDto,
  GaugeStudyNeedsMoreDto,
  GaugeStudyNotBalancedDto,
  NestedGaugeStudyDto,
} from '../calculations/index.js';
import {
  EnumField,
  FlagField,
  IdField,
  InstantField,
  JoinTypes,
  ListField,
  LocalDateField,
  NestedField,
  NumberField,
  TextField,
  textPatterns,
  UnionField,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { ReasonField, RecordedResponse } from '../recording/index.js';

const characteristic = { max: 120, pattern: textPatterns.catalogueId, example: 'shaft-radial-play-lower' };

/** A gauge study as people of the shop did it. */
export class GaugeStudyContent {
  @TextField({ description: 'What was measured.', ...characteristic })
  characteristic!: string;

  @EnumField({
    description: 'Kind of instrument it was measured with.',
    values: instrumentKinds,
    enumName: 'InstrumentKind',
    open: true,
  })
  instrumentKind!: InstrumentKind;

  @LocalDateField({ description: 'Day of the study.' })
  studiedOn!: string;

  @EnumField({
    description: 'How it is laid out and worked.',
    values: gaugeStudyLayouts,
    enumName: 'GaugeDesign',
  })
  design!: GaugeStudyLayout;

  @NumberField({
    description:
      'p-value above which the interaction of a crossed study is pooled; null: 0.25, or no crossed study.',
    nullable: true,
    min: 0,
    max: 1,
  })
  poolingLevel!: number | null;

  @EnumField({ description: 'Unit of the readings.', values: unitCodes, enumName: 'AnyUnit' })
  unit!: UnitCode;

  @ListField({ description: 'Every reading, any order.', min: 1, max: 2000, type: () => GaugeMeasurementDto })
  measurements!: GaugeMeasurementDto[];

  @FlagField({ description: 'False: it is kept and no longer used for the doubt about readings.' })
  inUse!: boolean;

  @TextField({ description: 'Remark.', nullable: true, max: 500 })
  note!: string | null;
}

export class RecordGaugeStudyRequest extends GaugeStudyContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;
}

export class CorrectGaugeStudyRequest extends GaugeStudyContent {
  @ReasonField()
  reason!: string;
}

/** What an uncertainty budget takes over from a study. */
export class StudiedRepeatabilityDto {
  @NumberField({ description: 'Standard deviation of single readings, in the unit of the study.', min: 0 })
  standardDeviation!: number;

  @NumberField({ description: 'Its degrees of freedom; null: as good as known.', nullable: true })
  degreesOfFreedom!: number | null;
}

const results = () => [
  CrossedGaugeStudyDto,
  AverageAndRangeStudyDto,
  NestedGaugeStudyDto,
  GaugeStudyNeedsMoreDto,
  GaugeStudyNotBalancedDto,
];

class StudiedDto {
  @UnionField({ description: 'What the study says, or why it says nothing.', types: results })
  result!: InstanceType<ReturnType<typeof results>[number]>;

  @NestedField({
    description: 'Repeatability that budgets take over; null where the study says nothing.',
    nullable: true,
    type: () => StudiedRepeatabilityDto,
  })
  repeatability!: StudiedRepeatabilityDto | null;

  @NestedField({ description: 'How it is worked.', type: () => CalculationMethodDto })
  method!: CalculationMethodDto;
}

class RecordedStudy extends JoinTypes(RecordedResponse, GaugeStudyContent) {}

/** One revision of a study. */
export class GaugeStudyRevision extends JoinTypes(RecordedStudy, StudiedDto) {}

export class StoredGaugeStudyResponse extends GaugeStudyRevision {
  @FlagField({
    description:
      'The doubt about new readings of this characteristic with this kind of instrument is taken from it: the latest study in use that says anything.',
  })
  feedsBudgets!: boolean;
}

export class GaugeStudyRevisions {
  @ListField({ description: 'Revisions, oldest first.', max: 1000, type: () => GaugeStudyRevision })
  items!: GaugeStudyRevision[];
}

export class GaugeStudyPage extends pageOf(() => StoredGaugeStudyResponse) {}

export class ListGaugeStudiesQuery extends PageQuery {
  @TextField({ description: 'Studies of this characteristic.', optional: true, ...characteristic })
  characteristic?: string;

  @EnumField({
    description: 'Studies with this kind of instrument.',
    optional: true,
    values: instrumentKinds,
    enumName: 'InstrumentKind',
    open: true,
  })
  instrumentKind?: InstrumentKind;

  @InstantField({ description: 'As it was known at this moment.', optional: true })
  asOf?: string;
}

export class GaugeStudyPath {
  @IdField({ description: 'Id of the study.' })
  gaugeStudyId!: string;
}
