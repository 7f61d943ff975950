/**
 * One case of against-r.ts on this side, in a process of its own so that its memory is its own.
 *
 *   case.ts <folder> <case> <repetitions>
 */
import {
  fitLifeDistribution,
  inversePrediction,
  kaplanMeier,
  lifeScale,
  meanCumulativeFunction,
  ordinaryLeastSquares,
  theilSenSlope,
  weibullShape,
  type Point,
} from '@endfloat/statistics';
import { readColumns, type BenchCase } from './tables.js';

interface Run<T> {
  /** What is timed. */
  readonly compute: () => T;
  /** The figures that both sides must agree on. */
  readonly figures: (answer: T) => readonly number[];
}

/** Columns that are at hand before the clock starts. */
const [folder = '', name = '', repetitions = '1'] = process.argv.slice(2);
const columns = (...names: string[]): Float64Array[] => Object.values(readColumns(folder, names));

function estimated<T extends { readonly kind: string }>(outcome: T): Extract<T, { kind: 'estimated' }> {
  if (outcome.kind !== 'estimated') throw new Error(`${name}: ${outcome.kind}`);
  return outcome as Extract<T, { kind: 'estimated' }>;
}

/** Last place of a rising column that is not beyond the age. */
const placeOf = (ages: readonly number[], age: number): number => ages.findLastIndex((each) => each <= age);

const medianOf = (values: readonly number[]): number => {
  const sorted = Float64Array.from(values).sort();
  return (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2;
};

function kaplanMeierRun(): Run<ReturnType<typeof kaplanMeier>> {
  const [ages = new Float64Array(), events = new Float64Array()] = columns('age', 'event');
  return {
    compute: () => kaplanMeier({ ages, events }),
    figures: (answer) => {
      const curve = estimated(answer);
      const at = placeOf(curve.ages, 100_000);
      return [curve.survival, curve.standardErrors, curve.lower, curve.upper].map((column) => column[at]!);
    },
  };
}

function meanCumulativeRun(): Run<ReturnType<typeof meanCumulativeFunction>> {
  const [spanEnds, eventUnits, eventAges] = columns('spanEnd', 'eventUnit', 'eventAge');
  const sample = {
    spanEnds: spanEnds!,
    spanUnits: spanEnds!.map((_, unit) => unit),
    eventUnits: eventUnits!,
    eventAges: eventAges!,
  };
  return {
    compute: () => meanCumulativeFunction(sample),
    figures: (answer) => {
      const curve = estimated(answer);
      const at = placeOf(curve.ages, 100_000);
      return [curve.mean, curve.standardErrors, curve.lower, curve.upper].map((column) => column[at]!);
    },
  };
}

function weibullRun(): Run<ReturnType<typeof fitLifeDistribution>> {
  const [lower, upper] = columns('lower', 'upper');
  return {
    compute: () => fitLifeDistribution('weibull', { lower: lower!, upper: upper! }),
    figures: (answer) => {
      const fit = estimated(answer);
      const { muMu, logSigmaLogSigma } = fit.covariance;
      return [
        weibullShape(fit).estimate,
        lifeScale(fit).estimate,
        Math.sqrt(muMu),
        Math.sqrt(logSigmaLogSigma),
      ];
    },
  };
}

function theilSenRun(): Run<ReturnType<typeof theilSenSlope>> {
  const [x, y] = columns('x', 'y');
  const points: Point[] = Array.from(x!, (each, row) => [each, y![row]!]);
  return {
    compute: () => theilSenSlope(points),
    figures: (answer) => {
      const { slope, interval, intercept } = estimated(answer);
      return [slope, interval!.lower, interval!.upper, intercept];
    },
  };
}

function wearLinesRun(): Run<(readonly number[] | null)[]> {
  const [km, value] = columns('km', 'value');
  const parts: Point[][] = Array.from({ length: km!.length / 8 }, (_, part) =>
    Array.from({ length: 8 }, (__, each) => [km![8 * part + each]!, value![8 * part + each]!]),
  );
  return {
    compute: () =>
      parts.map((points) => {
        const reached = inversePrediction(estimated(ordinaryLeastSquares(points)), 1.5, {
          confidence: 0.9,
          target: 'line',
        });
        return reached.kind === 'estimated'
          ? [reached.x, reached.interval.lower, reached.interval.upper]
          : null;
      }),
    figures: (answers) => {
      const found = answers.filter((each) => each !== null);
      return [
        ...[0, 1, 2].map((place) => medianOf(found.map((each) => each[place]!))),
        answers.length - found.length,
      ];
    },
  };
}

function timed<T>({ compute, figures }: Run<T>): object {
  const seconds: number[] = [];
  for (let repetition = 1; ; repetition += 1) {
    const begun = process.cpuUsage();
    const answer = compute();
    const { user, system } = process.cpuUsage(begun);
    seconds.push((user + system) / 1e6);
    if (repetition >= Number(repetitions)) {
      return { seconds, peakKilobytes: process.resourceUsage().maxRSS, figures: figures(answer) };
    }
  }
}

const runs: Readonly<Record<BenchCase, () => object>> = {
  kaplanMeier: () => timed(kaplanMeierRun()),
  meanCumulativeFunction: () => timed(meanCumulativeRun()),
  intervalCensoredWeibull: () => timed(weibullRun()),
  theilSen: () => timed(theilSenRun()),
  wearLines: () => timed(wearLinesRun()),
};
process.stdout.write(`${JSON.stringify(runs[name as BenchCase]())}\n`);
