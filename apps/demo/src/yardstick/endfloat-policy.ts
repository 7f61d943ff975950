import type { AssessmentInput, LearnedTables, OptionAction, OptionTerms } from '@endfloat/decision';
import { previewAssessment, type PreviewCommand } from '@endfloat/workshop';
import type {
  Choice,
  Decider,
  Situation,
  SimulatedFleet,
  deliveriesOnRecord,
} from '@endfloat/decision/simulator';

/** What a workshop knows of its prices and rules; the yardstick hands it over from the fleet, nothing else of it. */
export interface KnownToWorkshop {
  readonly criterionMm: number;
  readonly watchWindowKm: number;
  readonly laterComplaint: { readonly labourHours: number; readonly downtimeDays: number };
  readonly furtherSetHours: number;
  readonly readingsInSet: number;
  readonly fleet: Pick<
    SimulatedFleet,
    'labourPerHour' | 'downtimePerDay' | 'comebackHandling' | 'adjustHours' | 'readings'
  > & {
    readonly renewals: Readonly<
      Record<
        keyof SimulatedFleet['renewals'],
        Pick<
          SimulatedFleet['renewals']['fitNew'],
          'price' | 'labourHours' | 'workshopDays' | 'promisedDays' | 'coversPart'
        >
      >
    >;
  };
  readonly deliveries: ReturnType<typeof deliveriesOnRecord>;
}

const euro = (amount: number) => ({ amount: amount.toFixed(2), currency: 'EUR' });

const conditions = {
  reBush: 'repairedOwnPart',
  fitUsed: 'used',
  fitRemanufactured: 'remanufactured',
  fitNew: 'new',
} as const;

const renewing = ['reBush', 'fitUsed', 'fitRemanufactured', 'fitNew'] as const;

function optionsOf(known: KnownToWorkshop, situation: Situation): readonly OptionTerms[] {
  const { fleet, deliveries } = known;
  const keeping: OptionTerms =
    situation.occasion === 'complaint'
      ? {
          optionId: 'adjust',
          action: 'adjust',
          labourHours: fleet.adjustHours,
          workshopDays: 0,
          offers: [],
        }
      : { optionId: 'leave', action: 'leave', labourHours: 0, workshopDays: 0, offers: [] };
  // At a planned visit nothing is adjusted, but a later complaint can be: the option is known to the model all the same.
  const adjusting: readonly OptionTerms[] =
    situation.occasion === 'complaint'
      ? []
      : [
          {
            optionId: 'adjust',
            action: 'adjust',
            labourHours: fleet.adjustHours,
            workshopDays: 0,
            offers: [],
          },
        ];
  return [
    keeping,
    ...adjusting,
    ...renewing.map((action): OptionTerms => {
      const { price, labourHours, workshopDays, promisedDays, coversPart } = fleet.renewals[action];
      return {
        optionId: action,
        action,
        labourHours,
        workshopDays,
        offers: [
          {
            offerId: `offer-${action}`,
            supplierId: `supplier-${action}`,
            condition: conditions[action],
            price: euro(situation.underWarranty === action ? 0 : price),
            leadTime:
              promisedDays === 0
                ? { kind: 'inStock' }
                : { kind: 'toOrder', promisedDays, delivered: deliveries[action] },
            core: null,
            arrivalWear: { kind: 'notMeasured' },
            warranty: { coversPart, coversLabour: false },
          },
        ],
      };
    }),
  ];
}

/**
 * The question a workshop sends to the preview route in a situation: readings, history, prices, and nothing of the truth.
 *
 * @param known      prices and rules
 * @param situation  what is seen
 * @returns command of the stateless assessment
 */
export function previewCommand(known: KnownToWorkshop, situation: Situation): PreviewCommand {
  const { fleet, criterionMm, watchWindowKm, laterComplaint, furtherSetHours, readingsInSet } = known;
  const functional: AssessmentInput['evidence']['functionalCriterion'] = {
    kind: situation.isCriterionPositive ? 'positive' : 'negative',
    isValid: true,
    evidence: [],
  };
  return {
    characteristic: {
      characteristicId: 'shaft-radial-play-lower',
      unit: 'mm',
      direction: 'up',
      unwornSize: 0,
      criterionSize: criterionMm,
    },
    occasion: situation.occasion,
    currency: 'EUR',
    planningDistanceKm: situation.remainingKm,
    watchWindowKm,
    serviceIntervalKm: situation.serviceIntervalKm,
    isUsableWhileWaiting: false,
    evidence: {
      functionalCriterion: functional,
      earlierComebacks: { count: situation.comebacksOfAdjusting, evidence: [] },
      safetyFindings: [],
    },
    rates: {
      labourPerHour: euro(fleet.labourPerHour),
      downtimePerDay: euro(fleet.downtimePerDay),
      comebackHandling: euro(fleet.comebackHandling),
      laterComplaint,
    },
    options: optionsOf(known, situation),
    consent: { declinedActions: [], ceiling: null, evidence: [] },
    inspections: situation.inspections.map(({ kmSinceFitted, values }) => ({
      kmSinceFitted,
      instrument: 'dial',
      values,
      doubt: { ...fleet.readings },
      evidence: [],
    })),
    furtherReadings: {
      count: readingsInSet,
      minutes: furtherSetHours * 60,
      wereOffered: situation.furtherSetTaken,
      doubt: null,
    },
    seed: 1,
    depth: 'withoutFlipPoints',
  };
}

/** Endfloat as a policy: it is asked through the preview, and what it recommends is done. */
export function endfloatPolicy(known: KnownToWorkshop, tables: LearnedTables): Decider {
  return {
    decide: (situation): Choice => {
      const { result } = previewAssessment(previewCommand(known, situation), tables);
      const { recommendation } = result;
      if (recommendation.kind === 'measureFirst') return { kind: 'measure' };
      if (recommendation.kind === 'none')
        throw new RangeError(`nothing was recommended: ${recommendation.why}`);
      const chosenId =
        recommendation.kind === 'recommended' ? recommendation.optionId : recommendation.optionIds[0]!;
      const chosen = result.options.find(({ optionId }) => optionId === chosenId);
      if (chosen?.kind !== 'priced') throw new RangeError('an option without a cost was recommended');
      const action: OptionAction = chosen.action;
      // At a planned visit there is nothing to adjust: the part goes on.
      const done = situation.occasion === 'serviceVisit' && action === 'adjust' ? 'leave' : action;
      const { lower, upper } = result.belief.distanceToCriterion;
      const distance = {
        lowerKm: lower === null ? null : Number(lower.value),
        upperKm: upper === null ? null : Number(upper.value),
      };
      return { kind: 'act', action: done, predicted: chosen.comeback.probability, distance };
    },
  };
}
