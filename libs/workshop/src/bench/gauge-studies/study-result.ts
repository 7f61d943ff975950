import {
  averageAndRangeStudy,
  crossedGaugeStudy,
  nestedGaugeStudy,
  type AverageAndRangeStudy,
  type CrossedGaugeStudy,
  type GaugeStudyRefusal,
  type NestedGaugeStudy,
  type Repeatability,
} from '@endfloat/metrology';
import type { GaugeStudy } from '../../ports/records/bench.records.js';

/** What a study says, by its layout, or why it says nothing. */
export type GaugeStudyResult =
  | { readonly kind: 'crossed'; readonly study: CrossedGaugeStudy }
  | { readonly kind: 'averageAndRange'; readonly study: AverageAndRangeStudy }
  | { readonly kind: 'nested'; readonly study: NestedGaugeStudy }
  | GaugeStudyRefusal;

const usualPoolingLevel = 0.25;

/** Works a study as it is laid out. */
export function gaugeStudyResult({ design, measurements, poolingLevel }: GaugeStudy): GaugeStudyResult {
  switch (design) {
    case 'crossed': {
      const options = { poolingLevel: poolingLevel ?? usualPoolingLevel, tolerance: null };
      const study = crossedGaugeStudy(measurements, options);
      return study.kind === 'estimated' ? { kind: 'crossed', study } : study;
    }
    case 'averageAndRange': {
      const study = averageAndRangeStudy(measurements);
      return study.kind === 'estimated' ? { kind: 'averageAndRange', study } : study;
    }
    case 'nested': {
      const study = nestedGaugeStudy(measurements);
      return study.kind === 'estimated' ? { kind: 'nested', study } : study;
    }
  }
}

/** Standard deviation of single readings, in the unit of the study; null where the study says nothing. */
export const repeatabilityOf = (result: GaugeStudyResult): Repeatability | null =>
  'study' in result ? result.study.repeatability : null;
