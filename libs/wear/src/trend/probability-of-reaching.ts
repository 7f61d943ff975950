import { reachedBy, type LevelForecast } from './level-forecast.js';

/** Until when: a further distance, or a number of days at a yearly distance that is itself uncertain. */
export type Horizon =
  | { readonly kind: 'distance'; readonly km: number }
  | { readonly kind: 'days'; readonly days: number; readonly kmPerYear: number; readonly kmPerYearU: number };

/** What of a trend the probability rests on. */
export interface ForecastToLimit {
  readonly forecast: LevelForecast;
  /** the limit in the direction of wear */
  readonly orientedLimit: number;
}

/** Half of the ten nodes of Gauss and Hermite with their weights; the other half mirrors them. */
const nodes = [
  [0.342901327223705, 0.6108626337353258],
  [1.036610829789514, 0.2401386110823147],
  [1.756683649299882, 0.03387439445548106],
  [2.53273167423279, 0.001343645746781233],
  [3.436159118837738, 7.640432855232621e-6],
] as const;

const daysPerYear = 365.25;

/**
 * Probability that a part reaches the limit of its trend before a further distance, or before a date.
 *
 * Before a date: the yearly distance is taken as normal about what is expected, never negative, and averaged over by ten
 * nodes of Gauss and Hermite.
 *
 * @param trend    of one part, or its forecast
 * @param horizon  further km from `trend.nowKm`, or days from now with the yearly distance and its standard uncertainty
 * @returns probability between 0 and 1; at once (0 km, 0 days) that of having reached it already
 * @throws RangeError on a negative or non-finite distance, number of days, yearly distance or uncertainty
 * @source nodes and weights: Abramowitz & Stegun (1964), 25.4.46 and table 25.10; their moments are checked in the spec
 */
export function probabilityOfReaching(trend: ForecastToLimit, horizon: Horizon): number {
  const within = reachedBy(trend.forecast, trend.orientedLimit);
  const numbers = Object.entries(horizon).filter(([name]) => name !== 'kind') as [string, number][];
  for (const [name, value] of numbers) {
    if (!(value >= 0 && Number.isFinite(value)))
      throw new RangeError(`${name} is not negative and finite: ${value}`);
  }
  if (horizon.kind === 'distance') return within(horizon.km);
  const { days, kmPerYear, kmPerYearU } = horizon;
  const years = days / daysPerYear;
  if (kmPerYearU === 0) return within(years * kmPerYear);
  return averagedOverNormal(kmPerYear, kmPerYearU, (yearly) => within(years * Math.max(0, yearly)));
}

/**
 * Mean of a smooth function of a normal quantity: exact for polynomials up to the 19th degree.
 *
 * @param mean      of the quantity; neither it nor sd is checked
 * @param sd        its standard deviation; 0 gives the function's value at the mean, to rounding
 * @param of        the function
 * @returns mean of the function, by ten nodes of Gauss and Hermite
 * @source Abramowitz & Stegun (1964), 25.4.46 and table 25.10
 */
export function averagedOverNormal(mean: number, sd: number, of: (value: number) => number): number {
  let total = 0;
  for (const [node, weight] of nodes) {
    const away = Math.SQRT2 * sd * node;
    total += weight * (of(mean - away) + of(mean + away));
  }
  return total / Math.sqrt(Math.PI);
}
