import {
  conditionKinds,
  partsCostClasses,
  proofPointKinds,
  refitOccasions,
  type ConditionKind,
  type PartsCostClass,
  type ProofPointKind,
  type RefitOccasion,
} from '@endfloat/catalogue';
import { quantityKinds, unitCodes, type QuantityKind, type UnitCode } from '@endfloat/metrology';
import { DecimalField, EnumField, FlagField, ListField, TextField } from '../fields/index.js';

export class SymptomDto {
  @TextField({ description: 'Id of the symptom.', max: 128 })
  id!: string;

  @TextField({ description: 'In words.', max: 500 })
  name!: string;

  @TextField({ description: 'Family of like symptoms.', max: 128 })
  familyId!: string;

  @ListField({ description: 'As a customer might say it.', max: 50, text: { max: 500 } })
  customerSays!: string[];

  @ListField({ description: 'What the desk asks.', max: 50, text: { max: 500 } })
  ask!: string[];
}

export class SymptomList {
  @ListField({ description: 'Symptoms.', max: 500, type: () => SymptomDto })
  items!: SymptomDto[];
}

export class CauseDto {
  @TextField({ description: 'Id of the cause.', max: 128 })
  id!: string;

  @TextField({ description: 'In words.', max: 500 })
  name!: string;

  @TextField({ description: 'For the customer.', max: 500 })
  forCustomer!: string;

  @EnumField({
    description: 'What a part for it costs, as a class.',
    values: partsCostClasses,
    enumName: 'PartsCostClass',
  })
  partsCostClass!: PartsCostClass;

  @FlagField({ description: 'Whatever the list does not name.' })
  openRemainder!: boolean;
}

export class CauseList {
  @ListField({ description: 'Causes.', max: 500, type: () => CauseDto })
  items!: CauseDto[];
}

export class ProofPointDefinitionDto {
  @TextField({ description: 'Id of the point.', max: 128 })
  id!: string;

  @EnumField({
    description: 'What it belongs to.',
    values: proofPointKinds,
    enumName: 'ProofPointKind',
    open: true,
  })
  kind!: ProofPointKind;

  @TextField({ description: 'In words.', max: 500 })
  title!: string;

  @TextField({ description: 'When it is passed.', max: 1000 })
  passWhen!: string;

  @EnumField({
    description: 'Due only after this work; null: always.',
    nullable: true,
    values: refitOccasions,
    enumName: 'RefitOccasion',
    open: true,
  })
  dueAfter!: RefitOccasion | null;
}

export class ProofPointDefinitionList {
  @ListField({ description: 'Points.', max: 500, type: () => ProofPointDefinitionDto })
  items!: ProofPointDefinitionDto[];
}

export class OperatingConditionDto {
  @TextField({ description: 'Id of the condition.', max: 128 })
  id!: string;

  @TextField({ description: 'In words.', max: 500 })
  label!: string;

  @EnumField({
    description: 'How it is recorded.',
    values: conditionKinds,
    enumName: 'ConditionKind',
    open: true,
  })
  kind!: ConditionKind;

  @ListField({ description: 'For a choice.', max: 50, text: { max: 128 } })
  choices!: string[];

  @EnumField({
    description: 'For a quantity.',
    nullable: true,
    values: quantityKinds,
    enumName: 'QuantityKind',
    open: true,
  })
  quantityKind!: QuantityKind | null;
}

export class OperatingConditionList {
  @ListField({ description: 'Conditions.', max: 500, type: () => OperatingConditionDto })
  items!: OperatingConditionDto[];
}

export class QuantityKindUnitsDto {
  @EnumField({ description: 'The kind.', values: quantityKinds, enumName: 'QuantityKind', open: true })
  kind!: QuantityKind;

  @EnumField({
    description: 'Unit in which values are compared.',
    values: unitCodes,
    enumName: 'UnitCode',
    open: true,
  })
  canonicalUnit!: UnitCode;

  @ListField({
    description: 'Units a value may be entered in; units of another kind are refused.',
    max: 80,
    choice: { values: unitCodes, enumName: 'UnitCode', open: true },
  })
  units!: UnitCode[];

  @DecimalField({
    description: 'Lowest value that can exist, in the canonical unit; null where there is none.',
    nullable: true,
    signed: true,
  })
  lowest!: string | null;
}

export class QuantityKindList {
  @ListField({
    description: 'Kinds of quantity with their units.',
    max: 200,
    type: () => QuantityKindUnitsDto,
  })
  items!: QuantityKindUnitsDto[];
}
