import { cautionFor } from '../cautions/cautions.js';
import { impliedHazards } from '../cautions/implied-hazards.js';
import type { Check } from './check-sheet.js';

type Required =
  | 'id'
  | 'title'
  | 'section'
  | 'steps'
  | 'componentTypeId'
  | 'characteristicId'
  | 'resultKind'
  | 'instrumentKind'
  | 'minutes';
type Given = Pick<Check, Required | 'outsideMeans' | 'whatToDo'> & Partial<Check>;

/** A shipped check: hazards that follow from state and instrument are added, and each hazard brings its caution along. */
export function defineCheck(given: Given): Check {
  const hazards = impliedHazards({
    hazards: given.hazards ?? [],
    requiredStates: given.requiredStates ?? [],
    instrumentKind: given.instrumentKind,
  });
  return {
    question: null,
    diagnosticCheckId: null,
    openingMove: false,
    prerequisites: [],
    advisedAfter: [],
    alsoRemeasure: [],
    requiredStates: [],
    limits: [],
    adjustable: 'no',
    targetCauses: [],
    functional: null,
    whereFitted: false,
    ...given,
    hazards,
    cautions: hazards.map((hazard) => cautionFor[hazard]),
  };
}

/** Reminder on every shipped sheet. */
export const shippedPrecedence =
  "The maker's instructions, local rules and licensed practice come first; the values of this sheet are defaults that a vehicle type or the shop may replace.";
