import {
  combineUncertainty,
  conformanceProbability,
  convertQuantity,
  expandedUncertainty,
  globalRisk,
  guardBandZone,
  outcomeOfProbability,
  upperAcceptanceLimit,
  type ConformanceInput,
  type DegreesOfFreedom,
  type OpenInterval,
  type PopulationPrior,
  type Quantity,
  type QuantityKind,
  type UnitCode,
} from '@endfloat/metrology';
import { DomainError, invalidInput } from '../errors/domain.errors.js';
import { calculated, type CalculationMethod } from './calculation-method.js';
import { refusing } from './refusing.js';

export const uncertaintyBudgets: CalculationMethod = {
  id: 'uncertainty-budgets',
  title: 'Combined and expanded uncertainty of independent contributions',
  name: 'gumBudget',
  variant:
    'root sum of squares; effective degrees of freedom by Welch-Satterthwaite, cut to the next lower whole number before the t factor',
  source: 'JCGM 100:2008 (GUM), 5.1, G.4.1',
  caseIds: [
    'gum-end-gauge',
    'gum-end-gauge-second-order',
    'gum-twenty-temperatures',
    'gum-resolution',
    'gum-rectangular',
  ],
};

export interface BudgetCommand {
  readonly unit?: UnitCode | undefined;
  readonly components: readonly {
    readonly name: string;
    readonly standardUncertainty: number;
    readonly degreesOfFreedom?: number | null | undefined;
    readonly sensitivity?: number | undefined;
  }[];
  readonly level?: number | undefined;
}

const finiteOr = (degrees: DegreesOfFreedom): number | null => (degrees === 'infinite' ? null : degrees);

/** Uncertainty budget. */
export function calculateUncertaintyBudget({ unit = '1', components, level = 0.95 }: BudgetCommand) {
  const result = refusing(['components', 'level'], () => {
    const combined = combineUncertainty(
      components.map(({ standardUncertainty, degreesOfFreedom, sensitivity = 1 }) => ({
        source: 'other',
        standardUncertainty,
        degreesOfFreedom: degreesOfFreedom ?? 'infinite',
        sensitivity,
      })),
    );
    const { standardUncertainty, effectiveDegreesOfFreedom, contributions } = combined;
    const { expanded, coverageFactor, degreesOfFreedom } = expandedUncertainty(
      standardUncertainty,
      effectiveDegreesOfFreedom,
      { kind: 'level', level },
    );
    return {
      standardUncertainty,
      effectiveDegreesOfFreedom: finiteOr(effectiveDegreesOfFreedom),
      expanded,
      coverageFactor,
      coverageDegreesOfFreedom: finiteOr(degreesOfFreedom),
      level,
      contributions: contributions.map((each, index) => ({
        name: components[index]?.name ?? '',
        standardUncertainty: each.standardUncertainty,
        share: each.share,
      })),
    };
  });
  return calculated(uncertaintyBudgets, components.length, { unit, result });
}

export const conformances: CalculationMethod = {
  id: 'conformances',
  title: 'Does a measured value meet a limit, given its uncertainty?',
  name: 'conformanceProbability',
  variant:
    "normal or Student's t about the value, or with a normal prior; cut at physical bounds; inside at 0.95 or more, outside at 0.05 or less unless told, else undecided; guard-band zones take a value on an edge to the clear side",
  source: 'JCGM 106:2012, 7 and 8; ILAC-G8:09/2019, 4.2.3',
  caseIds: ['jcgm-106-zener-voltage', 'jcgm-106-burst-strength', 'ilac-g8-guard-band'],
};

export interface ConformanceCommand {
  readonly unit?: UnitCode | undefined;
  readonly value: number;
  readonly standardUncertainty: number;
  readonly degreesOfFreedom?: number | null | undefined;
  readonly permitted: OpenInterval;
  readonly possible?: OpenInterval | undefined;
  readonly prior?: ConformanceInput['prior'] | undefined;
  readonly insideFrom?: number | undefined;
  readonly outsideTo?: number | undefined;
  readonly guardBand?: number | undefined;
}

/** Probability that the limit is met, the verdict by it, and the guard-band zone. */
export function calculateConformance(command: ConformanceCommand) {
  const { unit = '1', value, standardUncertainty, degreesOfFreedom, permitted, guardBand } = command;
  const { insideFrom = 0.95, outsideTo = 0.05 } = command;
  const { lower, upper } = permitted;
  if (lower === null && upper === null)
    throw invalidInput('/permitted', 'limit', 'Give a lower or an upper limit, or both.');
  requireOrder('/permitted', permitted);
  if (command.possible !== undefined) requireOrder('/possible', command.possible);
  if (!(outsideTo < insideFrom))
    throw invalidInput('/outsideTo', 'order', 'outsideTo lies below insideFrom.');
  const probability = refusing(['standardUncertainty', 'value', 'permitted', 'possible'], () =>
    conformanceProbability({
      value,
      standardUncertainty,
      degreesOfFreedom: degreesOfFreedom ?? 'infinite',
      permitted,
      possible: command.possible ?? { lower: null, upper: null },
      prior: command.prior ?? null,
    }),
  );
  const zones =
    guardBand === undefined
      ? null
      : {
          guardBand,
          atLower: lower === null ? null : guardBandZone(value, lower, guardBand, 'lower'),
          atUpper: upper === null ? null : guardBandZone(value, upper, guardBand, 'upper'),
        };
  const result =
    probability.kind === 'probability'
      ? {
          ...probability,
          outcome: outcomeOfProbability(probability.inside, { inside: insideFrom, outside: outsideTo }),
        }
      : probability;
  return calculated(conformances, 1, { unit, result, zones });
}

function requireOrder(pointer: string, { lower, upper }: OpenInterval): void {
  if (lower !== null && upper !== null && lower > upper)
    throw invalidInput(pointer, 'order', 'The lower limit does not lie above the upper one.');
}

export const globalRisks: CalculationMethod = {
  id: 'global-risks',
  title: 'Risks of accepting what is bad and refusing what is good, over a population',
  name: 'globalRisk',
  variant:
    'normal measurement error over a normal or gamma population; joint probabilities; acceptance limit for a wanted consumer risk with an upper limit',
  source: 'JCGM 106:2012, 9.5',
  caseIds: ['jcgm-106-global-risk'],
};

export interface GlobalRiskCommand {
  readonly unit?: UnitCode | undefined;
  readonly population: PopulationPrior;
  readonly standardUncertainty: number;
  readonly permitted: OpenInterval;
  readonly acceptance?: OpenInterval | undefined;
  readonly wantedConsumerRisk?: number | undefined;
}

/** Global risks, and the acceptance limit that reaches a wanted one. */
export function calculateGlobalRisk(command: GlobalRiskCommand) {
  const { unit = '1', population, standardUncertainty, permitted, wantedConsumerRisk } = command;
  requireOrder('/permitted', permitted);
  if (command.acceptance !== undefined) requireOrder('/acceptance', command.acceptance);
  if (wantedConsumerRisk !== undefined && (permitted.upper === null || permitted.lower !== null)) {
    throw invalidInput(
      '/wantedConsumerRisk',
      'upperLimit',
      'An acceptance limit is found for a single upper limit only.',
    );
  }
  const found = refusing(['population', 'standardUncertainty', 'permitted', 'acceptance'], () => ({
    result: globalRisk(population, standardUncertainty, permitted, command.acceptance ?? permitted),
    acceptanceLimit:
      wantedConsumerRisk === undefined
        ? null
        : upperAcceptanceLimit(population, standardUncertainty, permitted.upper!, wantedConsumerRisk),
  }));
  return calculated(globalRisks, 0, { unit, ...found });
}

export const unitConversions: CalculationMethod = {
  id: 'unit-conversions',
  title: 'The same quantity in another unit',
  name: 'exactConversion',
  variant:
    'exact decimal factors; a kind of quantity is never converted into another, nor gauge into absolute pressure',
  source: 'NIST SP 811 (2008), Appendix B; BIPM SI Brochure',
  caseIds: ['sp-811-printed-factors', 'sp-811-exact-factors'],
};

/** Conversion by exact factors. */
export function calculateUnitConversion({
  quantity,
  quantityKind,
  unit,
}: {
  readonly quantity: Quantity;
  readonly quantityKind: QuantityKind;
  readonly unit: UnitCode;
}) {
  const found = convertQuantity(quantity, quantityKind, unit);
  if (found.kind === 'wrongKindOfUnit') {
    const pointer = found.unit === quantity.unit ? '/quantity/unit' : '/unit';
    throw new DomainError(
      'unit.mismatch',
      `${found.unit} is no unit of ${quantityKind}; it is given in ${found.allowed.join(', ')}.`,
      [{ pointer, rule: 'unitOfKind', detail: `must be one of ${found.allowed.join(', ')}` }],
    );
  }
  if (found.kind !== 'converted') {
    throw invalidInput(
      '/quantity/value',
      found.kind,
      found.kind === 'outsidePhysicalRange'
        ? `There is no ${quantityKind} below ${found.lowest.value} ${found.lowest.unit}.`
        : 'Give a plain decimal number with fewer digits.',
    );
  }
  return calculated(unitConversions, 1, { result: { value: found.value, unit: found.unit } });
}
