import { symptomAnswers, type SymptomAnswer } from '@endfloat/workshop/ports';
import {
  FlagField,
  IdField,
  InstantField,
  JoinTypes,
  ListField,
  MapField,
  TextField,
  TextMapField,
  DecimalField,
  textPatterns,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { ReasonField, RecordedResponse } from '../recording/index.js';
import { ComebackResponse } from '../comebacks/index.js';

export class TroubleCodeDto {
  @TextField({
    description: 'Whose list the code is from: generic, or the name the shop uses for another scheme.',
    max: 40,
    example: 'generic',
  })
  scheme!: string;

  @TextField({ description: 'The code as read.', max: 40, example: 'P0507' })
  code!: string;
}

export class ComplaintContent {
  @IdField({ description: 'The job it is dealt with in; null until it is.', nullable: true })
  jobId!: string | null;

  @InstantField({ description: 'When the customer said it.' })
  receivedAt!: string;

  @TextField({
    description: "The customer's own words, unedited. Personal data.",
    nullable: true,
    max: 4000,
    example: 'the revs go up when I put the air on',
  })
  words!: string | null;

  @MapField({
    description:
      'Symptoms by id: present or absent. One that is not in here was not asked; a cause is never coded here.',
    max: 40,
    choice: { values: symptomAnswers, enumName: 'SymptomAnswer' },
    example: { 'idle-rises-with-ac': 'present', 'stalls-cold': 'absent' },
  })
  symptoms!: Record<string, SymptomAnswer>;

  @TextMapField({
    description: 'Circumstances by field of GET /v1/operating-conditions.',
    maxEntries: 40,
    max: 200,
    example: { engineState: 'hot' },
  })
  conditions!: Record<string, string>;

  @ListField({ description: 'Stored trouble codes.', max: 40, type: () => TroubleCodeDto })
  troubleCodes!: TroubleCodeDto[];

  @FlagField({ description: 'Whether the fault was reproduced; null: not tried yet.', nullable: true })
  reproduced!: boolean | null;

  @FlagField({
    description: 'Whether somebody has moved the stop screw before; null: not known.',
    nullable: true,
  })
  stopScrewMovedByOthers!: boolean | null;

  @FlagField({ description: "Whether it is a driver's defect report." })
  reportedByDriver!: boolean;

  @ListField({
    description: 'Kinds of part it points to, as the desk was told.',
    max: 20,
    text: { max: 64, pattern: textPatterns.catalogueId },
  })
  components!: string[];

  @FlagField({ description: 'Whether the customer says that it began after a repair.' })
  beganAfterRepair!: boolean;

  @DecimalField({
    description: 'Distance of the vehicle then, in km, where it can be relied on.',
    nullable: true,
  })
  distanceKm!: string | null;
}

export class TakeComplaintRequest extends ComplaintContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;
}

export class CorrectComplaintRequest extends ComplaintContent {
  @ReasonField()
  reason!: string;
}

export class ComplaintSummary extends JoinTypes(RecordedResponse, ComplaintContent) {
  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;
}

export class ComplaintResponse extends ComplaintSummary {
  @ListField({
    description: 'Earlier jobs it may be a comeback of: proposed by rule, confirmed or refused by a person.',
    max: 100,
    type: () => ComebackResponse,
  })
  comebacks!: ComebackResponse[];
}

export class ComplaintPage extends pageOf(() => ComplaintSummary) {}

export class ListComplaintsQuery extends PageQuery {
  @IdField({ description: 'Complaints about this vehicle.', optional: true })
  vehicleId?: string;

  @IdField({ description: 'Complaints dealt with in this job.', optional: true })
  jobId?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class ComplaintPath {
  @IdField({ description: 'Id of the complaint.' })
  complaintId!: string;
}
