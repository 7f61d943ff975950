import { compareQuantities } from '../quantities/compare-quantities.js';
import type { Quantity } from '../quantities/quantity.js';
import type { ApplicabilityRule, ContextValue } from './applicability.js';

/** Whether a context value meets a rule; `cannotTell` where the value is of another sort than the rule asks for. */
export type RuleMatch = 'met' | 'notMet' | 'cannotTell';

/**
 * Checks one context value against one rule. Quantities are compared exactly, in whatever units they are written.
 * Of a list of texts, one is enough for `oneOf`, and none may be named in `noneOf`.
 *
 * @param rule   what the value must be
 * @param value  what is known; dates are compared as texts YYYY-MM-DD
 * @returns `met`, `notMet`, or `cannotTell` where the value is of another sort than the rule asks for
 * @source judgement
 * @example matchesRule({ kind: 'oneOf', values: ['N1', 'M1'] }, 'N1') // => 'met'
 */
export function matchesRule(rule: ApplicabilityRule, value: ContextValue): RuleMatch {
  switch (rule.kind) {
    case 'oneOf':
    case 'noneOf': {
      const texts = textsOf(value);
      if (texts === null) return 'cannotTell';
      const isNamed = texts.some((text) => rule.values.includes(text));
      return isNamed === (rule.kind === 'oneOf') ? 'met' : 'notMet';
    }
    case 'dates': {
      if (typeof value !== 'string' || !/^[0-9]{4}-[0-9]{2}-[0-9]{2}$/.test(value)) return 'cannotTell';
      const isFrom = rule.from === undefined || value >= rule.from;
      const isBefore = rule.before === undefined || value < rule.before;
      return isFrom && isBefore ? 'met' : 'notMet';
    }
    case 'range':
      return isQuantity(value) ? matchesRange(rule, value) : 'cannotTell';
  }
}

/**
 * Tells a quantity from the other sorts of context value.
 *
 * @param value  a context value; undefined is none
 * @returns true for an object with a unit; whether the unit is known is not looked at
 * @source definition of `ContextValue`
 */
export function isQuantity(value: ContextValue | undefined): value is Quantity {
  return typeof value === 'object' && 'unit' in value;
}

function textsOf(value: ContextValue): readonly string[] | null {
  if (typeof value === 'string') return [value];
  return isQuantity(value) ? null : value;
}

function matchesRange(rule: Extract<ApplicabilityRule, { kind: 'range' }>, value: Quantity): RuleMatch {
  const edges: readonly (readonly [Quantity | undefined, readonly string[]])[] = [
    [rule.over, ['greater']],
    [rule.from, ['greater', 'equal']],
    [rule.under, ['less']],
    [rule.upTo, ['less', 'equal']],
  ];
  let match: RuleMatch = 'met';
  for (const [edge, good] of edges) {
    if (edge === undefined) continue;
    const comparison = compareQuantities(value, edge, rule.quantityKind);
    if (comparison.kind !== 'compared') return 'cannotTell';
    if (!good.includes(comparison.order)) match = 'notMet';
  }
  return match;
}
