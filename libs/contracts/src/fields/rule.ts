import { ValidateBy, type ValidationArguments } from 'class-validator';

/** One named reason to refuse a value. The name is part of the contract, the detail is not. */
export interface Rule {
  readonly name: string;
  readonly detail: string | ((value: unknown) => string);
  readonly test: (value: unknown) => boolean;
}

/** The rule as a class-validator decorator. */
export function decoratorOf(rule: Rule): PropertyDecorator {
  const { name, detail, test } = rule;
  return ValidateBy({
    name,
    validator: {
      validate: test,
      defaultMessage: (args?: ValidationArguments) =>
        typeof detail === 'string' ? detail : detail(args?.value),
    },
  });
}

/** Whether the value is an object with members: neither null nor an array. */
export function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
