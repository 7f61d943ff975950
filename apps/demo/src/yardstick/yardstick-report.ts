import type { FixedRule, SimulatedFleet } from '@endfloat/decision/simulator';
import { fixedRules } from '@endfloat/decision/simulator';
import type { FleetShare, ThinkingPolicy } from './play-fleet.js';
import type { Calibration, MeanOfVans, PolicyFigures } from './yardstick-figures.js';
import { calibrationOf, figuresOf } from './yardstick-figures.js';

/** One fleet as it was played. */
export interface PlayedFleet {
  readonly fleet: SimulatedFleet;
  readonly share: FleetShare;
}

const names: Readonly<Record<ThinkingPolicy | FixedRule, string>> = {
  alwaysAdjust: 'always adjust',
  alwaysReplace: 'always replace',
  replaceAt020: 'replace at 0.20 mm',
  replaceAt015: 'replace at 0.15 mm',
  functionalCriterion: 'functional criterion alone',
  endfloatPriors: '**Endfloat, priors only**',
  endfloatLearned: '**Endfloat, after learning**',
  informed: 'knows the fleet’s parameters',
  clairvoyant: 'clairvoyant',
};

const renewalNames: Readonly<Record<string, string>> = {
  reBush: 're-bush',
  fitUsed: 'used',
  fitRemanufactured: 'remanufactured',
  fitNew: 'new',
};

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
const money = ({ mean, standardError }: MeanOfVans): string =>
  `${mean.toFixed(0)} ± ${standardError.toFixed(0)}`;

function fleetTable({ fleet, share }: PlayedFleet): readonly string[] {
  const figures = figuresOf(share);
  const lines = figures.map(({ policy, renewal, cost, ratio, learnedLess, priorsLess }) => {
    const isSelf = policy === 'endfloatLearned' || policy === 'endfloatPriors';
    return row([
      renewal === null ? names[policy] : `${names[policy]} (${renewalNames[renewal]!})`,
      money(cost),
      ratio.mean.toFixed(3),
      policy === 'endfloatPriors' ? '' : money(priorsLess),
      isSelf && policy === 'endfloatLearned' ? '' : money(learnedLess),
    ]);
  });
  return [
    `**${fleet.id}**: ${fleet.title}`,
    '',
    row([
      'policy',
      'EUR per 100,000 km',
      'ratio to clairvoyant',
      'Endfloat with priors less this',
      'after learning less this',
    ]),
    row(['---', '--:', '--:', '--:', '--:']),
    ...lines,
    '',
  ];
}

/** Whether a difference is below nothing beyond doubt, or within a hundredth of the rule's cost. */
const isBeaten = ({ mean, standardError }: MeanOfVans, cost: number): boolean =>
  mean + 2 * standardError < 0 || mean < 0.01 * cost;

function summaryRow({ fleet, share }: PlayedFleet): string {
  const figures = figuresOf(share);
  const of = (policy: ThinkingPolicy): PolicyFigures => figures.find((each) => each.policy === policy)!;
  const informed = of('informed');
  const rules = figures.filter(({ policy }) => (fixedRules as readonly string[]).includes(policy));
  const best = rules.reduce((one, other) => (other.cost.mean < one.cost.mean ? other : one));
  const gap = (policy: ThinkingPolicy) =>
    `${of(policy).ratio.mean.toFixed(3)} (${(of(policy).ratio.mean - informed.ratio.mean).toFixed(3)})`;
  const clairvoyant = of('clairvoyant').cost.mean;
  const se = (difference: MeanOfVans) => (difference.standardError / clairvoyant).toFixed(3);
  const beats = rules.every(({ learnedLess, cost }) => isBeaten(learnedLess, cost.mean));
  const beatsByPriors = rules.every(({ priorsLess, cost }) => isBeaten(priorsLess, cost.mean));
  return row([
    fleet.id,
    best.ratio.mean.toFixed(3),
    informed.ratio.mean.toFixed(3),
    `${gap('endfloatPriors')} ± ${se(informed.priorsLess)}`,
    `${gap('endfloatLearned')} ± ${se(informed.learnedLess)}`,
    `${beatsByPriors ? 'yes' : 'no'} / ${beats ? 'yes' : 'no'}`,
  ]);
}

/** Wilson interval, 95 %. */
function wilson(share: number, count: number): string {
  const z = 1.959963984540054;
  const centre = (share + (z * z) / (2 * count)) / (1 + (z * z) / count);
  const half =
    (z * Math.sqrt((share * (1 - share)) / count + (z * z) / (4 * count * count))) / (1 + (z * z) / count);
  return `${Math.max(0, centre - half).toFixed(3)} to ${Math.min(1, centre + half).toFixed(3)}`;
}

function reliability(title: string, { brier, brierOfShare, bins }: Calibration): readonly string[] {
  return [
    `${title}: Brier score ${brier.toFixed(4)} (always predicting the overall share: ${brierOfShare.toFixed(4)}).`,
    '',
    row(['predicted', 'repairs', 'mean predicted', 'came back', '95 % interval']),
    row(['---', '--:', '--:', '--:', '---']),
    ...bins.map(({ lower, upper, count, predicted, observed }) =>
      row([
        `${lower.toFixed(1)} to ${upper.toFixed(1)}`,
        String(count),
        predicted.toFixed(3),
        observed.toFixed(3),
        wilson(observed, count),
      ]),
    ),
    '',
  ];
}

function coverage(fleets: readonly PlayedFleet[], policy: ThinkingPolicy): string {
  return fleets
    .map(({ fleet, share }) => {
      const held = share.intervals[policy] ?? [];
      const part = held.filter(Boolean).length / Math.max(1, held.length);
      return `${fleet.id} ${(100 * part).toFixed(1)} % of ${String(held.length)}`;
    })
    .join('; ');
}

/**
 * The yardstick as text for the README.
 *
 * @param fleets  all of them, played
 * @param run     what it was run with
 * @returns Markdown lines
 */
export function yardstickReport(
  fleets: readonly PlayedFleet[],
  run: {
    readonly vans: number;
    readonly years: number;
    readonly seed: number;
    readonly modelVersion: string;
  },
): string {
  const all = (policy: ThinkingPolicy) =>
    calibrationOf(fleets.flatMap(({ share }) => [...(share.predictions[policy] ?? [])]));
  return [
    `${String(run.vans)} vans a fleet over 120,000 km each, the same vans and draws for every policy; seed ${String(run.seed)}; ` +
      `learning from ${String(run.years)} van-years of other vans; model ${run.modelVersion}.`,
    '',
    row([
      'fleet',
      'best fixed rule',
      'knows the parameters',
      'Endfloat, priors only (above that by ± s.e.)',
      'Endfloat, after learning (above that by ± s.e.)',
      'beats or ties every fixed rule: priors / learned',
    ]),
    row(['---', '--:', '--:', '--:', '--:', '---']),
    ...fleets.map(summaryRow),
    '',
    'Figures are ratios to the clairvoyant’s cost. A rule counts as beaten where the paired difference lies below zero by two ' +
      'standard errors, as tied where it is above by less than 1 % of the rule’s cost. Each fixed rule takes the renewal that ' +
      'suits it best in that fleet, chosen in hindsight.',
    '',
    '<details><summary>All policies in all fleets, with standard errors</summary>',
    '',
    ...fleets.flatMap(fleetTable),
    '</details>',
    '',
    '<details><summary>Predicted comebacks against observed ones, all fleets together</summary>',
    '',
    ...reliability('Priors only', all('endfloatPriors')),
    ...reliability('After learning', all('endfloatLearned')),
    ...reliability('Knowing the parameters', all('informed')),
    '</details>',
    '',
    `90 % intervals for the distance to the criterion held the true distance, priors only: ${coverage(fleets, 'endfloatPriors')}.`,
    `After learning: ${coverage(fleets, 'endfloatLearned')}.`,
    '',
  ].join('\n');
}
