import {
  assessmentOccasions,
  optionActions,
  type AssessmentOccasion,
  type OptionAction,
} from '@endfloat/decision';
import {
  DecimalField,
  EnumField,
  FlagField,
  IdField,
  InstantField,
  ListField,
  MoneyField,
  TextField,
  textPatterns,
} from '../fields/index.js';
import { PageQuery } from '../paging/index.js';
import { MoneyDto } from '../quantity/index.js';

export class OptionWishDto {
  @EnumField({ description: 'What is to be considered.', values: optionActions, enumName: 'OptionAction' })
  action!: OptionAction;

  @DecimalField({
    description: 'Hours of work; absent: the usual ones of this kind of part.',
    optional: true,
    integerDigits: 3,
    scale: 2,
    example: '1.8',
  })
  labourHours?: string;

  @DecimalField({
    description: 'Days in the workshop, waiting for the part not counted; absent: the usual ones.',
    optional: true,
    integerDigits: 3,
    scale: 2,
  })
  workshopDays?: string;
}

/** A question about a component of a vehicle. Everything absent is taken from the shop, the customer and the records. */
export class AssessRequest {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @IdField({ description: 'The job it is asked for; null: none.', nullable: true })
  jobId!: string | null;

  @TextField({
    description: 'Kind of part.',
    max: 64,
    pattern: textPatterns.catalogueId,
    example: 'throttle-housing',
  })
  componentType!: string;

  @TextField({
    description: 'Where on the vehicle, as the kind of part names its places.',
    max: 64,
    pattern: '^[A-Za-z][A-Za-z0-9-]*$',
    example: 'intake',
  })
  position!: string;

  @EnumField({
    description: 'Why it is asked; absent: a complaint where the job has one, else a service visit.',
    values: assessmentOccasions,
    enumName: 'AssessmentOccasion',
    optional: true,
  })
  occasion?: AssessmentOccasion;

  @TextField({
    description: 'Which wearing characteristic; absent: the one that has worn most.',
    optional: true,
    max: 64,
    pattern: textPatterns.catalogueId,
  })
  characteristicId?: string;

  @DecimalField({
    description: 'Size without wear, in the canonical unit; absent: zero where it is a clearance.',
    optional: true,
  })
  unwornSize?: string;

  @DecimalField({
    description:
      'Size at which the part no longer does its work, in the canonical unit; absent: its wear limit.',
    optional: true,
  })
  criterionSize?: string;

  @ListField({
    description: 'Options to consider with their tariffs; absent: all of them.',
    optional: true,
    min: 1,
    max: 6,
    type: () => OptionWishDto,
  })
  options?: OptionWishDto[];

  @ListField({
    description: 'What the customer has said no to.',
    optional: true,
    max: 6,
    unique: true,
    choice: { values: optionActions, enumName: 'OptionAction' },
  })
  declinedActions?: OptionAction[];

  @FlagField({
    description: 'Further readings were offered and nobody wanted them.',
    optional: true,
    default: false,
  })
  furtherReadingsDeclined?: boolean;

  @MoneyField({
    description: "Price of an hour of labour, in the shop's currency; absent: its setting.",
    optional: true,
  })
  labourPerHour?: MoneyDto;

  @MoneyField({
    description: "Cost of a day off the road; absent: the customer's, else the shop's.",
    optional: true,
  })
  downtimePerDay?: MoneyDto;

  @MoneyField({
    description: "What any comeback costs to handle; absent: the shop's setting.",
    optional: true,
  })
  comebackHandling?: MoneyDto;

  @DecimalField({
    description: "Distance the owner still wants, in km; absent: the customer's, else the shop's.",
    optional: true,
    integerDigits: 7,
    scale: 0,
  })
  planningDistanceKm?: string;

  @DecimalField({
    description: 'Distance between planned visits, in km; absent: there are none.',
    optional: true,
    integerDigits: 6,
    scale: 0,
  })
  serviceIntervalKm?: string;

  @FlagField({
    description: 'Whether the vehicle can be used until the part has come; absent: it stands still.',
    optional: true,
    default: false,
  })
  isUsableWhileWaiting?: boolean;

  @DecimalField({
    description: 'Chance that the supplier refuses the old part and keeps the deposit, 0 to 1; absent: 0.1.',
    optional: true,
    integerDigits: 1,
    scale: 4,
  })
  coreLossChance?: string;
}

export class ListAssessmentsQuery extends PageQuery {
  @IdField({ description: 'Assessments of this vehicle.', optional: true })
  vehicleId?: string;

  @IdField({ description: 'Assessments for this job.', optional: true })
  jobId?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class AssessmentPath {
  @IdField({ description: 'Id of the assessment.' })
  assessmentId!: string;
}
