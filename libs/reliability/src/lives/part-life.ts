/** What ends the life of a part: being taken off, or being found worn at an inspection. */
export const lifeEnds = ['replaced', 'worn'] as const;
export type LifeEnd = (typeof lifeEnds)[number];

/** One fitted part on one scale: days since some day, or km of its vehicle. */
export interface PartFacts {
  /** null: fitted before anybody knew */
  readonly fitted: number | null;
  /** null: still fitted, or gone without anybody seeing it */
  readonly removed: number | null;
  /** stretches in which its vehicle was watched, in order */
  readonly watched: readonly { readonly from: number; readonly until: number }[];
  /** inspections of this part, any order */
  readonly inspections: readonly { readonly at: number; readonly isWorn: boolean }[];
}

/** Why a part says nothing about lives. */
export const lifeGaps = [
  'fittedUnknown',
  'removedBeforeFitted',
  'neverWatched',
  'endedUnwatched',
  'neverInspected',
] as const;
export type LifeGap = (typeof lifeGaps)[number];

export type PartLife =
  | {
      readonly kind: 'life';
      /** life lies in (lower, upper]; equal where known exactly, Infinity where it has not ended */
      readonly lower: number;
      readonly upper: number;
      /** age from which its end would have been seen */
      readonly entry: number;
    }
  | { readonly kind: 'leftOut'; readonly why: LifeGap };

const leftOut = (why: LifeGap): PartLife => ({ kind: 'leftOut', why });

function requireFacts({ fitted, removed, watched, inspections }: PartFacts): void {
  const numbers = [
    fitted ?? 0,
    removed ?? 0,
    ...watched.flatMap(({ from, until }) => [from, until]),
    ...inspections.map(({ at }) => at),
  ];
  const fault = numbers.find((each) => !Number.isFinite(each));
  if (fault !== undefined) throw new RangeError(`facts about a part must be finite, got ${fault}`);
  if (watched.some(({ from, until }) => until < from))
    throw new RangeError('a stretch of watching must not end before it begins');
}

/**
 * The life of one fitted part as it is known: exactly, as an interval, or as lasting still; and from which age on its end
 * would have been seen.
 *
 * `replaced`: the life ends when the part comes off. It is exact when that was watched, and lasts still at the end of the
 * stretch of watching in which it was fitted or first seen; after a gap nobody knows whether it is the same part. A part
 * fitted before its vehicle was watched enters late: it is known only because it lasted that long. One that also came off
 * before is left out, for others like it went unseen.
 * `worn`: the life ends when the part reaches its limit, known to lie between the last inspection that found it good and
 * the first that found it worn, at or below the first where none came before. Without a worn finding it lasted at least to
 * the last inspection. Being worn keeps no part out of sight, so nothing enters late. Inspections before it was fitted
 * or after it came off do not count.
 *
 * @param facts  on one scale, days or km
 * @param end    what ends a life
 * @returns the interval with its entry age, or why the part says nothing
 * @throws RangeError on a number that is not finite, or a stretch that ends before it begins
 * @source Meeker & Escobar (1998), Statistical Methods for Reliability Data, 1.6, 2.4 and 11.6 (censoring and truncation)
 * @oracle timelines worked by hand in the spec
 * @example partLife({ fitted: 10, removed: 30, watched: [{ from: 0, until: 50 }], inspections: [] }, 'replaced') // => { kind: 'life', lower: 20, upper: 20, entry: 0 }
 */
export function partLife(facts: PartFacts, end: LifeEnd): PartLife {
  requireFacts(facts);
  const { fitted, removed } = facts;
  if (fitted === null) return leftOut('fittedUnknown');
  if (removed !== null && removed < fitted) return leftOut('removedBeforeFitted');
  return end === 'worn' ? lifeToWorn(facts, fitted) : lifeToRemoval(facts, fitted);
}

function lifeToRemoval({ removed, watched }: PartFacts, fitted: number): PartLife {
  const span = watched.find(({ until }) => until >= fitted && (until > fitted || removed === fitted));
  if (span === undefined) return leftOut('neverWatched');
  const entry = Math.max(0, span.from - fitted);
  if (removed !== null && removed <= span.until) {
    const age = removed - fitted;
    return entry > 0 && age <= entry
      ? leftOut('endedUnwatched')
      : { kind: 'life', lower: age, upper: age, entry };
  }
  const lasted = span.until - fitted;
  return lasted > entry ? { kind: 'life', lower: lasted, upper: Infinity, entry } : leftOut('neverWatched');
}

function lifeToWorn({ removed, inspections }: PartFacts, fitted: number): PartLife {
  const own = inspections
    .filter(({ at }) => at >= fitted && at <= (removed ?? Infinity))
    .sort((a, b) => a.at - b.at || Number(a.isWorn) - Number(b.isWorn));
  const last = own.at(-1);
  if (last === undefined) return leftOut('neverInspected');
  const worn = own.findIndex(({ isWorn }) => isWorn);
  if (worn < 0) return { kind: 'life', lower: last.at - fitted, upper: Infinity, entry: 0 };
  const lower = worn === 0 ? 0 : own[worn - 1]!.at - fitted;
  return { kind: 'life', lower, upper: own[worn]!.at - fitted, entry: 0 };
}
