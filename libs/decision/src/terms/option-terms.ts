import type { Money } from '@endfloat/metrology';
import type { OfferedCondition, OptionAction } from './option-actions.js';

/** One delivery of a supplier: what was promised, what it took. */
export interface DeliveredLeadTime {
  readonly promisedDays: number | null;
  readonly actualDays: number;
}

/** When the part is here: on the shelf, or as promised and as this supplier really delivers. */
export type LeadTime =
  | { readonly kind: 'inStock' }
  | {
      readonly kind: 'toOrder';
      readonly promisedDays: number | null;
      readonly delivered: readonly DeliveredLeadTime[];
    };

/** Wear of an offered part as measured on arrival, before fitting; sizes in the characteristic's unit. */
export type ArrivalWear =
  | {
      readonly kind: 'measured';
      readonly value: number;
      readonly standardUncertainty: number;
      readonly evidence: readonly string[];
    }
  | { readonly kind: 'notMeasured' };

/** What the option's giver bears when the repair comes back inside the watch window. */
export interface OptionWarranty {
  readonly coversPart: boolean;
  readonly coversLabour: boolean;
}

/** One supplier's offer for an option. */
export interface PartOffer {
  readonly offerId: string;
  readonly supplierId: string;
  readonly condition: OfferedCondition;
  /** null is not quoted, never free */
  readonly price: Money | null;
  readonly leadTime: LeadTime;
  readonly core: { readonly deposit: Money; readonly probabilityOfLosing: number } | null;
  readonly arrivalWear: ArrivalWear;
  readonly warranty: OptionWarranty;
}

/** One way to deal with the component. */
export interface OptionTerms {
  readonly optionId: string;
  readonly action: OptionAction;
  readonly labourHours: number;
  /** Days the vehicle is away because of the work itself, waiting for the part not counted. */
  readonly workshopDays: number;
  /** For renewing actions; empty where nobody offers. Keeping actions take no part. */
  readonly offers: readonly PartOffer[];
}
