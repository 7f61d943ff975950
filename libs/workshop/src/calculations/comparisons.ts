import type { UnitCode } from '@endfloat/metrology';
import { logRankTest, observedToExpected } from '@endfloat/statistics';
import { calculated, type CalculationMethod } from './calculation-method.js';
import { refusing, requireColumns } from './refusing.js';

export const logRankTests: CalculationMethod = {
  id: 'log-rank-tests',
  title: 'Do two groups of lives last alike?',
  name: 'logRank',
  variant:
    'equal weights at all ages, hypergeometric variance with ties, chi-square with 1 degree of freedom; late entry; at risk as for the survival curve',
  source: 'Mantel (1966), Cancer Chemother. Rep. 50:163-170; Peto & Peto (1972), JRSS A 135:185-207',
  caseIds: ['freireich-remissions-log-rank'],
};

export interface GroupOfLives {
  readonly ages: readonly number[];
  readonly events: readonly number[];
  readonly entryAges?: readonly number[] | undefined;
  readonly weights?: readonly number[] | undefined;
}

/** Log-rank test of two groups. */
export function calculateLogRankTest({
  unit = '1',
  first,
  second,
}: {
  readonly unit?: UnitCode | undefined;
  readonly first: GroupOfLives;
  readonly second: GroupOfLives;
}) {
  requireGroup('first', first);
  requireGroup('second', second);
  const result = logRankTest(first, second);
  return calculated(logRankTests, first.ages.length + second.ages.length, { unit, result });
}

/** Refuses a group by itself, so that the refusal names the group. */
function requireGroup(name: string, { ages, events, entryAges, weights }: GroupOfLives): void {
  requireColumns({
    [`${name}/ages`]: ages,
    [`${name}/events`]: events,
    [`${name}/entryAges`]: entryAges,
    [`${name}/weights`]: weights,
  });
  const none = { ages: [], events: [] };
  refusing(
    ['ages', 'events', 'entryAges', 'weights'],
    () => logRankTest({ ages, events, entryAges, weights }, none),
    `/${name}`,
  );
}

export const observedToExpectedRatios: CalculationMethod = {
  id: 'observed-to-expected-ratios',
  title: 'More events than the mix of work lets expect?',
  name: 'observedToExpected',
  variant:
    'expected count taken as known; exact (Garwood) limits of a Poisson count over it; 1 on a limit counts as inside',
  source:
    'Garwood (1936), Biometrika 28:437-442; Breslow & Day (1987), Statistical Methods in Cancer Research II, 2.3',
  caseIds: ['garwood-poisson-limits'],
};

/** Observed over expected events with its interval. */
export function calculateObservedToExpected({
  observed,
  expected,
  level = 0.95,
}: {
  readonly observed: number;
  readonly expected: number;
  readonly level?: number | undefined;
}) {
  const found = refusing(['observed', 'expected'], () => observedToExpected(observed, expected, level));
  const result = found.kind === 'estimated' ? { ...found, level } : found;
  return calculated(observedToExpectedRatios, observed, { result });
}
