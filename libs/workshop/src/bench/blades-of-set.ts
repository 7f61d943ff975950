import { compareQuantities, type Quantity, type UnitCode } from '@endfloat/metrology';
import { DomainError, type Fault } from '../errors/domain.errors.js';
import type { Instrument } from '../ports/records/bench.records.js';
import type { EnteredResult } from './entered-reading.js';
import { quantityOf } from './judging/judge-numbers.js';

type EnteredPair = Extract<EnteredResult, { kind: 'bladePair' }>;

const members = ['largestClosed', 'smallestOpen'] as const;

/**
 * Refuses a pair of blades that cannot have been read so: the switch still closed at a blade that is not thinner than the
 * one at which it is open, or a blade that is not in the set it was taken with.
 *
 * @param instrument  taken with; a set without a list of its blades refuses none
 * @param at          JSON Pointer of the reading in the request
 */
export function refuseImpossiblePair(pair: EnteredPair, instrument: Instrument | null, at: string): void {
  const faults = [...wrongOrder(pair, at), ...foreignBlades(pair, instrument, at)];
  if (faults.length === 0) return;
  throw new DomainError('reading.doesNotFitCheck', faults[0]!.detail, faults);
}

function wrongOrder({ largestClosed, smallestOpen, unit }: EnteredPair, at: string): readonly Fault[] {
  if (largestClosed === null || smallestOpen === null) return [];
  const order = orderOf(blade(largestClosed, unit), blade(smallestOpen, unit));
  if (order === 'less') return [];
  return [
    {
      pointer: `${at}/result/smallestOpen`,
      rule: 'largerThanClosed',
      detail: `Closed at ${largestClosed} ${unit} and open at ${smallestOpen} ${unit} cannot both be: the blade at which it is open is the larger one. Look whether the two were exchanged, then clean the contact and read both again.`,
    },
  ];
}

function foreignBlades(pair: EnteredPair, instrument: Instrument | null, at: string): readonly Fault[] {
  const model = instrument?.properties.errorModel;
  if (model?.kind !== 'bladeSet' || model.blades.length === 0) return [];
  const list = model.blades.map(({ value, unit }) => `${value} ${unit}`).join(', ');
  return members.flatMap((member) => {
    const text = pair[member];
    if (text === null) return [];
    const entered = blade(text, pair.unit);
    if (model.blades.some((each) => orderOf(each, entered) === 'equal')) return [];
    return [
      {
        pointer: `${at}/result/${member}`,
        rule: 'bladeOfSet',
        detail: `${text} ${pair.unit} is no blade of the set "${instrument?.name ?? ''}", which has ${list}. Enter the blade that was used, name the set it is from, or correct the list of this set.`,
      },
    ];
  });
}

const blade = (text: string, unit: UnitCode): Quantity => quantityOf({ text, unit });

function orderOf(one: Quantity, other: Quantity): 'less' | 'equal' | 'greater' | null {
  const compared = compareQuantities(one, other, 'length');
  return compared.kind === 'compared' ? compared.order : null;
}
