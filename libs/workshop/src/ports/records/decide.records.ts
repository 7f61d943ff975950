import type { PartCondition } from '@endfloat/catalogue';
import type { Money } from '@endfloat/metrology';

export interface AssessmentIdentity {
  readonly vehicleId: string;
  readonly jobId: string | null;
  readonly fittedPartId: string | null;
}
/** Canonical input text, its hash and the result: enough to replay it anywhere. */
export interface Assessment {
  readonly modelVersion: string;
  readonly inputHash: string;
  readonly input: unknown;
  readonly result: unknown;
}

export interface OfAssessment {
  readonly assessmentId: string;
}
export interface Decision {
  /** the option chosen */
  readonly chosen: string;
  readonly decidedAt: string;
  readonly decidedBy: string;
  /** required when it differs from the recommendation */
  readonly reason: string | null;
}

/** What a supplier asks for a part in one condition. */
export interface Offer {
  readonly componentType: string;
  readonly condition: PartCondition;
  readonly supplier: string;
  readonly partNumber: string | null;
  readonly price: Money | null;
  readonly coreDeposit: Money | null;
  readonly promisedLeadDays: number | null;
  readonly warrantyMonths: number | null;
  readonly validUntil: string | null;
}

export interface OfOffer {
  readonly offerId: string;
}
export interface Delivery {
  readonly orderedOn: string;
  readonly promisedOn: string | null;
  readonly arrivedOn: string | null;
}
