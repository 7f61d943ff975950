import fc from 'fast-check';
import { startingPlaces } from './look-ahead-world.js';
import type { LookAheadWorld, RenewalInWorld } from './look-ahead-world.js';
import { solveLookAhead } from './solve-look-ahead.js';

interface Random {
  readonly steps: number;
  readonly rise: readonly number[];
  readonly complaint: readonly number[];
  readonly comeback: readonly number[];
  readonly money: readonly number[];
  readonly planned: readonly boolean[];
  readonly warranty: boolean;
  readonly adjust: boolean;
}

const share = fc.integer({ min: 0, max: 10 }).map((tenths) => tenths / 10);
const shares = (length: number) => fc.array(share, { minLength: length, maxLength: length });

const randomWorld: fc.Arbitrary<Random> = fc.record({
  steps: fc.integer({ min: 0, max: 2 }),
  rise: shares(2),
  complaint: shares(3),
  comeback: shares(6),
  money: fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 9, maxLength: 9 }),
  planned: fc.array(fc.boolean(), { minLength: 3, maxLength: 3 }),
  warranty: fc.boolean(),
  adjust: fc.boolean(),
});

function worldOf(random: Random): LookAheadWorld {
  const [m0, m1, m2, m3, m4, m5, m6, m7, m8] = random.money as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const [p0, p1, p2, p3, p4, p5] = random.comeback as [number, number, number, number, number, number];
  const renewal = (
    id: string,
    cost: number,
    planned: number,
    p: number,
    again: number,
    repeat: number | null,
    start: number[],
  ): RenewalInWorld => ({
    id,
    costOnComplaint: cost,
    costPlanned: planned,
    comeback: p,
    comebackAgain: again,
    repeatCost: repeat,
    ...startingPlaces(Float64Array.from(start), Float64Array.from([0.25, 0.75])),
  });
  return {
    steps: random.steps,
    increments: random.rise.map((rise) => Float64Array.from([1 - rise, rise])),
    complaint: Float64Array.from([...random.complaint].sort((a, b) => a - b)),
    laterComplaintCost: m0,
    comebackHandling: m1,
    adjustment: random.adjust
      ? {
          cost: m2,
          comeback: Float64Array.from([p0 / 2, p0, p0]),
          comebackAgain: Float64Array.from([p1, p1, 1]),
        }
      : null,
    renewals: [
      renewal('one', m3, m4, p2, p3, random.warranty ? m5 : null, [1, 0, 0]),
      renewal('two', m6, m7, p4, p5, random.warranty ? null : m8, [0.5, 0.5, 0]),
    ],
    plannedVisit: random.planned,
  };
}

// The same story told as a tree: every choice tried, every outcome followed, nothing stored, nothing shared with the solver.
function bruteForce(world: LookAheadWorld) {
  const last = world.complaint.length - 1;
  const risen = (rate: number, wear: number, then: (wear: number) => number): number =>
    [...world.increments[rate]!].reduce(
      (sum, chance, by) => sum + chance * then(Math.min(last, wear + by)),
      0,
    );
  const goOn = (k: number, rate: number, wear: number): number =>
    k >= world.steps ? 0 : risen(rate, wear, (next) => arrive(k + 1, rate, next, world.complaint[next]!));
  const afterRepair = (k: number, rate: number, wear: number): number =>
    k >= world.steps ? 0 : risen(rate, wear, (next) => arrive(k + 1, rate, next, 0));
  const renewed = (k: number, f: number): number => {
    const { places, weights } = world.renewals[f]!;
    let sum = 0;
    weights.forEach(
      (weight, n) =>
        (sum += weight * afterRepair(k, Math.floor(places[n]! / (last + 1)), places[n]! % (last + 1))),
    );
    return sum;
  };
  const followUp = (k: number): number =>
    Math.min(
      ...world.renewals.map(({ costOnComplaint, repeatCost, comebackAgain }, f) => {
        const thirdTime = world.comebackHandling + (repeatCost ?? costOnComplaint);
        return costOnComplaint + comebackAgain * thirdTime + renewed(k, f);
      }),
    );
  const renew = (k: number, f: number, cost: number): number => {
    const { comeback, repeatCost } = world.renewals[f]!;
    const failed = world.comebackHandling + (repeatCost === null ? followUp(k) : repeatCost + renewed(k, f));
    return cost + comeback * failed + (1 - comeback) * renewed(k, f);
  };
  const adjust = (k: number, rate: number, wear: number): number => {
    if (world.adjustment === null) return Infinity;
    const { cost, comeback, comebackAgain } = world.adjustment;
    const held = afterRepair(k, rate, wear);
    const again = comebackAgain[wear]!;
    const oncemore = cost + again * (world.comebackHandling + followUp(k)) + (1 - again) * held;
    const failed = world.comebackHandling + Math.min(followUp(k), oncemore);
    return cost + comeback[wear]! * failed + (1 - comeback[wear]!) * held;
  };
  const arrive = (k: number, rate: number, wear: number, chance: number): number => {
    if (k >= world.steps) return 0;
    const quiet = Math.min(
      goOn(k, rate, wear),
      ...(world.plannedVisit[k] === true
        ? world.renewals.map(({ costPlanned }, f) => renew(k, f, costPlanned))
        : []),
    );
    const complained = Math.min(
      adjust(k, rate, wear),
      ...world.renewals.map((renewal, f) => renew(k, f, renewal.costOnComplaint)),
    );
    return (1 - chance) * quiet + chance * (world.laterComplaintCost + complained);
  };
  return { goOn, afterRepair, renewed, followUp };
}

describe('look-ahead by dynamic programming', () => {
  it('equals brute-force enumeration of every choice and outcome in tiny worlds', () => {
    fc.assert(
      fc.property(randomWorld, (random) => {
        const world = worldOf(random);
        const solved = solveLookAhead(world, true);
        const tree = bruteForce(world);
        for (let rate = 0; rate < 2; rate += 1) {
          for (let wear = 0; wear < 3; wear += 1) {
            expect(solved.goOn[rate * 3 + wear]).toBeCloseTo(tree.goOn(0, rate, wear), 7);
            expect(solved.afterRepair[rate * 3 + wear]).toBeCloseTo(tree.afterRepair(0, rate, wear), 7);
          }
        }
        solved.renewed.forEach(({ mean }, f) => expect(mean).toBeCloseTo(tree.renewed(0, f), 7));
        expect(solved.followUp.total.mean).toBeCloseTo(tree.followUp(0), 7);
      }),
      { seed: 31, numRuns: 100 },
    );
  });

  it('equals brute-force enumeration over three steps too', () => {
    fc.assert(
      fc.property(randomWorld, (random) => {
        const world = worldOf({ ...random, steps: 3 });
        expect(solveLookAhead(world, true).goOn[1]).toBeCloseTo(bruteForce(world).goOn(0, 0, 1), 7);
      }),
      { seed: 34, numRuns: 5 },
    );
  });

  it('is worked by hand: one step, certain rise, complaint at the top; renewing costs 100, a complaint 10', () => {
    // Position 1 of 2 is reached at node 1 with certainty. There a complaint (chance 0.5) costs 10 + 100. The renewed part
    // rises to node 1 by position 2, where the plan ends. Without complaint nothing is spent. So 0.5 x 110 = 55.
    const world: LookAheadWorld = {
      steps: 2,
      increments: [Float64Array.from([0, 1])],
      complaint: Float64Array.from([0, 0.5]),
      laterComplaintCost: 10,
      comebackHandling: 1000,
      adjustment: null,
      renewals: [
        {
          id: 'only',
          costOnComplaint: 100,
          costPlanned: 100,
          comeback: 0,
          comebackAgain: 0,
          repeatCost: null,
          ...startingPlaces(Float64Array.from([1, 0]), Float64Array.from([1])),
        },
      ],
      plannedVisit: [false, false],
    };
    const solved = solveLookAhead(world, true);
    expect(solved.goOn[0]).toBe(55);
    // After a repair the first step brings no complaint, and the second ends the plan.
    expect(solved.afterRepair[0]).toBe(0);
    // Outcomes are 110 and 0, half each: second moment 0.5 x 110².
    expect(solved.goOnSquare[0]).toBe(0.5 * 110 * 110);
  });

  it('costs nothing to come when the plan has no distance, and nothing but complaints when nothing wears', () => {
    const base = worldOf({
      steps: 0,
      rise: [0, 0],
      complaint: [0, 0, 0],
      comeback: [0, 0, 0, 0, 0, 0],
      money: [5, 5, 5, 5, 5, 5, 5, 5, 5],
      planned: [true, true, true],
      warranty: false,
      adjust: true,
    });
    expect(Math.max(...solveLookAhead(base, true).goOn)).toBe(0);
    expect(Math.max(...solveLookAhead({ ...base, steps: 3 }, true).goOn)).toBe(0);
  });

  it('never costs less with a dearer renewal or a dearer complaint, nor with a longer plan', () => {
    fc.assert(
      fc.property(randomWorld, (random) => {
        const world = worldOf(random);
        const dearer = (changed: LookAheadWorld) => {
          const a = solveLookAhead(world, true);
          const b = solveLookAhead(changed, true);
          b.goOn.forEach((cost, index) => expect(cost).toBeGreaterThanOrEqual(a.goOn[index]! - 1e-9));
        };
        dearer({
          ...world,
          renewals: world.renewals.map((r) => ({
            ...r,
            costOnComplaint: r.costOnComplaint + 50,
            costPlanned: r.costPlanned + 50,
          })),
        });
        dearer({ ...world, laterComplaintCost: world.laterComplaintCost + 50 });
        dearer({ ...world, steps: world.steps + 1, plannedVisit: [false, ...world.plannedVisit] });
      }),
      { seed: 32, numRuns: 100 },
    );
  });

  it('gives the same means to the last bit without second moments', () => {
    fc.assert(
      fc.property(randomWorld, (random) => {
        const world = worldOf(random);
        const plain = solveLookAhead(world, false);
        const full = solveLookAhead(world, true);
        expect([...plain.goOn]).toEqual([...full.goOn]);
        expect([...plain.afterRepair]).toEqual([...full.afterRepair]);
        expect(plain.followUp.total.mean).toBe(full.followUp.total.mean);
      }),
      { seed: 35, numRuns: 200 },
    );
  });

  it('has second moments that are never below the square of the mean', () => {
    fc.assert(
      fc.property(randomWorld, (random) => {
        const { goOn, goOnSquare } = solveLookAhead(worldOf(random), true);
        goOnSquare.forEach((square, index) =>
          expect(square).toBeGreaterThanOrEqual(goOn[index]! ** 2 - 1e-6),
        );
      }),
      { seed: 33, numRuns: 100 },
    );
  });
});
