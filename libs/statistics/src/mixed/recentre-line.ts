import { requireFinite } from '../distributions/checked-arguments.js';
import { shiftedCovariance, type UncertainLine } from './uncertain-line.js';

/**
 * The same line about another centre; about 0 the level is the intercept, and its covariance that of intercept and slope.
 *
 * @param line  level, slope and covariance about some centre
 * @param centre  finite, in u
 * @returns the line with level and covariance about the new centre
 * @throws RangeError on a centre that is not finite
 * @source variance of a linear function of two estimates
 * @oracle cases worked by hand in the spec
 * @example recentreLine({ centre: 2, level: 5, slope: 1, covariance: { level: 1, cross: 0, slope: 4 } }, 0) // => { centre: 0, level: 3, slope: 1, covariance: { level: 17, cross: -8, slope: 4 } }
 */
export function recentreLine(line: UncertainLine, centre: number): UncertainLine {
  requireFinite('centre', centre);
  const distance = centre - line.centre;
  return {
    centre,
    level: line.level + distance * line.slope,
    slope: line.slope,
    covariance: shiftedCovariance(line.covariance, distance),
  };
}
