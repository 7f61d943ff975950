import type { ComebackOutcome, SettledHistory, SettledPart } from '@endfloat/decision';
import type { PlayedPart, PlayedRepair, PlayedVan } from '@endfloat/decision/simulator';
import type { KnownToWorkshop } from './endfloat-policy.js';

const conditions = {
  reBush: 'repairedOwnPart',
  fitUsed: 'used',
  fitRemanufactured: 'remanufactured',
  fitNew: 'new',
} as const;

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Uncertainty of the mean of a set, share of the criterion. */
function uncertainty({ fleet, criterionMm }: KnownToWorkshop, count: number): number {
  const { repeat, setUp, bias } = fleet.readings;
  return Math.sqrt((repeat * repeat) / count + setUp * setUp + bias * bias) / criterionMm;
}

function settledPart(known: KnownToWorkshop, part: PlayedPart): SettledPart {
  return {
    action: part.action,
    watchedKm: part.km,
    inspections: part.inspections.map(({ kmSinceFitted, values }) => ({
      kmSinceFitted,
      share: meanOf(values) / known.criterionMm,
      standardUncertainty: uncertainty(known, values.length),
    })),
    criterion: part.criterion,
    complaintsKm: part.complaintsKm,
  };
}

function settledRepair(
  known: KnownToWorkshop,
  { situation, action, cameBack }: PlayedRepair,
): ComebackOutcome {
  const last = situation.inspections.at(-1)!;
  const isRenewing = action !== 'leave' && action !== 'adjust';
  return {
    context: {
      action,
      condition: isRenewing ? conditions[action] : null,
      arrivalStep: 0,
      functional: situation.isCriterionPositive ? 'positive' : 'negative',
      earlierComebacks: situation.comebacksOfAdjusting,
    },
    wear: isRenewing
      ? null
      : {
          share: meanOf(last.values) / known.criterionMm,
          standardUncertainty: uncertainty(known, last.values.length),
        },
    outcome: { kind: cameBack ? 'comeback' : 'held' },
  };
}

/**
 * What a workshop has on record after vans were played, as tables are learned from it: what was seen, never the truth.
 *
 * @param known  prices and rules of the workshop
 * @param vans   as they were played
 * @returns history
 */
export function historyOfVans(known: KnownToWorkshop, vans: readonly PlayedVan[]): SettledHistory {
  return {
    parts: vans.flatMap(({ parts }) => parts.map((part) => settledPart(known, part))),
    repairs: vans.flatMap(({ repairs }) => repairs.map((repair) => settledRepair(known, repair))),
    deliveries: vans.flatMap(({ deliveries }) =>
      deliveries.map(({ action, actualDays }) => ({
        supplierId: `supplier-${action}`,
        promisedDays: known.fleet.renewals[action].promisedDays,
        actualDays: Math.max(0, Math.round(actualDays)),
      })),
    ),
  };
}
