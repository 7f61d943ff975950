import type { CalculationMethod } from './calculation-method.js';

export const expectedCosts: CalculationMethod = {
  id: 'expected-costs',
  title: 'Expected cost of options as on an estimate, and where two of them are level',
  name: 'expectedCost',
  variant:
    'parts + labour + days off the road + chance of a comeback x (its handling, and the repair after it unless the part is under warranty) + chance of losing the core x its deposit; nothing beyond that comeback',
  source: 'common practice, no publication; the full decision looks ahead instead',
  caseIds: ['expected-costs-worn-housing'],
};
