import type { RenewingAction } from '../terms/option-actions.js';

/**
 * Comeback inside the watch window: logistic in `comebackCoefficients`, normal belief over the coefficients.
 * `mean` and `covariance` follow the order of the names.
 */
export interface ComebackTable {
  readonly mean: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  /** What has taught it: closed jobs with and without comeback, and jobs whose window is running. */
  readonly taught: { readonly comebacks: number; readonly held: number; readonly running: number };
}

/**
 * Chance that adjusting comes back, by the cause of the complaint; both between 0 and 1, the worn part's the greater. The
 * share of each cause at some wear follows from the complaint rates.
 */
export interface AdjustingByCause {
  readonly otherCauses: number;
  readonly wornPart: number;
}

/** Distribution on the positive line: median, and standard deviation of the natural logarithm. */
export interface LogNormalBelief {
  readonly median: number;
  readonly logSd: number;
}

/**
 * Wear of a population of parts. Sizes are shares of the wear at which the criterion is met (1 = criterion), so that one
 * table serves any unit and either direction; rates are shares per 100,000 km.
 */
export interface PopulationWear {
  readonly start: LogNormalBelief;
  readonly rate: LogNormalBelief;
  readonly parts: number;
}

/** Numbers that learning updates; passed in with every assessment. */
export interface LearnedTables {
  readonly version: string;
  /** Hash of the canonical text of the tables, made by whoever stores them. */
  readonly hash: string;
  readonly comeback: ComebackTable;
  /** Without it the coefficients alone say how adjusting comes back; with it they correct what the causes say. */
  readonly adjusting?: AdjustingByCause;
  /** Wear of the part now fitted, before it was measured; by action for the ones that may follow. */
  readonly wear: {
    readonly fittedPart: PopulationWear;
    readonly byAction: Readonly<Record<RenewingAction, PopulationWear>>;
    /** Scale of the gamma process: variance of an increment / its mean, share of the criterion. */
    readonly incrementScale: number;
  };
  /** Complaints per 100,000 km. */
  readonly complaints: {
    /** causes that adjusting cures, whatever the wear */
    readonly otherCausesRate: number;
    /** worn part, wear far above the criterion */
    readonly wornRate: number;
    /** share of the criterion over which the worn part's complaints set in */
    readonly onsetWidth: number;
  };
  /** Share of the criterion over which the functional criterion turns from no to yes. */
  readonly functionalWidth: number;
  /** Lead times: log((actual + 1) / (promised + 1)), normal. */
  readonly leadTime: {
    readonly meanLogSlip: number;
    readonly betweenSuppliersSd: number;
    readonly withinSupplierSd: number;
  };
}
