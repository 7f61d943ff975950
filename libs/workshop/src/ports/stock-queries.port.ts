import type { PartCondition } from '@endfloat/catalogue';

/** What lies of one part in one condition, after the last move on its ledger. */
export interface StockLine {
  readonly partId: string;
  readonly condition: PartCondition;
  /** moves on the ledger */
  readonly position: number;
  readonly onHand: number;
  readonly reserved: number;
  readonly lastMovedAt: string;
}

/** Pieces that went into jobs in one calendar month (UTC), less those that came back. */
export interface MonthOfUse {
  readonly partId: string;
  /** first day of the month */
  readonly month: string;
  readonly pieces: number;
}

/** Sums over the stock ledger, in one statement each. */
export interface StockQueries {
  /** The end of the ledger of every part and condition, or of some parts, as known at `asOf`. */
  lines(query: {
    readonly partIds?: readonly string[] | undefined;
    readonly asOf?: string | undefined;
  }): Promise<readonly StockLine[]>;
  /** What one job has of a part in a condition: kept for it, and gone into it. */
  ofJob(query: {
    readonly partId: string;
    readonly condition: PartCondition;
    readonly jobId: string;
  }): Promise<{
    readonly reserved: number;
    readonly inJob: number;
  }>;
  /** Moment of the latest count of a part in a condition; undefined: never counted. */
  lastCountAt(query: {
    readonly partId: string;
    readonly condition: PartCondition;
  }): Promise<string | undefined>;
  /** Use by month from a day on, months without use left out, as known at `asOf`. */
  useByMonth(query: {
    readonly partIds: readonly string[];
    readonly from: string;
    readonly asOf?: string | undefined;
  }): Promise<readonly MonthOfUse[]>;
}
