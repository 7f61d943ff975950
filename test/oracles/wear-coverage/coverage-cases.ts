import {
  fitLifeDistribution,
  profileQuantileLimits,
  rightCensoredLives,
  weibullQuantile,
  wilsonInterval,
} from '@endfloat/statistics';
import { fitFleetWear, wearTrend, type WearModel } from '@endfloat/wear';
import { simulatedPart, truth, type SimulatedPart } from './simulated-wear.js';

/** How often an interval held what it should hold. */
export interface Coverage {
  readonly what: string;
  readonly held: number;
  /** misses beyond the upper end */
  readonly above: number;
  readonly asked: number;
  /** data from which the method answered that there is too little */
  readonly unanswered: number;
  /** of the share held; by fleets, because the parts of one fleet share its fit */
  readonly standardError: number;
}

export const level = 0.9;

class Tally {
  private held = 0;
  private above = 0;
  private asked = 0;
  private unanswered = 0;
  private readonly batches: { held: number; asked: number }[] = [];

  constructor(private readonly what: string) {}

  /** What follows shares chance with each other, and with nothing before it. */
  begin(): void {
    this.batches.push({ held: 0, asked: 0 });
  }

  count(value: number, lower: number, upper: number | null): void {
    const batch = this.batches.at(-1)!;
    this.asked += 1;
    batch.asked += 1;
    if (upper !== null && value > upper) this.above += 1;
    else if (value >= lower) {
      this.held += 1;
      batch.held += 1;
    }
  }

  none(): void {
    this.unanswered += 1;
  }

  get coverage(): Coverage {
    const { what, held, above, asked, unanswered } = this;
    const squares = this.batches.reduce((sum, one) => sum + (one.held - (held / asked) * one.asked) ** 2, 0);
    return { what, held, above, asked, unanswered, standardError: Math.sqrt(squares) / asked };
  }
}

interface FleetPlan {
  readonly parts: number;
  readonly readings: readonly [number, number];
  readonly biasU?: number;
}

/** Trends of every part of simulated fleets, each fitted from its own readings. */
export function fleetCoverage(next: () => number, fleets: number, plan: FleetPlan): readonly Coverage[] {
  const { parts: size, readings, biasU = 0 } = plan;
  const [fewest, most] = readings;
  const name = `fleet of ${String(size)}, ${String(fewest)} to ${String(most)} readings a part${biasU > 0 ? ', instrument changed' : ''}`;
  const tallies = talliesOf(name);
  for (let fleet = 0; fleet < fleets; fleet += 1) {
    const parts = Array.from({ length: size }, () =>
      simulatedPart(next, { readings: fewest + Math.floor((most - fewest + 1) * next()), biasU }),
    );
    const fit = fitFleetWear(parts, 'rising');
    for (const tally of Object.values(tallies)) tally.begin();
    for (const part of parts) {
      if (fit.kind === 'estimated') askTrend(part, fit.model, tallies);
      else for (const tally of Object.values(tallies)) tally.none();
    }
  }
  return [tallies.rate.coverage, tallies.distance.coverage];
}

/** Trends of parts that borrow from no other. */
export function aloneCoverage(
  next: () => number,
  parts: number,
  readings: number,
  biasU = 0,
): readonly Coverage[] {
  const name = `part alone, ${String(readings)} readings${biasU > 0 ? ', instrument changed' : ''}`;
  const tallies = talliesOf(name);
  for (let part = 0; part < parts; part += 1) {
    for (const tally of Object.values(tallies)) tally.begin();
    askTrend(simulatedPart(next, { readings, biasU }), null, tallies);
  }
  return [tallies.rate.coverage, tallies.distance.coverage];
}

type TrendTallies = Readonly<Record<'rate' | 'distance', Tally>>;

const talliesOf = (name: string): TrendTallies => ({
  rate: new Tally(`rate: ${name}`),
  distance: new Tally(`distance to limit: ${name}`),
});

function askTrend(part: SimulatedPart, model: WearModel | null, { rate, distance }: TrendTallies): void {
  const trend = wearTrend({
    points: part.points,
    direction: 'rising',
    limit: truth.limit,
    model,
    confidence: level,
  });
  if (trend.kind !== 'estimated') {
    rate.none();
    distance.none();
    return;
  }
  rate.count(part.rate, trend.rate.lower, trend.rate.upper);
  distance.count(part.toLimit, trend.distanceToLimit.lower, trend.distanceToLimit.upper);
}

/** B10 of Weibull lives of scale 100 and shape 2, entered late at up to 30 and censored at up to 160; profile limits. */
export function lifeCoverage(next: () => number, samples: number, units: number): readonly Coverage[] {
  const tally = new Tally(`Weibull B10: ${String(units)} units, about a third censored, late entry`);
  const b10 = weibullQuantile(0.1, 100, 2);
  for (let sample = 0; sample < samples; sample += 1) {
    tally.begin();
    const rows: { readonly age: number; readonly event: boolean; readonly entry: number }[] = [];
    while (rows.length < units) {
      const [life, entry, end] = [weibullQuantile(next(), 100, 2), 30 * next(), 40 + 120 * next()];
      // A life that ends before its entry is never seen.
      if (life > entry) rows.push({ age: Math.min(life, end), event: life <= end, entry });
    }
    const lives = rightCensoredLives({
      ages: rows.map(({ age }) => age),
      events: rows.map(({ event }) => event),
      entryAges: rows.map(({ entry }) => entry),
    });
    const fit = fitLifeDistribution('weibull', lives);
    if (fit.kind !== 'estimated') {
      tally.none();
      continue;
    }
    const { lower, upper } = profileQuantileLimits(lives, fit, 0.1, level);
    tally.count(b10, lower ?? 0, upper);
  }
  return [tally.coverage];
}

/** Wilson's interval of shares drawn evenly from a range. */
export function shareCoverage(
  next: () => number,
  samples: number,
  trials: number,
  [least, greatest]: readonly [number, number],
): readonly Coverage[] {
  const tally = new Tally(`Wilson: ${String(trials)} jobs, shares ${String(least)} to ${String(greatest)}`);
  for (let sample = 0; sample < samples; sample += 1) {
    tally.begin();
    const share = least + (greatest - least) * next();
    let successes = 0;
    for (let trial = 0; trial < trials; trial += 1) if (next() < share) successes += 1;
    const interval = wilsonInterval({ successes, trials }, level);
    if (interval.kind === 'estimated') tally.count(share, interval.lower, interval.upper);
    else tally.none();
  }
  return [tally.coverage];
}
