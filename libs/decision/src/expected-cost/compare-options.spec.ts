import fc from 'fast-check';
import {
  expectedComponents,
  expectedTotals,
  fixtureRates,
  shaftOverLimit,
  shaftWithinLimit,
} from '../fixtures/repair-or-replace.fixture.js';
import { breakEvenProbability } from './break-even-probability.js';
import { compareOptions } from './compare-options.js';
import { expectedCostOfOption } from './expected-cost-of-option.js';
import type { OptionCostTerms } from './option-cost-terms.js';

const options: readonly OptionCostTerms[] = Object.values(shaftOverLimit);
const totals = (list: readonly OptionCostTerms[], rates = fixtureRates) =>
  compareOptions(list, rates).cheapestFirst.map(({ optionId, expectedTotal }) => [
    optionId,
    expectedTotal.amount,
  ]);

// The two wrong answers, so that a slip into either of them shows.
const withoutFollowUp = (option: OptionCostTerms): OptionCostTerms => ({
  ...option,
  comebackConsequence: 'handlingOnly',
});
const withoutDowntime = (option: OptionCostTerms): OptionCostTerms => ({ ...option, downtimeDays: '0' });

describe('expected cost of an option', () => {
  it('gives the totals and the order of the worked example, shaft over its limit', () => {
    expect(totals(options)).toEqual(expectedTotals.overLimit);
  });

  it('gives the total of the worked example, shaft within its limit', () => {
    expect(totals(Object.values(shaftWithinLimit))).toEqual(expectedTotals.withinLimit);
  });

  it('shows each component of the worked example', () => {
    for (const costed of compareOptions(options, fixtureRates).cheapestFirst) {
      const { partsAndLabour, downtime, costIfComeback, expectedComeback } = costed;
      expect(
        [partsAndLabour, downtime, costIfComeback, expectedComeback].map(({ amount }) => amount),
      ).toEqual(expectedComponents[costed.optionId as keyof typeof expectedComponents]);
    }
  });

  it('differs from the answer that leaves out the repair after a comeback, which would adjust a worn housing', () => {
    expect(totals(options.map(withoutFollowUp))).toEqual(expectedTotals.followUpLeftOut);
    expect(totals(options)[0]).not.toEqual(expectedTotals.followUpLeftOut[0]);
  });

  it('differs from the answer that leaves out downtime, which would fit the used housing second', () => {
    expect(totals(options.map(withoutDowntime))).toEqual(expectedTotals.downtimeLeftOut);
    expect(totals(options)[1]).not.toEqual(expectedTotals.downtimeLeftOut[1]);
  });

  it('takes the follow-up repair of the example as the total of the remanufactured option: 310 + 1.8 x 80 + 3 x 60 + 0.08 x 250', () => {
    const costed = expectedCostOfOption(shaftOverLimit.remanufactured, fixtureRates);
    expect(costed).toMatchObject({ expectedTotal: fixtureRates.followUpRepair });
  });

  it('counts a core deposit only with the chance of losing it: 80 at 0.25 adds 20', () => {
    const core = { deposit: { amount: '80.00', currency: 'EUR' }, probabilityOfLosing: '0.25' };
    expect(expectedCostOfOption({ ...shaftOverLimit.remanufactured, core }, fixtureRates)).toMatchObject({
      coreDepositAtRisk: { amount: '20.00' },
      expectedTotal: { amount: '674.00' },
    });
  });

  it.each([
    ['negativeAmount', { parts: { amount: '-1.00', currency: 'EUR' } }, ['parts']],
    ['currenciesDiffer', { parts: { amount: '1.00', currency: 'CHF' } }, ['parts']],
    ['notDecimal', { labourHours: '1,2' }, ['labourHours']],
    ['negativeAmount', { downtimeDays: '-2' }, ['downtimeDays']],
    ['probabilityOutOfRange', { probabilityOfComeback: '1.01' }, ['probabilityOfComeback']],
  ] as const)('says %s and where', (reason, change, members) => {
    const terms = { ...shaftOverLimit.reBush, ...change };
    expect(expectedCostOfOption(terms, fixtureRates)).toEqual({
      kind: 'cannotBePriced',
      optionId: 're-bush',
      reason,
      members,
    });
    expect(compareOptions([terms, shaftOverLimit.adjustOnly], fixtureRates).cheapestFirst).toHaveLength(1);
  });

  it('refuses two options of one id', () => {
    expect(() => compareOptions([shaftOverLimit.reBush, shaftOverLimit.reBush], fixtureRates)).toThrow(
      RangeError,
    );
  });

  it('gives the same order whatever the order of the options', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([...options], { minLength: options.length }), (shuffled) => {
        expect(totals(shuffled)).toEqual(expectedTotals.overLimit);
      }),
      { seed: 19, numRuns: 40 },
    );
  });

  it('adds up: the total is the sum of its components, to the last digit', () => {
    const cents = fc.integer({ min: 0, max: 10_000_000 });
    fc.assert(
      fc.property(
        cents,
        fc.integer({ min: 0, max: 999 }),
        fc.integer({ min: 0, max: 100 }),
        (parts, tenths, percent) => {
          const costed = expectedCostOfOption(
            {
              ...shaftOverLimit.reBush,
              parts: { amount: (parts / 100).toFixed(2), currency: 'EUR' },
              labourHours: (tenths / 10).toFixed(1),
              probabilityOfComeback: (percent / 100).toFixed(2),
            },
            fixtureRates,
          );
          // In cents all figures are integers: labour 8.00 x tenths, downtime 120.00, comeback 9.04 x percent.
          const expected = parts + 800 * tenths + 12_000 + 904 * percent;
          expect(costed).toMatchObject({ expectedTotal: { amount: (expected / 100).toFixed(2) } });
        },
      ),
      { seed: 20, numRuns: 200 },
    );
  });
});

describe('break-even probability', () => {
  it('is 0.519248 for adjusting against re-bushing: (565.40 - 96) / 904', () => {
    expect(breakEvenProbability(shaftOverLimit.adjustOnly, shaftOverLimit.reBush, fixtureRates)).toEqual({
      kind: 'at',
      probabilityOfComeback: 0.519248,
    });
  });

  it('puts both at one cost when the probability is put back in', () => {
    const costed = expectedCostOfOption(
      { ...shaftOverLimit.adjustOnly, probabilityOfComeback: '0.519248' },
      fixtureRates,
    );
    expect(costed).toMatchObject({ expectedTotal: { amount: '565.40' } });
  });

  it('says never where the option is dearer without any comeback, always where it is cheaper with a certain one', () => {
    expect(breakEvenProbability(shaftOverLimit.newOldStock, shaftOverLimit.reBush, fixtureRates)).toEqual({
      kind: 'neverCheaper',
    });
    expect(breakEvenProbability(shaftOverLimit.adjustOnly, shaftOverLimit.newOldStock, fixtureRates)).toEqual(
      { kind: 'alwaysCheaper' },
    );
  });

  it('says which option has no cost', () => {
    const broken = { ...shaftOverLimit.reBush, labourHours: 'four' };
    expect(breakEvenProbability(shaftOverLimit.adjustOnly, broken, fixtureRates)).toMatchObject({
      kind: 'cannotBePriced',
      options: [{ optionId: 're-bush', reason: 'notDecimal' }],
    });
  });
});
