import {
  canonicalStep,
  combineUncertainty,
  furtherReadings,
  instrumentUncertainty,
  isUnitOfKind,
  mostFurtherReadings,
  resolutionUncertainty,
  type InstrumentErrorModel,
  type OpenInterval,
  type Quantity,
  type QuantityKind,
  type UnitCode,
  type UncertaintyComponent,
} from '@endfloat/metrology';
import { DomainError, invalidInput } from '../errors/domain.errors.js';
import { calculated, type CalculationMethod } from './calculation-method.js';
import { refusing } from './refusing.js';

export const instrumentUncertainties: CalculationMethod = {
  id: 'instrument-uncertainties',
  title: 'What the stated error of an instrument comes to at a reading',
  name: 'instrumentUncertainty',
  variant:
    'a stated bound (permissible error, per cent of reading plus digits, class of span, blade) is rectangular: half-width / sqrt(3); a certificate is divided by its coverage factor; resolution is step / sqrt(12), added as root sum of squares',
  source: 'JCGM 100:2008, 4.3.3, 4.3.7 and F.2.2.1',
  caseIds: ['gum-instrument-specifications', 'gum-resolution', 'gum-rectangular'],
};

type Certificate = Extract<InstrumentErrorModel, { readonly kind: 'expandedUncertainty' }>;

/** An error model whose certificate has null for degrees of freedom as good as known. */
export type StatedErrorModel =
  | Exclude<InstrumentErrorModel, Certificate>
  | (Omit<Certificate, 'degreesOfFreedom'> & { readonly degreesOfFreedom: number | null });

export interface InstrumentUncertaintyCommand {
  readonly quantityKind: QuantityKind;
  readonly reading: Quantity;
  readonly errorModel: StatedErrorModel;
  readonly resolution?: Quantity | null | undefined;
}

/** Standard uncertainty of an instrument at a reading, in the unit of the reading. */
export function calculateInstrumentUncertainty(command: InstrumentUncertaintyCommand) {
  const { quantityKind, reading, resolution = null } = command;
  const errorModel = modelOf(command.errorModel);
  const { unit } = reading;
  const stated = quantitiesOf(errorModel);
  if (resolution !== null) stated.push(['resolution', resolution]);
  for (const [name, quantity] of [['reading', reading] as const, ...stated]) {
    if (!isUnitOfKind(quantityKind, quantity.unit)) throw wrongUnit(name, quantity, quantityKind);
    if (name !== 'reading' && quantity.value.startsWith('-')) {
      throw invalidInput(`/${name}/value`, 'notNegative', 'A bound, a step or a span is not negative.');
    }
  }
  const found = refusing(['errorModel'], () => instrumentUncertainty(errorModel, reading, quantityKind));
  const one = canonicalStep({ value: '1', unit }, quantityKind);
  const step = resolution === null ? null : canonicalStep(resolution, quantityKind);
  const result =
    found.kind !== 'known' || one.kind !== 'step' || step?.kind === 'scaleNotLinear'
      ? { kind: 'unknown' as const, why: found.kind === 'unknown' ? found.why : ('scaleNotLinear' as const) }
      : inUnit(found, step === null ? null : step.value, one.value);
  return calculated(instrumentUncertainties, 1, { unit, result });
}

function inUnit(
  found: Extract<ReturnType<typeof instrumentUncertainty>, { kind: 'known' }>,
  step: number | null,
  size: number,
) {
  const ofError: UncertaintyComponent = {
    source: 'instrument',
    standardUncertainty: found.standardUncertainty / size,
    degreesOfFreedom: found.degreesOfFreedom,
  };
  const ofResolution = step === null ? null : resolutionUncertainty(step / size);
  const terms: UncertaintyComponent[] =
    ofResolution === null
      ? [ofError]
      : [ofError, { source: 'resolution', standardUncertainty: ofResolution, degreesOfFreedom: 'infinite' }];
  const isAny = terms.some((term) => term.standardUncertainty > 0);
  return {
    kind: 'known' as const,
    standardUncertainty: isAny ? combineUncertainty(terms).standardUncertainty : 0,
    ofError: ofError.standardUncertainty,
    ofResolution,
    halfWidth: found.halfWidth === null ? null : found.halfWidth / size,
    degreesOfFreedom: found.degreesOfFreedom === 'infinite' ? null : found.degreesOfFreedom,
  };
}

const modelOf = (stated: StatedErrorModel): InstrumentErrorModel =>
  stated.kind === 'expandedUncertainty'
    ? { ...stated, degreesOfFreedom: stated.degreesOfFreedom ?? 'infinite' }
    : stated;

/** Quantities of an error model with where they stand in the request. */
function quantitiesOf(model: InstrumentErrorModel): (readonly [string, Quantity])[] {
  switch (model.kind) {
    case 'maximumPermissibleError':
      return [['errorModel/limit', model.limit]];
    case 'percentOfReadingPlusDigits':
      return [['errorModel/digit', model.digit]];
    case 'accuracyClassOfSpan':
      return [['errorModel/span', model.span]];
    case 'bladeSet':
      return [
        ['errorModel/permissibleError', model.permissibleError],
        ...model.blades.map((blade, place) => [`errorModel/blades/${place}`, blade] as const),
      ];
    case 'expandedUncertainty':
      return [['errorModel/expanded', model.expanded]];
    case 'unknown':
      return [];
  }
}

const wrongUnit = (name: string, { unit }: Quantity, kind: QuantityKind): DomainError =>
  new DomainError('unit.mismatch', `${unit} is no unit of ${kind}.`, [
    { pointer: `/${name}/unit`, rule: 'unitOfKind', detail: `must be a unit of ${kind}` },
  ]);

export const furtherReadingCounts: CalculationMethod = {
  id: 'further-reading-counts',
  title: 'How many more readings would settle it?',
  name: 'furtherReadings',
  variant: `the mean and its scatter stay as they are; only repeatability averages out, each further reading adds a degree of freedom to it; settled at 0.95 inside or 0.05 unless told; none proposed beyond ${mostFurtherReadings}`,
  source: 'JCGM 106:2012, 7.2; JCGM 100:2008, 4.2.3 and G.4.1',
  caseIds: ['further-readings-by-hand'],
};

export interface FurtherReadingsCommand {
  readonly unit?: UnitCode | undefined;
  readonly mean: number;
  readonly count: number;
  readonly standardDeviation: number;
  readonly degreesOfFreedom?: number | null | undefined;
  readonly otherStandardUncertainty?: number | undefined;
  readonly permitted: OpenInterval;
  readonly insideFrom?: number | undefined;
  readonly outsideTo?: number | undefined;
}

/** Readings still needed until a mean is inside or outside its limits. */
export function calculateFurtherReadings(command: FurtherReadingsCommand) {
  const { unit = '1', mean, count, standardDeviation, permitted, otherStandardUncertainty = 0 } = command;
  const { insideFrom = 0.95, outsideTo = 0.05 } = command;
  const degreesOfFreedom = command.degreesOfFreedom ?? 'infinite';
  if (permitted.lower === null && permitted.upper === null)
    throw invalidInput('/permitted', 'limit', 'Give a lower or an upper limit, or both.');
  if (!(outsideTo < insideFrom))
    throw invalidInput('/outsideTo', 'order', 'outsideTo lies below insideFrom.');
  if (!(standardDeviation > 0 || otherStandardUncertainty > 0))
    throw invalidInput(
      '/standardDeviation',
      'positive',
      'Without any uncertainty nothing is left to settle.',
    );
  const terms: readonly UncertaintyComponent[] = [
    {
      source: 'repeatability',
      standardUncertainty: standardDeviation / Math.sqrt(count),
      degreesOfFreedom,
    },
    { source: 'other', standardUncertainty: otherStandardUncertainty, degreesOfFreedom: 'infinite' },
  ];
  const result = refusing(['permitted', 'mean', 'standardDeviation'], () => {
    const budget = combineUncertainty(terms);
    return furtherReadings(
      {
        value: mean,
        standardUncertainty: budget.standardUncertainty,
        degreesOfFreedom: budget.effectiveDegreesOfFreedom,
        permitted,
        possible: { lower: null, upper: null },
        prior: null,
      },
      {
        kind: 'known',
        unit,
        standardUncertainty: budget.standardUncertainty,
        effectiveDegreesOfFreedom: budget.effectiveDegreesOfFreedom,
        contributions: budget.contributions,
        repeatability: { standardDeviation, degreesOfFreedom, count },
        method: furtherReadingCounts.name,
      },
      { inside: insideFrom, outside: outsideTo },
    );
  });
  return calculated(furtherReadingCounts, count, { unit, result });
}
