import type { PartCondition } from '@endfloat/catalogue';
import type { Money } from '@endfloat/metrology';
import type { ClaimStepKind, CoreStepKind, StockMoveKind, WarrantyCover } from '@endfloat/stock';
import type { Reading, Verdict } from './bench.records.js';
import type { Warning } from './vehicles.records.js';

/** A number under which something can be ordered. In which condition it lies on the shelf is said by its stock. */
export interface Part {
  readonly componentType: string;
  readonly partNumber: string;
  readonly title: string;
  /** applications it fits, in the shop's own words, as vehicles carry them; empty: every one */
  readonly applications: readonly string[];
  /** the part that took its place */
  readonly supersededById: string | null;
  /** parts that fit the same; said of one of them it holds for both */
  readonly interchangesWith: readonly string[];
  /** what else is ordered with it, such as a gasket */
  readonly alsoOrder: readonly string[];
  readonly note: string | null;
}

export interface StockMoveIdentity {
  readonly partId: string;
  readonly jobId: string | null;
  readonly workLineId: string | null;
  /** the move that was recorded by mistake */
  readonly reversesId: string | null;
  readonly condition: PartCondition;
  readonly kind: StockMoveKind;
  /** place in the ledger of the part in that condition, from 1, without gaps */
  readonly position: number;
  readonly onHandChange: number;
  readonly reservedChange: number;
  readonly onHandAfter: number;
  readonly reservedAfter: number;
}

/** What was moved, when and why. It is never corrected: a mistake is put right by a reversal. */
export interface StockMove {
  readonly happenedAt: string;
  readonly serial: string | null;
  readonly batch: string | null;
  /** pieces; for a count, how many lay there */
  readonly quantity: number;
  readonly supplier: string | null;
  readonly offerId: string | null;
  readonly deliveryId: string | null;
  readonly unitCost: Money | null;
  /** where it lies */
  readonly place: string | null;
  readonly note: string | null;
  readonly warnings: readonly Warning[];
}

export interface CoreIdentity {
  readonly partId: string | null;
  readonly stockMoveId: string | null;
  readonly jobId: string | null;
}

export interface CoreStepEntry {
  readonly kind: CoreStepKind;
  readonly on: string;
  /** why it was refused, or why it went back before the road test */
  readonly reason: string | null;
  /** what was credited */
  readonly amount: Money | null;
}

/** An old part that a supplier wants back for its deposit. Each step adds a revision. */
export interface Core {
  readonly supplier: string;
  readonly componentType: string;
  readonly owedSince: string;
  /** last day to send it back */
  readonly returnBy: string | null;
  /** the latest step, or `owed`; that its day has passed is not stored */
  readonly state: CoreStepKind | 'owed';
  readonly deposit: Money | null;
  readonly serial: string | null;
  readonly steps: readonly CoreStepEntry[];
  readonly note: string | null;
}

export interface WarrantyClaimIdentity {
  readonly partId: string | null;
  readonly fittedPartId: string | null;
  readonly jobId: string | null;
}

export interface ClaimStepEntry {
  readonly kind: ClaimStepKind;
  readonly on: string;
  readonly reason: string | null;
  readonly amount: Money | null;
}

/** Who gave the promise that is claimed on: the supplier for the part, or whoever bears the labour. */
export const warrantyGivers = ['part', 'labour'] as const;
export type WarrantyGiver = (typeof warrantyGivers)[number];

export interface WarrantyClaim {
  readonly supplier: string;
  readonly claimedOn: string;
  readonly state: ClaimStepKind | 'open';
  readonly giver: WarrantyGiver;
  /** local day the fault showed */
  readonly foundOn: string;
  readonly months: number | null;
  readonly km: string | null;
  readonly amount: Money | null;
  readonly description: string;
  /** whether the warranty still held, as the records showed then */
  readonly cover: WarrantyCover;
  readonly steps: readonly ClaimStepEntry[];
  readonly warnings: readonly Warning[];
}

export interface ArrivalInspectionIdentity {
  readonly partId: string;
  readonly checkSheetId: string;
  readonly stockMoveId: string | null;
}

/** A verdict on a part that is on no vehicle yet; as the verdicts of an inspection. */
export interface ArrivalVerdict {
  readonly checkId: string;
  readonly limitId: string;
  readonly content: Verdict;
}

/** A used part looked at on arrival by the sheet that it will be checked by on a van, before it is fitted to one. */
export interface ArrivalInspection {
  readonly inspectedAt: string;
  readonly serial: string | null;
  readonly condition: PartCondition;
  /** in the order in which they were given */
  readonly readings: readonly Reading[];
  readonly verdicts: readonly ArrivalVerdict[];
  readonly note: string | null;
}
