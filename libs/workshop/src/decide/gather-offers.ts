import type { PartCondition } from '@endfloat/catalogue';
import type { DeliveredLeadTime, LeadTime, OptionAction, OptionTerms, PartOffer } from '@endfloat/decision';
import type { Recorded } from '../ports/record-store.port.js';
import type {
  AssessmentQuestion,
  AssessmentSources,
  Delivery,
  Offer,
  OfOffer,
} from '../ports/records/decide.records.js';
import { invalidInput } from '../errors/domain.errors.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { daysBetween } from './days-between.js';
import type { OfferRecord } from './offers.use-case.js';
import { usualActions, usualCoreLossChance, usualTariff } from './repair-tariffs.js';

/** The action a part in a condition serves. */
export const actionOfCondition: Readonly<Record<PartCondition, OptionAction>> = {
  new: 'fitNew',
  newOldStock: 'fitNew',
  remanufactured: 'fitRemanufactured',
  rebuilt: 'fitRemanufactured',
  reconditioned: 'fitRemanufactured',
  used: 'fitUsed',
  repairedOwnPart: 'reBush',
};

/** Everything offers are judged against. */
export interface OfferContext {
  readonly today: string;
  /** days after which a repair without comeback counts as held */
  readonly windowDays: number;
}

export interface GatheredOptions {
  readonly options: readonly OptionTerms[];
  readonly leftOut: AssessmentSources['offersLeftOut'];
  readonly deliveries: number;
}

/** The options asked for, each with the offers that still hold and with lead times as their suppliers really deliver. */
export async function gatherOptions(
  tx: ShopTransaction,
  question: AssessmentQuestion,
  context: OfferContext,
): Promise<GatheredOptions> {
  const wishes = wishesOf(question);
  const offers = await tx.offers.all({ componentType: question.componentType });
  const holding = offers.filter(
    ({ content: { validUntil } }) => validUntil === null || validUntil >= context.today,
  );
  const suppliers = [...new Set(holding.map(({ content }) => content.supplier))];
  const ofSuppliers = suppliers.length === 0 ? [] : await tx.offers.all({ supplier: suppliers });
  const offerId = ofSuppliers.map(({ id }) => id);
  const deliveries = offerId.length === 0 ? [] : await tx.deliveries.all({ offerId });
  const coreLossChance = Number(question.coreLossChance ?? String(usualCoreLossChance));
  const used = new Set<string>();
  const options = wishes.map(({ action, labourHours, workshopDays }): OptionTerms => {
    const own = holding.filter(({ content }) => actionOfCondition[content.condition] === action);
    const partOffers = own.map((offer) => {
      const { leadTime, deliveryIds } = leadTimeOf(offer, ofSuppliers, deliveries);
      for (const id of deliveryIds) used.add(id);
      return partOffer(offer, leadTime, context, coreLossChance);
    });
    return { optionId: action, action, labourHours, workshopDays, offers: partOffers };
  });
  return {
    options,
    leftOut: offers
      .filter((offer) => !holding.includes(offer))
      .map(({ id }) => ({ offerId: id, why: 'expired' })),
    deliveries: used.size,
  };
}

interface Wish {
  readonly action: OptionAction;
  readonly labourHours: number;
  readonly workshopDays: number;
}

function wishesOf({ componentType, options }: AssessmentQuestion): readonly Wish[] {
  const usual = usualActions(componentType);
  const asked =
    options ?? usual?.map((action) => ({ action, labourHours: null, workshopDays: null })) ?? null;
  if (asked === null) {
    throw invalidInput(
      '/options',
      'required',
      `No usual hours are known for a ${componentType}. Say which options to consider, with their labour hours.`,
    );
  }
  return asked.map(({ action, labourHours, workshopDays }, index) => {
    const tariff = usualTariff(componentType, action);
    if (tariff === null && labourHours === null) {
      throw invalidInput(
        `/options/${String(index)}/labourHours`,
        'required',
        `No usual hours are known for "${action}" on a ${componentType}. Give them.`,
      );
    }
    if (asked.findIndex((each) => each.action === action) !== index)
      throw invalidInput(`/options/${String(index)}/action`, 'unique', 'This action is asked for already.');
    return {
      action,
      labourHours: labourHours === null ? (tariff?.labourHours ?? 0) : Number(labourHours),
      workshopDays: workshopDays === null ? (tariff?.workshopDays ?? 0) : Number(workshopDays),
    };
  });
}

function partOffer(
  { id, content }: OfferRecord,
  leadTime: LeadTime,
  { windowDays }: OfferContext,
  coreLossChance: number,
): PartOffer {
  const { supplier, condition, price, coreDeposit, warrantyMonths } = content;
  const daysOfMonth = 365.25 / 12;
  return {
    offerId: id,
    supplierId: supplier,
    condition,
    price,
    leadTime,
    core: coreDeposit === null ? null : { deposit: coreDeposit, probabilityOfLosing: coreLossChance },
    arrivalWear: { kind: 'notMeasured' },
    // The supplier of a part bears the part, never the shop's labour; and only where the warranty outlasts the window.
    warranty: { coversPart: (warrantyMonths ?? 0) * daysOfMonth >= windowDays, coversLabour: false },
  };
}

/**
 * Lead time as this supplier really delivers. A promise is stretched by the slips on all this supplier's promises, whatever
 * the part; without a promise only like parts count. Orders that have not arrived are left out.
 */
function leadTimeOf(
  { content: own }: OfferRecord,
  ofSuppliers: readonly OfferRecord[],
  deliveries: readonly Recorded<OfOffer, Delivery>[],
): { readonly leadTime: LeadTime; readonly deliveryIds: readonly string[] } {
  if (own.promisedLeadDays === 0) return { leadTime: { kind: 'inStock' }, deliveryIds: [] };
  const isLike = (other: Offer): boolean =>
    other.supplier === own.supplier &&
    (own.promisedLeadDays !== null ||
      (other.componentType === own.componentType && other.condition === own.condition));
  const likeOffers = new Set(ofSuppliers.filter(({ content }) => isLike(content)).map(({ id }) => id));
  const counted = deliveries.filter(
    ({ identity, content: { promisedOn, arrivedOn } }) =>
      likeOffers.has(identity.offerId) &&
      arrivedOn !== null &&
      (own.promisedLeadDays === null || promisedOn !== null),
  );
  const delivered = counted.flatMap(
    ({ content: { orderedOn, promisedOn, arrivedOn } }): DeliveredLeadTime[] => {
      if (arrivedOn === null) return [];
      const promisedDays = promisedOn === null ? null : daysBetween(orderedOn, promisedOn);
      return [{ promisedDays, actualDays: daysBetween(orderedOn, arrivedOn) }];
    },
  );
  return {
    leadTime: { kind: 'toOrder', promisedDays: own.promisedLeadDays, delivered },
    deliveryIds: counted.map(({ id }) => id),
  };
}
