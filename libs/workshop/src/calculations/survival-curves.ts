import type { UnitCode } from '@endfloat/metrology';
import {
  curveQuantile,
  kaplanMeier,
  survivalAtAge,
  turnbullEstimate,
  type CurveLimitForm,
  type SurvivalCurve,
} from '@endfloat/statistics';
import { calculated, type CalculationMethod } from './calculation-method.js';
import { requireColumns, refusing } from './refusing.js';

export const survivalCurves: CalculationMethod = {
  id: 'kaplan-meier-curves',
  title: 'Share surviving by age, right-censored lives with late entry',
  name: 'kaplanMeier',
  variant:
    "product limit with Greenwood's variance; limits plain, log or log-log (the default), pointwise; a censored age equal to an event age is at risk there; quantile limits by Brookmeyer and Crowley",
  source: 'Kaplan & Meier (1958), JASA 53:457-481; Kalbfleisch & Prentice (2002), 1.4',
  caseIds: ['nist-weibull-kaplan-meier', 'generator-fans-kaplan-meier'],
};

export interface SurvivalCurveCommand {
  readonly unit?: UnitCode | undefined;
  readonly ages: readonly number[];
  readonly events: readonly number[];
  readonly entryAges?: readonly number[] | undefined;
  readonly weights?: readonly number[] | undefined;
  readonly limitForm?: CurveLimitForm | undefined;
  readonly level?: number | undefined;
  readonly atAges?: readonly number[] | undefined;
  readonly failedShares?: readonly number[] | undefined;
}

/** Kaplan-Meier curve with what it says at chosen ages and shares. */
export function calculateSurvivalCurve(command: SurvivalCurveCommand) {
  const { unit = '1', ages, events, entryAges, weights, atAges = [], failedShares = [] } = command;
  const { limitForm = 'logLog', level = 0.95 } = command;
  requireColumns({ ages, events, entryAges, weights });
  const curve = refusing(['ages', 'events', 'entryAges', 'weights'], () =>
    kaplanMeier({ ages, events, entryAges, weights }, { limitForm, level }),
  );
  const result =
    curve.kind === 'estimated'
      ? {
          ...curve,
          at: atAges.map((age) => atAge(curve, age)),
          quantiles: failedShares.map((share) => quantileOf(curve, share)),
        }
      : curve;
  return calculated(survivalCurves, ages.length, { unit, result });
}

function atAge(curve: SurvivalCurve, age: number) {
  const found = survivalAtAge(curve, age);
  if (found.kind === 'beyondObservation') return { age, survival: null, lower: null, upper: null };
  return { age, survival: found.survival, lower: found.lower, upper: found.upper };
}

function quantileOf(curve: SurvivalCurve, failedShare: number) {
  const found = curveQuantile(curve, failedShare);
  if (found.kind === 'notReached') return { failedShare, age: null, lower: null, upper: null };
  return { failedShare, age: found.age, lower: found.lower, upper: found.upper };
}

export const turnbullEstimates: CalculationMethod = {
  id: 'turnbull-estimates',
  title: 'Share surviving where lives are known only to lie between inspections',
  name: 'turnbullEstimate',
  variant:
    'non-parametric maximum likelihood over innermost intervals (lower, upper]; standard errors from the observed information, limits as of the survival curve; late entry is refused, since the estimate then need not exist',
  source: 'Turnbull (1976), JRSS B 38:290-295; Meeker & Escobar (1998), ch. 3',
  caseIds: ['heat-exchanger-turnbull'],
};

export interface LivesCommand {
  readonly unit?: UnitCode | undefined;
  readonly lower: readonly number[];
  readonly upper: readonly (number | null)[];
  readonly entryAges?: readonly number[] | undefined;
  readonly weights?: readonly number[] | undefined;
}

/** Lives as intervals; an open upper end stands for a unit that was still good. */
export function livesOf({ lower, upper, entryAges, weights }: LivesCommand) {
  requireColumns({ lower, upper, entryAges, weights });
  return { lower, upper: upper.map((end) => end ?? Infinity), entryAges, weights };
}

export interface TurnbullCommand extends Omit<LivesCommand, 'entryAges'> {
  readonly limitForm?: CurveLimitForm | undefined;
  readonly level?: number | undefined;
}

/** Non-parametric survival curve of inspection data. */
export function calculateTurnbullEstimate(command: TurnbullCommand) {
  const { unit = '1', limitForm = 'logLog', level = 0.95 } = command;
  const curve = refusing(['lower', 'upper', 'weights'], () =>
    turnbullEstimate(livesOf(command), { limitForm, level }),
  );
  const result =
    curve.kind === 'estimated'
      ? { ...curve, upperAges: curve.upperAges.map((age) => (Number.isFinite(age) ? age : null)) }
      : curve;
  return calculated(turnbullEstimates, command.lower.length, { unit, result });
}
