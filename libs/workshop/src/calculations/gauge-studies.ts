import {
  averageAndRangeStudy,
  crossedGaugeStudy,
  nestedGaugeStudy,
  type GaugeMeasurement,
  type UnitCode,
} from '@endfloat/metrology';
import { calculated, type CalculationMethod } from './calculation-method.js';
import { refusing } from './refusing.js';

export const gaugeStudies: CalculationMethod = {
  id: 'gauge-studies',
  title: 'How much of the variation of readings is the gauge and the person',
  name: 'gaugeStudy',
  variant:
    'crossed: two-way random analysis of variance, interaction pooled above a p-value (0.25 unless told), components below zero are zero; averageAndRange: constants for up to 10 objects, 3 appraisers, 3 trials; nested: objects within appraisers; %GRR of total variation, categories 1.41 PV/GRR cut to a whole number, %tolerance by six sigma',
  source: 'AIAG, Measurement Systems Analysis, 4th ed. (2010)',
  caseIds: ['aiag-analysis-of-variance', 'aiag-average-and-range'],
};

/** How a study is laid out. */
export type GaugeStudyDesign = 'crossed' | 'averageAndRange' | 'nested';

export interface GaugeStudyCommand {
  readonly unit?: UnitCode | undefined;
  readonly design?: GaugeStudyDesign | undefined;
  readonly measurements: readonly GaugeMeasurement[];
  readonly poolingLevel?: number | undefined;
  readonly tolerance?: number | undefined;
}

/** Gauge repeatability and reproducibility. */
export function calculateGaugeStudy(command: GaugeStudyCommand) {
  const { unit = '1', design = 'crossed', measurements, poolingLevel = 0.25, tolerance = null } = command;
  const result = refusing(['measurements', 'poolingLevel', 'tolerance'], () => {
    if (design === 'averageAndRange') {
      const found = averageAndRangeStudy(measurements, tolerance);
      return found.kind === 'estimated'
        ? {
            kind: 'averageAndRange' as const,
            meanRange: found.meanRange,
            appraiserRange: found.appraiserRange,
            objectRange: found.objectRange,
            variation: found.variation,
          }
        : found;
    }
    if (design === 'nested') {
      const found = nestedGaugeStudy(measurements, tolerance);
      return found.kind === 'estimated'
        ? { kind: 'nested' as const, sources: found.sources, variation: found.variation }
        : found;
    }
    const found = crossedGaugeStudy(measurements, { poolingLevel, tolerance });
    return found.kind === 'estimated'
      ? {
          kind: 'crossed' as const,
          sources: found.sources,
          interactionTest: found.interactionTest,
          isInteractionPooled: found.isInteractionPooled,
          variation: found.variation,
        }
      : found;
  });
  return calculated(gaugeStudies, measurements.length, { unit, result });
}
