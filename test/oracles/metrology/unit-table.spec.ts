import type { QuantityKind, UnitCode } from '@endfloat/metrology';
import { convertQuantity, quantityKinds, quantityKindTable } from '@endfloat/metrology';
import ucumPackage from '@lhncbc/ucum-lhc';

/**
 * The unit table against an independent implementation of UCUM that works in floating point (100 mi come out as
 * 160.93439999999998 km), hence 1e-12 and not equality.
 */
const ucum = ucumPackage.UcumLhcUtils.getInstance();

/** Codes of this project that UCUM does not have. */
const ownCodes: ReadonlySet<UnitCode> = new Set(["[in_i'Hg_32degF]", "[in_i'Hg_60degF]"]);

/** UCUM rounds the metre of mercury to 133.322 kPa; the conventional one is 133.322387415 kPa, 2.9e-6 more. */
const isMercury = (unit: UnitCode): boolean => unit === "[in_i'Hg]" || unit === 'mm[Hg]';

const isPerVolume = (unit: UnitCode): boolean => unit === 'km/L' || unit.startsWith('[mi_i]/[gal');

interface Pair {
  readonly kind: QuantityKind;
  readonly from: UnitCode;
  readonly to: UnitCode;
}

const pairs: readonly Pair[] = quantityKinds.flatMap((kind) =>
  quantityKindTable[kind].units.flatMap((from) =>
    quantityKindTable[kind].units.map((to) => ({ kind, from, to })),
  ),
);

const ours = (value: string, { kind, from, to }: Pair): number => {
  const converted = convertQuantity({ value, unit: from }, kind, to);
  if (converted.kind !== 'converted') throw new Error(`${from} to ${to}: ${converted.kind}`);
  return Number(converted.value);
};

const theirs = (value: number, from: string, to: string): number => {
  const { status, toVal } = ucum.convertUnitTo(from, value, to);
  if (status !== 'succeeded' || toVal === null) throw new Error(`UCUM refuses ${from} to ${to}`);
  return toVal;
};

describe('the unit table against an independent UCUM implementation', () => {
  const comparable = pairs.filter(
    ({ kind, from, to }) =>
      // UCUM converts degrees as points on a scale; a difference of temperatures is compared below.
      kind !== 'temperatureDifference' &&
      !ownCodes.has(from) &&
      !ownCodes.has(to) &&
      isPerVolume(from) === isPerVolume(to),
  );

  it.each(quantityKinds.filter((kind) => kind !== 'temperatureDifference'))(
    'agrees for every pair of units of %s',
    (kind) => {
      for (const pair of comparable.filter((candidate) => candidate.kind === kind)) {
        for (const value of ['1', '17.25', '300']) {
          const [mine, reference] = [ours(value, pair), theirs(Number(value), pair.from, pair.to)];
          const tolerance = isMercury(pair.from) === isMercury(pair.to) ? 1e-12 : 3e-6;
          const allowed = tolerance * Math.max(Math.abs(reference), kind === 'temperature' ? 273 : 0);
          if (!(Math.abs(mine - reference) <= allowed)) {
            throw new Error(`${value} ${pair.from} in ${pair.to}: ${mine}, reference ${reference}`);
          }
        }
      }
      expect(comparable.some((pair) => pair.kind === kind)).toBe(true);
    },
  );

  it('agrees for differences of temperature: a difference of two converted points', () => {
    for (const from of quantityKindTable.temperatureDifference.units) {
      const reference = theirs(40, from, 'K') - theirs(10, from, 'K');
      expect(ours('30', { kind: 'temperatureDifference', from, to: 'K' })).toBeCloseTo(reference, 9);
    }
  });

  it('agrees for distance per volume turned into volume per distance, which UCUM cannot do in one step', () => {
    for (const from of quantityKindTable.fuelConsumption.units.filter(isPerVolume)) {
      const kilometresPerLitre = theirs(30, from, 'km/L');
      expect(ours('30', { kind: 'fuelConsumption', from, to: 'L/(100.km)' })).toBeCloseTo(
        100 / kilometresPerLitre,
        9,
      );
    }
  });

  it('uses codes of its own only where UCUM has none, and ones that UCUM refuses rather than misreads', () => {
    for (const { from } of pairs) {
      const isKnown = ucum.convertUnitTo(from, 1, from).status === 'succeeded';
      expect([from, isKnown]).toEqual([from, !ownCodes.has(from)]);
    }
  });
});
