import { demandOfChances, summariseDemand } from '@endfloat/stock';
import { fitFleetWear, probabilityOfReaching, wearTrend } from '@endfloat/wear';
import { level, type Coverage } from './coverage-cases.js';
import { simulatedPart, truth } from './simulated-wear.js';

/** Distance over which needs are forecast, km. */
const ahead = 20_000;

/**
 * Pieces that simulated fleets need within a distance, forecast from their readings as the needs of a kind of part are, and
 * how many really reach the limit. The interval is of a whole number: it holds at least its level where the chances are right.
 */
export function needsCoverage(next: () => number, fleets: number, size: number): Coverage {
  const inside: boolean[] = [];
  let above = 0;
  let unanswered = 0;
  for (let fleet = 0; fleet < fleets; fleet += 1) {
    const parts = Array.from({ length: size }, () =>
      simulatedPart(next, { readings: 4 + Math.floor(5 * next()), biasU: 0 }),
    );
    const fit = fitFleetWear(parts, 'rising');
    const chances =
      fit.kind !== 'estimated'
        ? []
        : parts.flatMap(({ points }) => {
            const trend = wearTrend({ points, direction: 'rising', limit: truth.limit, model: fit.model });
            return trend.kind === 'estimated'
              ? [probabilityOfReaching(trend, { kind: 'distance', km: ahead })]
              : [];
          });
    if (chances.length < size) {
      unanswered += 1;
      continue;
    }
    const { lower, upper } = summariseDemand(demandOfChances(chances), level);
    const needed = parts.filter(({ toLimit }) => toLimit <= ahead).length;
    if (needed > upper) above += 1;
    inside.push(needed >= lower && needed <= upper);
  }
  const held = inside.filter(Boolean).length;
  const asked = inside.length;
  const share = held / asked;
  const standardError = Math.sqrt((share * (1 - share)) / asked);
  const what = `pieces needed within ${String(ahead)} km: fleet of ${String(size)}, 4 to 8 readings a part`;
  return { what, held, above, asked, unanswered, standardError };
}
