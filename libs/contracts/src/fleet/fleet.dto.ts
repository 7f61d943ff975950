import { fittedConditions, type FittedCondition } from '@endfloat/workshop/ports';
import {
  EnumField,
  IdField,
  InstantField,
  IntegerField,
  KindField,
  ListField,
  LocalDateField,
  NestedField,
  NumberField,
  TextField,
  textPatterns,
} from '../fields/index.js';

export class ReplacementEntry {
  @InstantField({ description: 'When the part before was removed and this one fitted.' })
  at!: string;

  @EnumField({
    description: 'Condition of the part that went in.',
    values: fittedConditions,
    enumName: 'FittedCondition',
  })
  condition!: FittedCondition;

  @TextField({ description: 'Supplier.', nullable: true, max: 120 })
  supplier!: string | null;
}

export class VehicleHistoryEntry {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @TextField({ description: 'What the fleet calls the vehicle.', max: 60 })
  label!: string;

  @TextField({
    description: 'Chassis number as read.',
    nullable: true,
    max: 40,
    pattern: textPatterns.chassisNumber,
  })
  chassisNumber!: string | null;

  @TextField({ description: 'Plate.', nullable: true, max: 20 })
  plate!: string | null;

  @LocalDateField({ description: 'Day of first use; ages are counted from its midnight (UTC).' })
  firstUsedOn!: string;

  @InstantField({ description: 'From when on a replacement would have been seen.' })
  observedFrom!: string;

  @InstantField({ description: 'Until when.' })
  observedUntil!: string;

  @ListField({
    description: 'Replacements, any order; two on one day are two.',
    max: 1000,
    type: () => ReplacementEntry,
  })
  replacements!: ReplacementEntry[];
}

export class ImportFleetHistoryRequest {
  @IdField({ description: 'Customer who owns the vehicles.' })
  customerId!: string;

  @TextField({
    description: 'Kind of part.',
    max: 64,
    pattern: textPatterns.catalogueId,
    example: 'throttle-housing',
  })
  componentType!: string;

  @TextField({ description: 'Where on the vehicle.', max: 64, pattern: '^[A-Za-z][A-Za-z0-9-]*$' })
  position!: string;

  @ListField({
    description: 'Vehicles with their histories: all are recorded, or none.',
    min: 1,
    max: 1000,
    type: () => VehicleHistoryEntry,
  })
  vehicles!: VehicleHistoryEntry[];
}

export class ImportedFleetHistoryResponse {
  @ListField({ description: 'Ids of the vehicles, in the order of the request.', max: 1000, ids: true })
  vehicleIds!: string[];

  @IntegerField({ description: 'How many fitted parts were recorded, first ones included.' })
  fittedParts!: number;
}

export class RecurrenceLimitsDto {
  @NumberField({ description: 'Lower limit.' })
  lower!: number;

  @NumberField({ description: 'Upper limit.' })
  upper!: number;
}

export class RecurrencePointDto {
  @NumberField({ description: 'Age in days since first use.', min: 0 })
  ageDays!: number;

  @IntegerField({ description: 'Vehicles observed at that age; one that ends exactly then still counts.' })
  atRisk!: number;

  @IntegerField({ description: 'Replacements at that age.' })
  events!: number;

  @NumberField({ description: 'Mean number of replacements per vehicle up to that age.', min: 0 })
  mean!: number;

  @NumberField({
    description: 'Robust standard error of the mean; null for a single vehicle.',
    nullable: true,
    min: 0,
  })
  standardError!: number | null;

  @NestedField({
    description: 'Mean -/+ z standard errors; can reach below zero.',
    nullable: true,
    type: () => RecurrenceLimitsDto,
  })
  plainLimits!: RecurrenceLimitsDto | null;

  @NestedField({ description: 'Limits on the log scale.', nullable: true, type: () => RecurrenceLimitsDto })
  logLimits!: RecurrenceLimitsDto | null;
}

class RecurrenceBasis {
  @IntegerField({ description: 'Vehicles observed.' })
  vehicles!: number;

  @NumberField({ description: 'Days observed, all vehicles together.', min: 0 })
  observedDays!: number;

  @IntegerField({
    description:
      'Replacements outside the observation of their vehicle: left out, since others like them went unseen.',
  })
  unobservedEvents!: number;
}

export class EstimatedRecurrenceDto extends RecurrenceBasis {
  @KindField('estimated')
  kind!: 'estimated';

  @TextField({ description: 'Method.', max: 60, example: 'meanCumulativeFunction' })
  method!: string;

  @TextField({ description: 'Source of the method.', max: 200 })
  source!: string;

  @NumberField({ description: 'Two-sided, pointwise level of the limits.', min: 0, max: 1 })
  level!: number;

  @IntegerField({ description: 'Replacements counted.' })
  events!: number;

  @ListField({
    description: 'Points at the ages of replacements.',
    max: 100000,
    type: () => RecurrencePointDto,
  })
  points!: RecurrencePointDto[];
}

export class NoRecurrenceDto extends RecurrenceBasis {
  @KindField('noEvents')
  kind!: 'noEvents';
}

export class RecurrenceNeedsMoreDto {
  @KindField('insufficientData')
  kind!: 'insufficientData';

  @IntegerField({ description: 'Observed vehicles needed.' })
  needed!: number;

  @IntegerField({ description: 'Observed vehicles there are.' })
  got!: number;
}
