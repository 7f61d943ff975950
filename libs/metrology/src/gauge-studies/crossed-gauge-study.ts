import { fSurvival } from '@endfloat/statistics';
import type { Repeatability } from '../uncertainty/pool-standard-deviations.js';
import type { GaugeMeasurement, GaugeStudyRefusal, GaugeVariation, VarianceSource } from './gauge-study.js';
import { gaugeVariation, requireTolerance } from './gauge-variation.js';
import type { StudyCells } from './study-cells.js';
import { meanOf, squaresAbout, studyCells } from './study-cells.js';

/** Choices of a crossed study. */
export interface CrossedStudyOptions {
  /** The interaction is pooled into repeatability when its p-value is above this; 0.25 unless another one is agreed. */
  readonly poolingLevel: number;
  /** Width of the tolerance in the unit of the values, or null. */
  readonly tolerance: number | null;
}

/** Result of a crossed study. */
export interface CrossedGaugeStudy {
  readonly kind: 'estimated';
  readonly sources: {
    readonly objects: VarianceSource;
    readonly appraisers: VarianceSource;
    readonly interaction: VarianceSource;
    readonly error: VarianceSource;
  };
  /** F of the interaction against the error and its p-value; null where the error is exactly zero. */
  readonly interactionTest: { readonly f: number; readonly pValue: number } | null;
  readonly isInteractionPooled: boolean;
  readonly variation: GaugeVariation;
  /** What an uncertainty budget takes over: standard deviation of single readings with its degrees of freedom. */
  readonly repeatability: Repeatability;
  readonly method: string;
}

/**
 * Crossed gauge study (every appraiser measures every object several times) by two-way random analysis of variance.
 *
 * Variance components from expected mean squares; a component below zero is set to zero. With the interaction kept, it
 * counts to reproducibility; it is kept where the error is exactly zero, for it cannot be tested then.
 *
 * @param measurements  balanced: the same number of trials, at least two, in every cell of at least two objects and two
 *   appraisers; any order
 * @param options       pooling level between 0 and 1, tolerance
 * @returns `estimated` (zeros throughout where all values are equal), `insufficientData` or `notBalanced`
 * @throws RangeError on a non-finite value or options outside their ranges
 * @source AIAG, Measurement Systems Analysis, 4th ed. (2010), analysis of variance method
 * @oracle libs/metrology/src/published-cases
 * @example crossedGaugeStudy([]) // => { kind: 'insufficientData', needed: 'two objects', got: 0 }
 */
export function crossedGaugeStudy(
  measurements: readonly GaugeMeasurement[],
  { poolingLevel, tolerance }: CrossedStudyOptions = { poolingLevel: 0.25, tolerance: null },
): CrossedGaugeStudy | GaugeStudyRefusal {
  if (!(poolingLevel >= 0 && poolingLevel <= 1)) throw new RangeError('a pooling level lies between 0 and 1');
  requireTolerance(tolerance);
  const cells = studyCells(measurements);
  if (cells.kind !== 'cells') return cells;
  const sources = sourcesOf(cells);
  const { objects, appraisers, interaction, error } = sources;
  const interactionTest =
    error.meanSquare > 0
      ? {
          f: interaction.meanSquare / error.meanSquare,
          pValue: fSurvival(
            interaction.meanSquare / error.meanSquare,
            interaction.degreesOfFreedom,
            error.degreesOfFreedom,
          ),
        }
      : null;
  const isInteractionPooled = interactionTest !== null && interactionTest.pValue > poolingLevel;
  const pooledDegrees = interaction.degreesOfFreedom + error.degreesOfFreedom;
  const pooledSquare = (interaction.sumOfSquares + error.sumOfSquares) / pooledDegrees;
  const within = isInteractionPooled ? pooledSquare : error.meanSquare;
  const between = isInteractionPooled ? pooledSquare : interaction.meanSquare;
  const byInteraction = isInteractionPooled
    ? 0
    : Math.max(0, (interaction.meanSquare - within) / cells.trials);
  const byAppraiser = Math.max(0, (appraisers.meanSquare - between) / (cells.objects.length * cells.trials));
  const byObject = Math.max(0, (objects.meanSquare - between) / (cells.appraisers.length * cells.trials));
  return {
    kind: 'estimated',
    sources,
    interactionTest,
    isInteractionPooled,
    variation: gaugeVariation(
      { repeatability: within, reproducibility: byAppraiser + byInteraction, objects: byObject },
      tolerance,
    ),
    repeatability: {
      standardDeviation: Math.sqrt(within),
      degreesOfFreedom: isInteractionPooled ? pooledDegrees : error.degreesOfFreedom,
    },
    method: `two-way random analysis of variance, interaction ${isInteractionPooled ? 'pooled' : 'kept'}`,
  };
}

function sourcesOf({ objects, appraisers, trials, cell }: StudyCells): CrossedGaugeStudy['sources'] {
  const all = objects.flatMap((object) => appraisers.flatMap((appraiser) => cell(object, appraiser)));
  const grand = meanOf(all);
  const objectMeans = objects.map((object) =>
    meanOf(appraisers.flatMap((appraiser) => cell(object, appraiser))),
  );
  const appraiserMeans = appraisers.map((appraiser) =>
    meanOf(objects.flatMap((object) => cell(object, appraiser))),
  );
  let interaction = 0;
  let error = 0;
  objects.forEach((object, row) => {
    appraisers.forEach((appraiser, column) => {
      const values = cell(object, appraiser);
      const mean = meanOf(values);
      error += squaresAbout(values, mean);
      interaction += trials * (mean - objectMeans[row]! - appraiserMeans[column]! + grand) ** 2;
    });
  });
  const [rows, columns] = [objects.length, appraisers.length];
  return {
    objects: source(columns * trials * squaresAbout(objectMeans, grand), rows - 1),
    appraisers: source(rows * trials * squaresAbout(appraiserMeans, grand), columns - 1),
    interaction: source(interaction, (rows - 1) * (columns - 1)),
    error: source(error, rows * columns * (trials - 1)),
  };
}

/**
 * One source of an analysis of variance.
 *
 * @param sumOfSquares      not negative
 * @param degreesOfFreedom  at least 1
 * @returns the two with the mean square
 */
export function source(sumOfSquares: number, degreesOfFreedom: number): VarianceSource {
  return { sumOfSquares, degreesOfFreedom, meanSquare: sumOfSquares / degreesOfFreedom };
}
