import {
  evidenceTags,
  resultKinds,
  trendKinds,
  wearDirections,
  type EvidenceTag,
  type ResultKind,
  type TrendKind,
  type WearDirection,
} from '@endfloat/catalogue';
import { quantityKinds, unitCodes, type QuantityKind, type UnitCode } from '@endfloat/metrology';
import {
  EnumField,
  IntegerField,
  NestedField,
  QuantityField,
  TextField,
  textPatterns,
  type QuantityDto,
} from '../fields/index.js';

/** How well a statement is supported. */
export class EvidenceDto {
  @EnumField({ description: 'What supports it.', values: evidenceTags, enumName: 'EvidenceTag', open: true })
  tag!: EvidenceTag;

  @TextField({
    description: 'Source of a published or remembered statement; null for the others.',
    nullable: true,
    max: 2000,
  })
  citation!: string | null;
}

export class DefaultDoubtDto {
  @QuantityField({
    description: 'Standard deviation of one reading; averages out with repeats.',
    kind: 'any',
    nullable: true,
  })
  repeatability!: QuantityDto | null;

  @IntegerField({ description: 'Degrees of freedom behind it.', nullable: true, min: 1 })
  repeatabilityDegreesOfFreedom!: number | null;

  @QuantityField({
    description: 'Standard uncertainty of mounting and angle; does not average out. Null: not known.',
    kind: 'any',
    nullable: true,
  })
  setUp!: QuantityDto | null;

  @NestedField({ description: 'What supports these figures.', type: () => EvidenceDto })
  evidence!: EvidenceDto;
}

export class PlausibleRangeDto {
  @QuantityField({ description: 'Lowest plausible value.', kind: 'any' })
  lowest!: QuantityDto;

  @QuantityField({ description: 'Highest plausible value.', kind: 'any' })
  highest!: QuantityDto;
}

/** What is measured on a kind of part. */
export class CharacteristicDto {
  @TextField({ description: 'Id of the characteristic.', max: 64, pattern: textPatterns.catalogueId })
  id!: string;

  @TextField({ description: 'In words.', max: 2000 })
  name!: string;

  @EnumField({ description: 'Shape of a result.', values: resultKinds, enumName: 'ResultKind' })
  resultKind!: ResultKind;

  @EnumField({
    description: 'What the number is a value of; null where the result is no number.',
    nullable: true,
    values: quantityKinds,
    enumName: 'QuantityKind',
    open: true,
  })
  quantityKind!: QuantityKind | null;

  @EnumField({
    description: 'Unit in which values are compared.',
    nullable: true,
    values: unitCodes,
    enumName: 'UnitCode',
    open: true,
  })
  canonicalUnit!: UnitCode | null;

  @EnumField({
    description: 'Which way it moves with wear.',
    values: wearDirections,
    enumName: 'WearDirection',
  })
  wearDirection!: WearDirection;

  @EnumField({ description: 'What a series of readings shows.', values: trendKinds, enumName: 'TrendKind' })
  trend!: TrendKind;

  @NestedField({
    description: 'A reading outside is stored and stays unjudged until somebody confirms it.',
    nullable: true,
    type: () => PlausibleRangeDto,
  })
  plausible!: PlausibleRangeDto | null;

  @QuantityField({ description: 'What it cannot fall below.', kind: 'any', nullable: true })
  lowestPossible!: QuantityDto | null;

  @NestedField({
    description: 'Doubt to assume for one reading until the shop has measured its own.',
    nullable: true,
    type: () => DefaultDoubtDto,
  })
  doubt!: DefaultDoubtDto | null;

  @IntegerField({ description: 'Readings of one inspection that are averaged.', min: 1, max: 50 })
  readingsAdvised!: number;
}
