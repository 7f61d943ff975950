import { averageAndRangeStudy } from '../gauge-studies/average-and-range-study.js';
import { crossedGaugeStudy } from '../gauge-studies/crossed-gauge-study.js';
import { aiagStudy } from './aiag-study.js';
import type { PublishedCase } from './published-case.js';
import { caseFigures } from './published-case.js';

const independent = { kind: 'relative', value: 1e-8 } as const;

function crossed(poolingLevel: number): Extract<ReturnType<typeof crossedGaugeStudy>, { kind: 'estimated' }> {
  const study = crossedGaugeStudy(aiagStudy, { poolingLevel, tolerance: null });
  if (study.kind !== 'estimated') throw new RangeError('the study is complete');
  return study;
}

/** Gauge repeatability and reproducibility. */
export const gaugeCases: readonly PublishedCase[] = [
  {
    id: 'aiag-analysis-of-variance',
    title: 'Ten parts, three appraisers, three trials, by analysis of variance',
    source: 'AIAG, Measurement Systems Analysis, 4th ed. (2010)',
    provenance: ['published', 'computed'],
    input: 'interaction pooled above p = 0.25, and kept',
    figures: [
      ...caseFigures(
        {
          squaresObjects: 88.361934444444,
          squaresAppraisers: 3.167262222222,
          squaresInteraction: 0.358982222222,
          squaresError: 2.758933333333,
          interactionF: 0.433721030135,
          interactionP: 0.974106404329,
          repeatability: 0.199933179721,
          reproducibility: 0.226837521496,
          gauge: 0.302371522323,
          objects: 1.042327493838,
          total: 1.085299563219,
          gaugePercent: 27.860650881142,
          keptRepeatability: 0.214434657232,
          keptReproducibility: 0.228304449827,
          keptGauge: 0.313217406976,
          keptObjects: 1.043394527452,
          keptGaugePercent: 28.751550984522,
        },
        independent,
      ),
      ...caseFigures(
        { contributionGauge: 7.8, contributionRepeatability: 3.4 },
        { kind: 'absolute', value: 0.05 },
      ),
      ...caseFigures(
        { contributionReproducibility: 4.4, contributionObjects: 92.2 },
        { kind: 'absolute', value: 0.05 },
      ),
      ...caseFigures({ categories: 4, degreesOfFreedom: 78, isPooled: 1 }, { kind: 'absolute', value: 0 }),
    ],
    compute: () => {
      const pooled = crossed(0.25);
      const kept = crossed(1).variation;
      const { sources, variation, interactionTest } = pooled;
      return {
        squaresObjects: sources.objects.sumOfSquares,
        squaresAppraisers: sources.appraisers.sumOfSquares,
        squaresInteraction: sources.interaction.sumOfSquares,
        squaresError: sources.error.sumOfSquares,
        interactionF: interactionTest?.f ?? 0,
        interactionP: interactionTest?.pValue ?? 0,
        repeatability: variation.repeatability,
        reproducibility: variation.reproducibility,
        gauge: variation.gauge,
        objects: variation.objects,
        total: variation.total,
        gaugePercent: variation.gaugePercentOfTotal,
        keptRepeatability: kept.repeatability,
        keptReproducibility: kept.reproducibility,
        keptGauge: kept.gauge,
        keptObjects: kept.objects,
        keptGaugePercent: kept.gaugePercentOfTotal,
        contributionGauge: variation.contributionPercent.gauge,
        contributionRepeatability: variation.contributionPercent.repeatability,
        contributionReproducibility: variation.contributionPercent.reproducibility,
        contributionObjects: variation.contributionPercent.objects,
        categories: variation.distinctCategories ?? 0,
        degreesOfFreedom: Number(pooled.repeatability.degreesOfFreedom),
        isPooled: pooled.isInteractionPooled ? 1 : 0,
      };
    },
  },
  {
    id: 'aiag-average-and-range',
    title: 'The same study by averages and ranges',
    source:
      'AIAG, Measurement Systems Analysis, 4th ed. (2010), report sheet; its rounding on the way allows 1e-4',
    provenance: ['memory', 'computed'],
    input: 'K1 0.5908, K2 0.5231, K3 0.3146',
    figures: [
      ...caseFigures(
        {
          meanRange: 0.341666666667,
          appraiserRange: 0.444666666667,
          objectRange: 3.51111111111,
          repeatability: 0.201856666667,
          reproducibility: 0.229667029103,
          gauge: 0.305766345654,
          objects: 1.10459555556,
          total: 1.14613454685,
          repeatabilityPercent: 17.6119520366,
          reproducibilityPercent: 20.0384003548,
          gaugePercent: 26.678049841,
          objectsPercent: 96.3757316791,
        },
        independent,
      ),
      ...caseFigures(
        {
          printedRepeatability: 0.20188,
          printedReproducibility: 0.22963,
          printedGauge: 0.30575,
          printedObjects: 1.10456,
        },
        { kind: 'absolute', value: 1e-4 },
      ),
      ...caseFigures({ categories: 5 }, { kind: 'absolute', value: 0 }),
    ],
    compute: () => {
      const study = averageAndRangeStudy(aiagStudy);
      if (study.kind !== 'estimated') throw new RangeError('the study is complete');
      const { variation, percentOfTotal } = study;
      return {
        meanRange: study.meanRange,
        appraiserRange: study.appraiserRange,
        objectRange: study.objectRange,
        repeatability: variation.repeatability,
        reproducibility: variation.reproducibility,
        gauge: variation.gauge,
        objects: variation.objects,
        total: variation.total,
        repeatabilityPercent: percentOfTotal.repeatability,
        reproducibilityPercent: percentOfTotal.reproducibility,
        gaugePercent: variation.gaugePercentOfTotal,
        objectsPercent: percentOfTotal.objects,
        printedRepeatability: variation.repeatability,
        printedReproducibility: variation.reproducibility,
        printedGauge: variation.gauge,
        printedObjects: variation.objects,
        categories: variation.distinctCategories ?? 0,
      };
    },
  },
];
