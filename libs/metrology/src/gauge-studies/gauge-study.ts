/** One value of a gauge study: who measured which object, all values in one unit. */
export interface GaugeMeasurement {
  readonly object: string;
  readonly appraiser: string;
  readonly value: number;
}

/** Degrees of freedom, sum of squares and mean square of one source. */
export interface VarianceSource {
  readonly sumOfSquares: number;
  readonly degreesOfFreedom: number;
  readonly meanSquare: number;
}

/** Standard deviations of a study, in the unit of the values. A variance estimate below zero counts as zero. */
export interface GaugeVariation {
  /** Same appraiser, same object, same instrument (equipment variation). */
  readonly repeatability: number;
  /** Between appraisers, with the interaction where it is kept (appraiser variation). */
  readonly reproducibility: number;
  readonly gauge: number;
  /** Between objects. */
  readonly objects: number;
  readonly total: number;
  /** Gauge against total, in per cent of standard deviations. */
  readonly gaugePercentOfTotal: number;
  /** Shares of variance in per cent: repeatability, reproducibility, gauge, objects. */
  readonly contributionPercent: {
    readonly repeatability: number;
    readonly reproducibility: number;
    readonly gauge: number;
    readonly objects: number;
  };
  /** 6 x gauge against the tolerance, in per cent; null where no tolerance was given. */
  readonly gaugePercentOfTolerance: number | null;
  /** Classes of objects the gauge can tell apart: 1.41 x objects / gauge, cut to an integer; null for a perfect gauge. */
  readonly distinctCategories: number | null;
}

/** A study that cannot be evaluated, and why. */
export type GaugeStudyRefusal =
  | { readonly kind: 'insufficientData'; readonly needed: string; readonly got: number }
  | {
      readonly kind: 'notBalanced';
      readonly object: string;
      readonly appraiser: string;
      readonly count: number;
    };
