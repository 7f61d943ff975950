import { requireNonNegativeValues, requireSameLength, type Numbers } from '../descriptive/checked-values.js';

/** Ages that end in an event or in the end of observation (right censoring), one row a unit or a group of like units. */
export interface CensoredSample {
  /** Age at the event or at the end of observation, 0 or more. */
  readonly ages: Numbers;
  /** Whether the age is that of an event (true, 1) or of the end of observation (false, 0). */
  readonly events: ArrayLike<boolean> | Numbers;
  /** Age from which the unit was observed (left truncation); 0 when left out. Never above its age. */
  readonly entryAges?: Numbers | undefined;
  /** How many like units the row stands for; 1 when left out. */
  readonly weights?: Numbers | undefined;
}

/** Refuses columns of unlike length, ages below zero, weights below zero and entries after the end. */
export function requireCensoredSample(sample: CensoredSample): void {
  const { ages, events, entryAges, weights } = sample;
  requireNonNegativeValues('ages', ages);
  requireSameLength('events', events, ages.length);
  for (let i = 0; i < events.length; i += 1) {
    const event = Number(events[i]);
    if (event !== 0 && event !== 1) throw new RangeError(`events[${i}] must be true, false, 0 or 1`);
  }
  if (weights !== undefined) {
    requireSameLength('weights', weights, ages.length);
    requireNonNegativeValues('weights', weights);
  }
  if (entryAges === undefined) return;
  requireSameLength('entryAges', entryAges, ages.length);
  requireNonNegativeValues('entryAges', entryAges);
  for (let i = 0; i < ages.length; i += 1) {
    const entry = entryAges[i]!;
    if (entry > ages[i]! || (entry === ages[i]! && entry > 0 && Number(events[i]) === 1)) {
      throw new RangeError(`entryAges[${i}] must lie before ages[${i}], got ${entry} and ${ages[i]}`);
    }
  }
}

/** Sum of the weights, or the number of rows. */
export function totalWeight(sample: CensoredSample): number {
  const { ages, weights } = sample;
  if (weights === undefined) return ages.length;
  let total = 0;
  for (let i = 0; i < weights.length; i += 1) total += weights[i]!;
  return total;
}

/** Sum of the weights of the rows that end in an event. */
export function eventWeight(sample: CensoredSample): number {
  const { events, weights } = sample;
  let total = 0;
  for (let i = 0; i < events.length; i += 1) total += Number(events[i]) * (weights?.[i] ?? 1);
  return total;
}
