import { ValidateNested } from 'class-validator';
import { field, type FieldOptions } from './field.js';
import { casesOf, caseRule, caseInstances, unionSchema, type UnionChoice } from './union.js';

/** One of several classes, told apart by one member. */
export const UnionField = (options: FieldOptions & UnionChoice): PropertyDecorator => {
  const { property = 'kind' } = options;
  const cases = casesOf(options);
  return field(options, {
    schema: (names) => unionSchema(cases, property, names),
    rules: [caseRule(cases, property)],
    shape: { kind: 'union', property, types: cases },
    also: [ValidateNested(), caseInstances(cases, property)],
  });
};
