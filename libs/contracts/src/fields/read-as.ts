import { plainToInstance } from 'class-transformer';
import { validateSync, type ValidationError } from 'class-validator';
import type { FieldClass } from './json-schema.js';
import { isEmptyOnPurpose } from './no-members.js';
import { rememberRules } from './remembered-rules.js';

rememberRules();

/** One thing that is wrong, at its JSON Pointer. The refused value is never repeated. */
export interface FieldFault {
  readonly pointer: string;
  readonly rule: string;
  readonly detail: string;
}

/** Input read as a class, or everything that keeps it from being one. */
export type ReadResult<T> =
  | { readonly kind: 'valid'; readonly value: T }
  | { readonly kind: 'invalid'; readonly faults: readonly FieldFault[] };

/** Most faults that are told at once. */
export const mostFaults = 100;

const ruleNames: Readonly<Record<string, string>> = {
  whitelistValidation: 'unknownMember',
  unknownValue: 'object',
};
const details: Readonly<Record<string, string>> = { unknownMember: 'is not a member of this object' };

/**
 * Reads an object as a class declared with fields: unknown members are refused, nothing is coerced, the first broken
 * rule of each member is told.
 *
 * @param type  class declared with fields
 * @param input  parsed JSON object, or the parameters of a path or query
 * @returns an instance of the class, or at most `mostFaults` faults
 */
export function readAs<T extends object>(type: FieldClass<T>, input: object): ReadResult<T> {
  if (isEmptyOnPurpose(type)) return readEmpty(type, input);
  const value = plainToInstance(type, input);
  const errors = validateSync(value, {
    whitelist: true,
    forbidNonWhitelisted: true,
    forbidUnknownValues: true,
    stopAtFirstError: true,
    validationError: { target: false, value: false },
  });
  if (errors.length === 0) return { kind: 'valid', value };
  return { kind: 'invalid', faults: faultsOf(errors, '').slice(0, mostFaults) };
}

/** The validator knows no class without rules, so one that has none on purpose is read here. */
function readEmpty<T extends object>(type: FieldClass<T>, input: object): ReadResult<T> {
  const names = Object.keys(input).slice(0, mostFaults);
  if (names.length === 0) return { kind: 'valid', value: new type() };
  const faults = names.map((name) => ({
    pointer: `/${escaped(name)}`,
    rule: 'unknownMember',
    detail: details['unknownMember']!,
  }));
  return { kind: 'invalid', faults };
}

function faultsOf(errors: readonly ValidationError[], at: string): FieldFault[] {
  return errors.flatMap(({ property, constraints = {}, children = [] }) => {
    const pointer = property === undefined ? at : `${at}/${escaped(property)}`;
    const own = Object.entries(constraints).map(([name, text]) => {
      const rule = ruleNames[name] ?? name;
      return { pointer, rule, detail: details[rule] ?? text };
    });
    return own.length > 0 ? own : faultsOf(children, pointer);
  });
}

/** A member's name as a token of a JSON Pointer (RFC 6901), cut where it is absurdly long. */
function escaped(name: string): string {
  return name.slice(0, 64).replaceAll('~', '~0').replaceAll('/', '~1');
}
