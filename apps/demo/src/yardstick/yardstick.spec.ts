import { judgementTables } from '@endfloat/decision';
import {
  clairvoyant,
  exactTables,
  exactWorld,
  fixedRule,
  InformedPolicy,
  playVan,
  simulatedFleets,
  simulatedVan,
} from '@endfloat/decision/simulator';
import type { Decider, SimulatedFleet, Situation } from '@endfloat/decision/simulator';
import { endfloatPolicy, previewCommand } from './endfloat-policy.js';
import { historyOfVans } from './history-of-vans.js';
import { knownToWorkshop } from './known-to-workshop.js';
import { calibrationOf, meanOfVans } from './yardstick-figures.js';

const VANS = 24;
const SEED = 606;
const of = (id: string): SimulatedFleet => simulatedFleets.find((fleet) => fleet.id === id)!;

/** Endfloat, the policy that knows the parameters, the clairvoyant and one rule, on the same vans. */
function played(fleet: SimulatedFleet) {
  const world = exactWorld(fleet);
  const tables = exactTables(world);
  const known = knownToWorkshop(fleet, SEED);
  const vans = Array.from({ length: VANS }, (_, number) => simulatedVan(fleet, SEED, number));
  const under = (policy: () => Decider) => vans.map((van) => playVan(fleet, van, policy()));
  return {
    endfloat: under(() => endfloatPolicy(known, judgementTables)),
    informed: under(() => new InformedPolicy(world, tables)),
    clairvoyant: under(() => clairvoyant(world, tables)),
    replacing: under(() => fixedRule('alwaysReplace', 'reBush')),
  };
}
const costs = (vans: readonly { readonly cost: number }[]) => vans.map(({ cost }) => cost);

describe('the yardstick, small', () => {
  // One fleet whose wear the model contains, one whose wear it does not; judgement priors only.
  it.each(['sharp-readings', 'accelerating-wear'])('Endfloat holds its own in %s', (id) => {
    const { endfloat, informed, clairvoyant: best, replacing } = played(of(id));
    const base = meanOfVans(costs(best)).mean;
    // The goal is 0.15 above the policy that knows the parameters; so few vans leave a standard error of some 0.15.
    const above = (meanOfVans(costs(endfloat)).mean - meanOfVans(costs(informed)).mean) / base;
    expect(above).toBeLessThan(0.5);
    const less = meanOfVans(costs(endfloat).map((cost, k) => cost - costs(replacing)[k]!));
    expect(less.mean).toBeLessThan(0);
    const predictions = endfloat.flatMap(({ repairs }) =>
      repairs.map(({ predicted, cameBack }) => [predicted ?? 0, cameBack] as const),
    );
    // Better than tossing a coin about each repair, with room.
    expect(calibrationOf(predictions).brier).toBeLessThan(0.25);
    const held = endfloat.flatMap(({ intervalsHeld }) => intervalsHeld);
    // Nominal 90 %; visits of one van hang together, and one of the fleets wears by another law.
    expect(held.filter(Boolean).length / held.length).toBeGreaterThan(0.7);
  });

  it('lets nothing of the truth through: another truth behind the same sights changes no question', () => {
    const fleet = of('dear-parts');
    const other: SimulatedFleet = {
      ...fleet,
      law: { kind: 'shocks', incrementScale: 0.5, blows: 9, share: 0.9 },
      start: { median: 2, logSd: 0.1 },
      rate: { median: 5, logSd: 0.1 },
      otherCauses: 50,
      worn: 500,
      onsetWidth: 0.5,
      functionalWidth: 0.9,
      adjustComeback: { other: 0.9, worn: 0.1, fitting: 0.9 },
    };
    let seen: Situation | null = null;
    const spy: Decider = {
      decide: (situation) => {
        seen = situation;
        return {
          kind: 'act',
          action: situation.occasion === 'complaint' ? 'adjust' : 'leave',
          predicted: null,
        };
      },
    };
    playVan(fleet, simulatedVan(fleet, SEED, 1), spy);
    const situation = seen as Situation | null;
    if (situation === null) throw new Error('a van that was never seen');
    // Deliveries on record are drawn from how suppliers really deliver; the same ones for both.
    const { deliveries } = knownToWorkshop(fleet, SEED);
    const question = (each: SimulatedFleet) =>
      previewCommand({ ...knownToWorkshop(each, SEED), deliveries }, situation);
    expect(question(other)).toEqual(question(fleet));
  });

  it('writes into a history what was seen, part by part', () => {
    const fleet = of('cheap-parts');
    const van = playVan(fleet, simulatedVan(fleet, SEED, 2), fixedRule('alwaysReplace', 'fitNew'));
    const { parts, repairs } = historyOfVans(knownToWorkshop(fleet, SEED), [van]);
    expect(parts).toHaveLength(van.parts.length);
    expect(repairs).toHaveLength(van.repairs.length);
    const [first] = parts;
    expect(first!.action).toBeNull();
    // Three repeats of 20 um, set-up 15.3 um and bias 8.7 um over 0.2 mm: sqrt(400/3 + 234.1 + 75.7) / 200.
    expect(first!.inspections[0]!.standardUncertainty).toBeCloseTo(0.10526, 4);
  });
});

describe('figures of the yardstick', () => {
  it('takes a mean with its standard error: 1, 2, 3 give 2 and 1 / sqrt(3)', () => {
    expect(meanOfVans([1, 2, 3])).toEqual({ mean: 2, standardError: Math.sqrt(1 / 3) });
  });

  it('scores predictions by hand: 0.8 that came true and 0.4 that did not make (0.04 + 0.16) / 2', () => {
    const { brier, brierOfShare, bins } = calibrationOf([
      [0.8, true],
      [0.4, false],
    ]);
    expect(brier).toBeCloseTo(0.1, 12);
    expect(brierOfShare).toBeCloseTo(0.25, 12);
    expect(bins.map(({ lower, count, observed }) => [lower, count, observed])).toEqual([
      [0.4, 1, 0],
      [0.8, 1, 1],
    ]);
  });
});
