import type { Characteristic, Check, CheckSheet, ComponentType } from '@endfloat/catalogue';
import {
  compareQuantities,
  parseQuantity,
  parseReadingText,
  quantityKindTable,
  type Quantity,
  type QuantityKind,
  type UnitCode,
} from '@endfloat/metrology';
import { DomainError, type Fault } from '../errors/domain.errors.js';
import type { Reading, ReadingPhase } from '../ports/records/bench.records.js';
import type { Warning } from '../ports/records/vehicles.records.js';
import { characteristicOf, positionsOf } from './judging/bench-case.js';

/** A result as a person enters it; texts exactly as written. */
export type EnteredResult =
  | { readonly kind: 'number'; readonly shown: string; readonly unit: UnitCode }
  | {
      readonly kind: 'bladePair';
      readonly largestClosed: string | null;
      readonly smallestOpen: string | null;
      readonly unit: UnitCode;
    }
  | { readonly kind: 'yesNo'; readonly answer: boolean }
  | { readonly kind: 'grade'; readonly grade: string };

export interface ReadingEntry {
  readonly checkId: string;
  readonly phase: ReadingPhase;
  /** null: the only place this kind of part has */
  readonly position: string | null;
  readonly place: string | null;
  readonly result: EnteredResult;
  readonly instrumentId: string | null;
  readonly measuredBy: string;
  readonly takenAt: string;
  readonly conditions: Readonly<Record<string, string>>;
  readonly note: string | null;
}

export type ResultContent = Pick<
  Reading,
  'resultKind' | 'shown' | 'unit' | 'canonicalValue' | 'canonicalUnit' | 'pair' | 'answer' | 'grade'
> & { readonly implausible: Warning | null };

/** More digits before the point than this are no measurement of anything on a van, and fit no column. */
const mostIntegerDigits = 12;

/** The check of the sheet an entry is for. */
export function checkOf(sheet: CheckSheet, checkId: string, at: string): Check {
  const check = sheet.checks.find(({ id }) => id === checkId);
  if (check !== undefined) return check;
  throw doesNotFit(`The sheet "${sheet.id}" has no check "${checkId}".`, {
    pointer: `${at}/checkId`,
    rule: 'reference',
    detail: 'no such check on the sheet of this inspection',
  });
}

/** Where on the vehicle: given, or the only place there is. */
export function positionOf(
  types: readonly ComponentType[],
  check: Check,
  given: string | null,
  at: string,
): string {
  const positions = positionsOf(types, check);
  const position = given ?? (positions.length === 1 ? positions[0] : undefined);
  if (position !== undefined && positions.includes(position)) return position;
  throw doesNotFit(`Say where the reading was taken: ${positions.join(', ')}.`, {
    pointer: `${at}/position`,
    rule: 'position',
    detail: `one of ${positions.join(', ')}`,
  });
}

/** Reads a result for a check: the text is kept, the value is exact, the unit is of the right kind and never guessed. */
export function resultContent(
  types: readonly ComponentType[],
  check: Pick<Check, 'id' | 'componentTypeId' | 'characteristicId' | 'resultKind'>,
  result: EnteredResult,
  at: string,
): ResultContent {
  if (result.kind !== check.resultKind) {
    throw doesNotFit(
      `The check "${check.id}" is answered by ${words[check.resultKind]}, not by ${words[result.kind]}.`,
      {
        pointer: `${at}/result/kind`,
        rule: 'resultKind',
        detail: check.resultKind,
      },
    );
  }
  const characteristic = characteristicOf(types, check);
  switch (result.kind) {
    case 'number': {
      const canonical = readValue(characteristic, result.shown, result.unit, `${at}/result`, 'shown');
      return {
        ...empty,
        resultKind: 'number',
        shown: result.shown,
        unit: result.unit,
        canonicalValue: canonical.value,
        canonicalUnit: canonical.unit,
        implausible: implausible(characteristic, [canonical], '/result/shown'),
      };
    }
    case 'bladePair':
      return pairContent(characteristic, result, `${at}/result`);
    case 'yesNo':
      return { ...empty, resultKind: 'yesNo', answer: result.answer };
    case 'grade':
      return { ...empty, resultKind: 'grade', grade: result.grade };
  }
}

const words = {
  number: 'a number',
  bladePair: 'a pair of blades',
  yesNo: 'yes or no',
  grade: 'a grade',
} as const;

const empty = {
  shown: null,
  unit: null,
  canonicalValue: null,
  canonicalUnit: null,
  pair: null,
  answer: null,
  grade: null,
  implausible: null,
} as const;

function pairContent(
  characteristic: Characteristic,
  { largestClosed, smallestOpen, unit }: Extract<EnteredResult, { kind: 'bladePair' }>,
  at: string,
): ResultContent {
  const values = [
    ...(largestClosed === null ? [] : [readValue(characteristic, largestClosed, unit, at, 'largestClosed')]),
    ...(smallestOpen === null ? [] : [readValue(characteristic, smallestOpen, unit, at, 'smallestOpen')]),
  ];
  if (values.length === 0) {
    throw doesNotFit('A pair needs at least one blade.', {
      pointer: `${at}/largestClosed`,
      rule: 'required',
      detail: 'give largestClosed, smallestOpen or both',
    });
  }
  return {
    ...empty,
    resultKind: 'bladePair',
    unit,
    canonicalUnit: values[0]?.unit ?? null,
    pair: { largestClosed, smallestOpen },
    implausible: implausible(
      characteristic,
      values,
      largestClosed === null ? '/result/smallestOpen' : '/result/largestClosed',
    ),
  };
}

function readValue(
  { id, quantityKind }: Characteristic,
  text: string,
  unit: UnitCode,
  at: string,
  member: string,
): Quantity {
  if (quantityKind === null) throw new RangeError(`${id} is no number`);
  const { units } = quantityKindTable[quantityKind];
  if (!units.includes(unit)) {
    throw new DomainError('unit.mismatch', mismatch(quantityKind, unit), [
      { pointer: `${at}/unit`, rule: 'unitOfKind', detail: `one of ${units.join(', ')}` },
    ]);
  }
  const read = parseReadingText(text, unit);
  const pointer = `${at}/${member}`;
  if (read.kind !== 'reading') {
    const detail = {
      notAReading: 'digits with a point before decimals, or for inches a fraction such as 2/32',
      fractionNotOfInches: 'fractions are read for inches only',
      tooManyDigits: 'at most 18 digits',
    }[read.kind];
    throw doesNotFit(`"${text.slice(0, 40)}" cannot be read as ${unit}.`, {
      pointer,
      rule: 'reading',
      detail,
    });
  }
  const parsed = parseQuantity(read.value, unit, quantityKind);
  if (parsed.kind !== 'quantity') {
    throw doesNotFit(`${text.slice(0, 40)} ${unit} is no possible ${quantityKind}.`, {
      pointer,
      rule: parsed.kind,
      detail: 'below what is physically possible, or not a number',
    });
  }
  if ((parsed.canonical.value.split('.')[0] ?? '').replace('-', '').length > mostIntegerDigits) {
    throw doesNotFit('The number is far too large for anything on a vehicle.', {
      pointer,
      rule: 'tooLarge',
      detail: `at most ${String(mostIntegerDigits)} digits before the point, in ${parsed.canonical.unit}`,
    });
  }
  return parsed.canonical;
}

function mismatch(kind: QuantityKind, unit: UnitCode): string {
  return `${unit} is no unit of ${kindWords[kind] ?? kind}. The unit is never guessed: read the instrument again, or choose the check it belongs to.`;
}

const kindWords: Partial<Record<QuantityKind, string>> = {
  gaugePressure: 'pressure above the surrounding air',
  absolutePressure: 'absolute pressure',
  rotationalSpeed: 'speed of rotation',
  volumeFraction: 'share of volume',
  temperatureDifference: 'difference of temperatures',
  fuelConsumption: 'fuel consumption',
  electricCharge: 'electric charge',
};

/** A value outside what is plausible is stored, stays unjudged, and waits for somebody to confirm it. */
function implausible(
  { plausible, quantityKind }: Characteristic,
  values: readonly Quantity[],
  pointer: string,
): Warning | null {
  if (plausible === null || quantityKind === null) return null;
  const { lowest, highest } = plausible;
  const order = (one: Quantity, other: Quantity): string => {
    const compared = compareQuantities(one, other, quantityKind);
    return compared.kind === 'compared' ? compared.order : 'less';
  };
  const outside = values.some(
    (value) => order(value, lowest) === 'less' || order(value, highest) === 'greater',
  );
  if (!outside) return null;
  return {
    code: 'valueToConfirm',
    pointer,
    values: { lowest: lowest.value, highest: highest.value, unit: lowest.unit },
  };
}

export function doesNotFit(message: string, fault: Fault): DomainError {
  return new DomainError('reading.doesNotFitCheck', message, [fault]);
}
