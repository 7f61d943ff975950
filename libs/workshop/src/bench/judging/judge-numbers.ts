import type { Characteristic } from '@endfloat/catalogue';
import {
  classifyReading,
  expandedUncertainty,
  isUnitOfKind,
  judgeNumber,
  judgeRatio,
  meanOfQuantities,
  notJudged,
  parseReadingText,
  uncertaintyOfMean,
  compareQuantities,
  type InstrumentProperties,
  type Limit,
  type LimitContext,
  type Quantity,
  type QuantityKind,
  type ReadingClass,
  type ReadingStanding,
  type StatedUncertainty,
  type UncertaintyBudget,
  type UnitCode,
  type Verdict as Judgement,
} from '@endfloat/metrology';
import type { StudiedRepeatability } from '../gauge-studies/studied-repeatability.js';

/** Repeats at one of several like places. */
export interface PlaceNumbers {
  readonly place: string | null;
  readonly shown: readonly { readonly text: string; readonly unit: UnitCode }[];
}

export interface NumbersInput {
  readonly limit: Limit;
  readonly characteristic: Characteristic;
  readonly places: readonly PlaceNumbers[];
  /** null: nobody said which instrument */
  readonly instrument: InstrumentProperties | null;
  /** what a gauge study of the shop found for this kind of instrument; stands before the default of the kind of part */
  readonly studied?: StudiedRepeatability | null;
  readonly context: LimitContext;
  readonly standing: ReadingStanding;
}

export interface NumberJudgement {
  readonly judgement: Judgement;
  readonly uncertainty: UncertaintyBudget | null;
  readonly readingClass: ReadingClass | null;
  readonly place: string | null;
}

const unknownInstrument: InstrumentProperties = { errorModel: { kind: 'unknown' }, resolution: null };

/** A text that was accepted as a reading, as a quantity; exact. */
export function quantityOf({ text, unit }: { readonly text: string; readonly unit: UnitCode }): Quantity {
  const read = parseReadingText(text, unit);
  if (read.kind !== 'reading') throw new RangeError(`a stored reading cannot be read: ${read.kind}`);
  return { value: read.value, unit };
}

/** What an instrument brings to readings of one kind; one that shows another kind of quantity is as good as unknown. */
export function propertiesForKind(
  properties: InstrumentProperties | null,
  kind: QuantityKind,
  steps: readonly Quantity[] = [],
): InstrumentProperties {
  const given = properties ?? unknownInstrument;
  const known = unitsOf(given).every((unit) => isUnitOfKind(kind, unit)) ? given : unknownInstrument;
  return { ...known, resolution: coarser([known.resolution, ...steps], kind) };
}

function unitsOf({ errorModel, resolution }: InstrumentProperties): readonly UnitCode[] {
  const own = resolution === null ? [] : [resolution.unit];
  switch (errorModel.kind) {
    case 'maximumPermissibleError':
      return [...own, errorModel.limit.unit];
    case 'percentOfReadingPlusDigits':
      return [...own, errorModel.digit.unit];
    case 'accuracyClassOfSpan':
      return [...own, errorModel.span.unit];
    case 'bladeSet':
      return [...own, errorModel.permissibleError.unit];
    case 'expandedUncertainty':
      return [...own, errorModel.expanded.unit];
    case 'unknown':
      return own;
  }
}

/** The coarsest of several steps; a fraction read to thirty-seconds is no better than that, whatever the rule shows. */
function coarser(steps: readonly (Quantity | null)[], kind: QuantityKind): Quantity | null {
  return steps.reduce<Quantity | null>((coarsest, step) => {
    if (coarsest === null || step === null) return coarsest ?? step;
    const compared = compareQuantities(step, coarsest, kind);
    return compared.kind === 'compared' && compared.order === 'greater' ? step : coarsest;
  }, null);
}

/**
 * Budget of the mean of repeats, from the instrument, the gauge study of the shop and what the kind of part says about
 * doubt. The scatter of the repeats is pooled with the study, or else with the default, by degrees of freedom.
 */
export function budgetOf(
  {
    characteristic,
    instrument,
    studied = null,
  }: Pick<NumbersInput, 'characteristic' | 'instrument' | 'studied'>,
  shown: PlaceNumbers['shown'],
): UncertaintyBudget {
  const kind = kindOf(characteristic);
  const { doubt } = characteristic;
  const steps = shown.flatMap(({ text, unit }) => {
    const read = parseReadingText(text, unit);
    return read.kind === 'reading' && read.step !== null ? [{ value: read.step, unit }] : [];
  });
  return uncertaintyOfMean({
    readings: shown.map(quantityOf),
    quantityKind: kind,
    instrument: propertiesForKind(instrument, kind, steps),
    setUp: doubt?.setUp == null ? null : { standardUncertainty: doubt.setUp, degreesOfFreedom: 'infinite' },
    priorRepeatability: studied ?? statedRepeatability(doubt),
  });
}

/** The default of the kind of part; null where it states none. */
function statedRepeatability(doubt: Characteristic['doubt']): StatedUncertainty | null {
  if (doubt?.repeatability == null) return null;
  return {
    standardUncertainty: doubt.repeatability,
    degreesOfFreedom: doubt.repeatabilityDegreesOfFreedom ?? 'infinite',
  };
}

/** Judges repeats against one limit; of several like places the worst speaks, and a ratio takes them all. */
export function judgeNumbers(input: NumbersInput): NumberJudgement {
  const { limit, places } = input;
  const isRatio = limit.criterion.kind.startsWith('ratio');
  if (isRatio) return { ...ratioJudgement(input), place: null };
  const judged = places.map((place) => ({ ...placeJudgement(input, place), place: place.place }));
  const [first, ...others] = judged;
  if (first === undefined) throw new RangeError('nothing to judge');
  return others.reduce((worst, next) => (worse(next.judgement, worst.judgement) ? next : worst), first);
}

function placeJudgement(input: NumbersInput, { shown }: PlaceNumbers): Omit<NumberJudgement, 'place'> {
  const { limit, characteristic, context, standing } = input;
  const kind = kindOf(characteristic);
  const uncertainty = budgetOf(input, shown);
  const readings = shown.map(quantityOf);
  const judgement = judgeNumber({
    limit,
    quantityKind: kind,
    readings,
    uncertainty,
    context,
    standing,
    ...(characteristic.lowestPossible === null ? {} : { possible: { lower: characteristic.lowestPossible } }),
  });
  const isClass = judgement.kind === 'notJudged' && judgement.reason === 'classOnly';
  return {
    judgement,
    uncertainty,
    readingClass: isClass ? classOf(limit, readings, uncertainty, kind) : null,
  };
}

function classOf(
  { criterion }: Limit,
  readings: readonly Quantity[],
  uncertainty: UncertaintyBudget,
  kind: QuantityKind,
): ReadingClass | null {
  if (criterion.kind !== 'classes') return null;
  const mean = meanOfQuantities(readings, kind);
  if (mean.kind !== 'converted') return null;
  // Of another unit than the classes, the bare class is given.
  const expanded =
    uncertainty.kind === 'known' && uncertainty.unit === criterion.unit
      ? expandedUncertainty(uncertainty.standardUncertainty, uncertainty.effectiveDegreesOfFreedom, {
          kind: 'factor',
          factor: 2,
        }).expanded
      : 0;
  return classifyReading(criterion, { value: mean.value, unit: mean.unit }, expanded, kind);
}

function ratioJudgement(input: NumbersInput): Omit<NumberJudgement, 'place'> {
  const { limit, characteristic, places, context, standing } = input;
  const isOfTwo = limit.criterion.kind === 'ratioOfTwo';
  const kind = kindOf(characteristic);
  if (places.length < 2 || (isOfTwo && places.length > 2)) {
    return { judgement: notJudged(limit, 'companionMissing'), uncertainty: null, readingClass: null };
  }
  const means = places.map((place) => {
    const mean = meanOfQuantities(place.shown.map(quantityOf), kind);
    if (mean.kind !== 'converted') throw new RangeError(`not a ${kind}: ${mean.kind}`);
    return { value: { value: mean.value, unit: mean.unit }, uncertainty: budgetOf(input, place.shown) };
  });
  const judgement = judgeRatio({ limit, quantityKind: kind, places: means, context, standing });
  return { judgement, uncertainty: null, readingClass: null };
}

const gravity = { outside: 3, undecided: 2, notJudged: 1, inside: 0 } as const;

function worse(one: Judgement, other: Judgement): boolean {
  const rank = (each: Judgement): number => gravity[each.kind === 'notJudged' ? 'notJudged' : each.outcome];
  const chance = (each: Judgement): number => (each.kind === 'judged' ? (each.probabilityInside ?? 1) : 1);
  return rank(one) === rank(other) ? chance(one) < chance(other) : rank(one) > rank(other);
}

function kindOf({ id, quantityKind }: Characteristic): QuantityKind {
  if (quantityKind === null) throw new RangeError(`${id} is no number`);
  return quantityKind;
}
