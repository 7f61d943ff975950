import type { UnitCode } from '@endfloat/metrology';
import { meanInterval, sampleQuantile, sampleVariance } from '@endfloat/statistics';
import { calculated, type CalculationMethod } from './calculation-method.js';
import { refusing } from './refusing.js';

export const sampleSummaries: CalculationMethod = {
  id: 'sample-summaries',
  title: 'Mean, spread and quantiles of values',
  name: 'sampleSummary',
  variant:
    "variance with n - 1; Student's interval of the mean; quantiles of type 7 of Hyndman and Fan, at position (n - 1) p + 1; the median is that of p = 1/2",
  source: 'NIST/SEMATECH e-Handbook 1.3.5.1, 1.3.5.2 and 1.3.5.6; Hyndman & Fan (1996), Am. Stat. 50:361-365',
  caseIds: ['nist-numacc-summaries', 'gum-twenty-temperatures'],
};

export interface SampleSummaryCommand {
  readonly unit?: UnitCode | undefined;
  readonly values: readonly number[];
  readonly probabilities?: readonly number[] | undefined;
  readonly level?: number | undefined;
}

/** Values in short; a single value has quantiles and neither spread nor interval. */
export function calculateSampleSummary(command: SampleSummaryCommand) {
  const { unit = '1', values, probabilities = [], level = 0.95 } = command;
  const result = refusing(['values', 'probabilities', 'level'], () =>
    summaryOf(values, probabilities, level),
  );
  return calculated(sampleSummaries, values.length, { unit, result });
}

function summaryOf(values: readonly number[], probabilities: readonly number[], level: number) {
  const quantileAt = (probability: number) => sampleQuantile(values, probability);
  const [least, middle, greatest] = [quantileAt(0), quantileAt(0.5), quantileAt(1)];
  if (least.kind !== 'estimated' || middle.kind !== 'estimated' || greatest.kind !== 'estimated') {
    return { kind: 'insufficientData' as const, of: 'values', needed: 1, got: values.length };
  }
  const spread = sampleVariance(values);
  const centre = meanInterval(values, level);
  const hasSpread = spread.kind === 'estimated' && centre.kind === 'estimated';
  return {
    kind: 'estimated' as const,
    mean: hasSpread ? centre.mean : middle.quantile,
    variance: hasSpread ? spread.variance : null,
    standardDeviation: hasSpread ? spread.standardDeviation : null,
    standardError: hasSpread ? centre.standardError : null,
    meanInterval: hasSpread ? centre.interval : null,
    level,
    least: least.quantile,
    median: middle.quantile,
    greatest: greatest.quantile,
    quantiles: probabilities.map((probability) => {
      const found = quantileAt(probability);
      return { probability, quantile: found.kind === 'estimated' ? found.quantile : middle.quantile };
    }),
  };
}
