import type { RenewingAction } from '../terms/option-actions.js';
import { simulatedWorld } from './fleet-parameters.js';
import type { Choice, Decider, Situation } from './situation.js';

/** Rules of thumb. */
export const fixedRules = [
  'alwaysAdjust',
  'alwaysReplace',
  'replaceAt020',
  'replaceAt015',
  'functionalCriterion',
] as const;

/** A rule of `fixedRules`. */
export type FixedRule = (typeof fixedRules)[number];

const act = (action: RenewingAction | 'adjust' | 'leave'): Choice => ({
  kind: 'act',
  action,
  predicted: null,
});

/** Mean of the last set, mm. */
export function lastMean({ inspections }: Situation): number {
  const values = inspections.at(-1)?.values ?? [];
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}

function saysReplace(rule: FixedRule, situation: Situation): boolean {
  switch (rule) {
    case 'alwaysAdjust':
      return false;
    case 'alwaysReplace':
      return situation.occasion === 'complaint';
    case 'replaceAt020':
      return lastMean(situation) >= simulatedWorld.criterionMm;
    case 'replaceAt015':
      return lastMean(situation) >= 0.75 * simulatedWorld.criterionMm;
    case 'functionalCriterion':
      return situation.isCriterionPositive;
  }
}

/**
 * A rule of thumb as a policy. What comes back after adjusting is renewed, whatever the rule; that is kinder to the rules
 * than adjusting for ever.
 *
 * @param rule     which
 * @param renewal  the renewal it always takes
 * @returns policy without memory
 */
export function fixedRule(rule: FixedRule, renewal: RenewingAction): Decider {
  return {
    decide: (situation) => {
      if (situation.comebacks > 0 || saysReplace(rule, situation)) return act(renewal);
      return act(situation.occasion === 'complaint' ? 'adjust' : 'leave');
    },
  };
}
