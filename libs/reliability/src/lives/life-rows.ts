import type { CensoredSample, LifeSample } from '@endfloat/statistics';
import type { LifeGap, PartLife } from './part-life.js';

export type KnownLife = Extract<PartLife, { kind: 'life' }>;

/** What the parts of a kind tell, counted by how their lives are known. */
export interface LifeCounts {
  readonly parts: number;
  readonly exact: number;
  /** known to lie between two inspections, or below the first */
  readonly betweenInspections: number;
  /** lasting still when last seen */
  readonly lastingStill: number;
  /** known only from an age above 0 on */
  readonly lateEntries: number;
  readonly leftOut: readonly { readonly why: LifeGap; readonly parts: number }[];
}

/** The parts whose lives are known in some way. */
export const knownLives = (lives: readonly PartLife[]): readonly KnownLife[] =>
  lives.filter((life) => life.kind === 'life');

const isExact = ({ lower, upper }: KnownLife): boolean => lower === upper;
const isOpen = ({ upper }: KnownLife): boolean => upper === Infinity;

/** Counts of how lives are known, and of why the others are left out; all 0 for none. */
export function countLives(lives: readonly PartLife[]): LifeCounts {
  const known = knownLives(lives);
  const gaps = new Map<LifeGap, number>();
  for (const life of lives) if (life.kind === 'leftOut') gaps.set(life.why, (gaps.get(life.why) ?? 0) + 1);
  const exact = known.filter(isExact).length;
  const lastingStill = known.filter(isOpen).length;
  return {
    parts: known.length,
    exact,
    betweenInspections: known.length - exact - lastingStill,
    lastingStill,
    lateEntries: known.filter(({ entry }) => entry > 0).length,
    leftOut: [...gaps].map(([why, parts]) => ({ why, parts })),
  };
}

/** Lives as the estimators of distributions take them. A life of 0 is one of at most `grain`, the finest told apart. */
export function lifeSample(lives: readonly KnownLife[], grain: number): LifeSample {
  return {
    lower: lives.map(({ lower }) => lower),
    upper: lives.map(({ upper }) => (upper === 0 ? grain : upper)),
    entryAges: lives.map(({ entry }) => entry),
  };
}

/** Lives without intervals as those of survival curves take them; undefined where one lies between two inspections. */
export function censoredSample(lives: readonly KnownLife[]): CensoredSample | undefined {
  if (lives.some((life) => !isExact(life) && !isOpen(life))) return undefined;
  return {
    ages: lives.map(({ lower }) => lower),
    events: lives.map(isExact),
    entryAges: lives.map(({ entry }) => entry),
  };
}
