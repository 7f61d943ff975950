import fc from 'fast-check';
import { housingOptions, wornHousing } from '../fixtures/worn-housing.fixture.js';
import { canonicaliseAssessmentInput, replayAssessment } from '../replay/canonicalise-assessment-input.js';
import { judgementTables } from '../tables/judgement-tables.js';
import type { Assessment, FlipPoint, PricedOption } from '../terms/assessment.js';
import type { AssessmentInput } from '../terms/assessment-input.js';
import type { LearnedTables } from '../tables/learned-tables.js';
import type { OptionTerms, PartOffer } from '../terms/option-terms.js';
import { assessRepairOrReplace } from './assess-repair-or-replace.js';

const euro = (amount: string) => ({ amount, currency: 'EUR' });
const priced = (assessment: Assessment, optionId: string): PricedOption => {
  const option = assessment.options.find((known) => known.optionId === optionId);
  if (option?.kind !== 'priced') throw new Error(`${optionId} is not priced`);
  return option;
};
const cost = (assessment: Assessment, optionId: string) =>
  Number(priced(assessment, optionId).expectedCost.amount);

const option = (optionId: string): OptionTerms =>
  housingOptions.find((known) => known.optionId === optionId)!;
const withOffer = (terms: OptionTerms, change: Partial<PartOffer>): OptionTerms => ({
  ...terms,
  offers: terms.offers.map((offer) => ({ ...offer, ...change })),
});
const replaced = (input: AssessmentInput, terms: OptionTerms): AssessmentInput => ({
  ...input,
  options: input.options.map((known) => (known.optionId === terms.optionId ? terms : known)),
});
const withWear = (input: AssessmentInput, value: number, standardUncertainty = 0.021): AssessmentInput => ({
  ...input,
  evidence: {
    ...input.evidence,
    wearNow: {
      kind: 'measured',
      value,
      standardUncertainty,
      count: 3,
      verdict: 'undecided',
      evidence: ['r'],
    },
  },
});

/** Tables without doubt, wear or complaints: only comebacks are left. */
const sure = (levels: Partial<Record<'adjust' | 'reBush' | 'fitNew', number>>): LearnedTables => {
  const size = judgementTables.comeback.mean.length;
  const mean = Array.from({ length: size }, () => 0);
  const logit = (p: number) => (p <= 0 ? -700 : p >= 1 ? 700 : Math.log(p / (1 - p)));
  const places = { adjust: 1, reBush: 2, fitNew: 5 };
  for (const [name, p] of Object.entries(levels)) mean[places[name as keyof typeof places]] = logit(p);
  const still = { start: { median: 0.1, logSd: 0 }, rate: { median: 1e-12, logSd: 0 }, parts: 1 };
  const { version, hash, functionalWidth } = judgementTables;
  // No chances by cause: the coefficients alone say how adjusting comes back.
  return {
    version,
    hash,
    functionalWidth,
    comeback: {
      mean,
      covariance: mean.map(() => mean.map(() => 0)),
      taught: { comebacks: 1, held: 1, running: 0 },
    },
    wear: {
      fittedPart: still,
      byAction: { reBush: still, fitUsed: still, fitRemanufactured: still, fitNew: still },
      incrementScale: 0,
    },
    complaints: { otherCausesRate: 0, wornRate: 0, onsetWidth: 0.1 },
    leadTime: { meanLogSlip: 0, betweenSuppliersSd: 0, withinSupplierSd: 0 },
  };
};

const plain: AssessmentInput = {
  ...wornHousing,
  planningDistanceKm: 0,
  options: [option('adjust'), option('re-bush')],
  evidence: { ...wornHousing.evidence, functionalCriterion: { kind: 'notDone' } },
};

describe('repair or replace: cases worked by hand', () => {
  it('is bare arithmetic without doubt, wear and distance', () => {
    // Comebacks: adjusting 0.6, re-bushing 0.1 at the first and every later try.
    // Re-bush: 35 + 4 x 80 + 2 x 60 = 475. A comeback costs 250 and the follow-up, which is re-bushing again:
    //   475 + 0.1 x (250 + 475) = 547.50. Expected comeback 0.1 x (250 + 547.50) = 79.75; total 554.75.
    // Adjust: 96. A comeback costs 250 and the cheaper of re-bushing, 547.50, and adjusting once more,
    //   96 + 0.6 x (250 + 547.50) = 574.50. So 0.6 x (250 + 547.50) = 478.50; total 574.50.
    const assessment = assessRepairOrReplace({ ...plain, tables: sure({ adjust: 0.6, reBush: 0.1 }) });
    expect(priced(assessment, 're-bush')).toMatchObject({
      expectedCost: { amount: '554.75' },
      components: {
        parts: { amount: '35.00' },
        labour: { amount: '320.00' },
        downtime: { amount: '120.00' },
        comeback: { amount: '79.75' },
        wearToCome: { amount: '0.00' },
      },
      expectedCostInterval: { lower: { amount: '554.75' }, upper: { amount: '554.75' } },
      probabilityOfBeingCheapest: 1,
    });
    expect(priced(assessment, 'adjust')).toMatchObject({
      expectedCost: { amount: '574.50' },
      outcomes: { withoutComeback: { amount: '96.00' }, withComeback: { amount: '893.50' } },
    });
    // Outcomes of adjusting without later doubt: 96 with 0.4; after a comeback 96 + 250 + 475 = 821 with 0.6 x 0.9, and
    // 821 + 725 = 1546 with 0.6 x 0.1. Mean 574.50; variance from these three.
    const variance = 0.4 * (96 - 574.5) ** 2 + 0.54 * (821 - 574.5) ** 2 + 0.06 * (1546 - 574.5) ** 2;
    expect(Number(priced(assessment, 'adjust').outcomes.standardDeviation.amount)).toBeCloseTo(
      Math.sqrt(variance),
      2,
    );
    expect(assessment.recommendation).toEqual({
      kind: 'recommended',
      optionId: 're-bush',
      consentNeeded: false,
    });
  });

  it('counts labour and a second downtime when the part is replaced under its own warranty', () => {
    // New part: 520 + 1.8 x 80 = 664, 14 days of waiting and half a day of work at 60: 870; 1534 in all.
    // A comeback (0.04) costs 250 + 144 + 870 = 1264, no part: 50.56. Total 1584.56.
    const promised = withOffer(option('new-old-stock'), {
      leadTime: { kind: 'toOrder', promisedDays: 14, delivered: [] },
    });
    const assessment = assessRepairOrReplace({
      ...plain,
      options: [promised],
      tables: sure({ fitNew: 0.04 }),
    });
    expect(priced(assessment, 'new-old-stock')).toMatchObject({
      expectedCost: { amount: '1584.56' },
      components: { comeback: { amount: '50.56' } },
      leadTimeDays: 14,
    });
    const labourToo = withOffer(promised, { warranty: { coversPart: true, coversLabour: true } });
    // The giver bears the labour too: 250 + 870 = 1120, x 0.04 = 44.80.
    expect(
      cost(
        assessRepairOrReplace({ ...plain, options: [labourToo], tables: sure({ fitNew: 0.04 }) }),
        'new-old-stock',
      ),
    ).toBe(1578.8);
  });

  it('counts a core deposit with the chance of losing it only: 80 at 0.1', () => {
    const assessment = assessRepairOrReplace(wornHousing);
    expect(priced(assessment, 'remanufactured').components.coreDepositAtRisk).toEqual(euro('8.00'));
    const safe = withOffer(option('remanufactured'), {
      core: { deposit: euro('80.00'), probabilityOfLosing: 0 },
    });
    expect(
      priced(assessRepairOrReplace(replaced(wornHousing, safe)), 'remanufactured').components
        .coreDepositAtRisk,
    ).toEqual(euro('0.00'));
  });

  it('leaves the wait out of the cost where the vehicle can be used meanwhile', () => {
    const usable = assessRepairOrReplace({ ...wornHousing, isUsableWhileWaiting: true });
    // half a day in the workshop at 60
    expect(priced(usable, 'new-old-stock').components.downtime).toEqual(euro('30.00'));
  });

  it('renews exactly when the plan reaches the criterion, where wear is certain', () => {
    // Wear 0.5 of the criterion, 0.1 per 10,000 km for certain, no spread: the criterion is reached after 50,000 km.
    const tables = { ...sure({ adjust: 0, reBush: 0 }) };
    const certain: AssessmentInput = {
      ...withWear(plain, 0.1, 0),
      tables,
      planningDistanceKm: 45_000,
      evidence: {
        ...withWear(plain, 0.1, 0).evidence,
        wearRate: { kind: 'estimated', perThousandKm: 0.002, standardError: 0, points: 9, evidence: [] },
      },
    };
    const reached = (km: number) =>
      priced(assessRepairOrReplace({ ...certain, planningDistanceKm: km }), 'adjust').wear
        .probabilityOfReachingCriterion;
    expect(reached(45_000)).toBe(0);
    expect(reached(55_000)).toBe(1);
  });
});

describe('repair or replace: limits', () => {
  it('costs nothing after the watch window when the plan has no distance', () => {
    for (const reported of assessRepairOrReplace({ ...wornHousing, planningDistanceKm: 0 }).options) {
      expect(reported).toMatchObject({ kind: 'priced', components: { wearToCome: { amount: '0.00' } } });
    }
  });

  it('recommends the only option there is, with certainty', () => {
    const assessment = assessRepairOrReplace({ ...wornHousing, options: [option('re-bush')] });
    expect(assessment.recommendation).toMatchObject({ kind: 'recommended', optionId: 're-bush' });
    expect(priced(assessment, 're-bush').probabilityOfBeingCheapest).toBe(1);
    expect(assessment.flipPoints).toEqual([]);
    expect(assessment.furtherReadings).toEqual({ kind: 'cannotBeSaid', why: 'fewerThanTwoOptions' });
  });

  it('never fits a part at an enormous price, and takes one that costs nothing and is here', () => {
    const dear = replaced(wornHousing, withOffer(option('re-bush'), { price: euro('900000.00') }));
    expect(assessRepairOrReplace(dear).recommendation).not.toMatchObject({ optionId: 're-bush' });
    const gift = withOffer(option('new-old-stock'), { price: euro('0.00'), leadTime: { kind: 'inStock' } });
    expect(assessRepairOrReplace(replaced(wornHousing, gift)).recommendation).toMatchObject({
      optionId: 'new-old-stock',
    });
  });

  it('adjusts a housing that hardly wears and replaces one far over its criterion', () => {
    expect(assessRepairOrReplace(withWear(wornHousing, 0.05)).recommendation).toMatchObject({
      optionId: 'adjust',
    });
    expect(assessRepairOrReplace(withWear(wornHousing, 0.32)).recommendation).toMatchObject({
      optionId: 're-bush',
    });
  });

  it('does not wear, complain or cost more than the repair in a world without either', () => {
    const assessment = assessRepairOrReplace({
      ...plain,
      planningDistanceKm: 120_000,
      tables: sure({ adjust: 0, reBush: 0 }),
    });
    expect(cost(assessment, 'adjust')).toBe(96);
    expect(cost(assessment, 're-bush')).toBe(475);
  });
});

describe('repair or replace: guards', () => {
  const positive: AssessmentInput = {
    ...wornHousing,
    evidence: {
      ...wornHousing.evidence,
      functionalCriterion: { kind: 'positive', isValid: true, evidence: ['check-1'] },
    },
  };

  it('takes leaving and adjusting out of the offer when the functional criterion is validly positive, and still shows their cost', () => {
    const assessment = assessRepairOrReplace(withWear(positive, 0.02));
    for (const id of ['leave', 'adjust']) {
      expect(priced(assessment, id)).toMatchObject({
        isAdmissible: false,
        removedBy: ['functionalCriterionPositive'],
        probabilityOfBeingCheapest: null,
      });
    }
    expect(assessment.recommendation).toMatchObject({ kind: 'recommended', optionId: 're-bush' });
    expect(assessment.guards).toContainEqual({
      code: 'functionalCriterionPositive',
      optionId: 'adjust',
      evidence: ['check-1'],
    });
  });

  it('does not act on a positive that is not valid', () => {
    const invalid: AssessmentInput = {
      ...wornHousing,
      evidence: {
        ...wornHousing.evidence,
        functionalCriterion: { kind: 'positive', isValid: false, evidence: ['check-1'] },
      },
    };
    const assessment = assessRepairOrReplace(invalid);
    expect(priced(assessment, 'adjust').isAdmissible).toBe(true);
    expect(assessment.reasons.map(({ code }) => code)).toContain('functionalCriterionNotValid');
  });

  it('never trades a dangerous finding against money', () => {
    const unsafe: AssessmentInput = {
      ...withWear(wornHousing, 0.02),
      evidence: {
        ...withWear(wornHousing, 0.02).evidence,
        safetyFindings: [{ findingId: 'does-not-return', curedBy: ['fitNew'], evidence: ['finding-9'] }],
      },
    };
    const assessment = assessRepairOrReplace(unsafe);
    expect(assessment.options[0]?.optionId).not.toBe('new-old-stock');
    expect(assessment.recommendation).toMatchObject({ kind: 'recommended', optionId: 'new-old-stock' });
    const none = {
      ...unsafe,
      evidence: { ...unsafe.evidence, safetyFindings: [{ findingId: 'f', curedBy: [], evidence: [] }] },
    };
    expect(assessRepairOrReplace(none).recommendation).toEqual({ kind: 'none', why: 'nothingAdmissible' });
  });

  it('does not offer what the customer has declined, and asks for consent beyond the agreed amount', () => {
    const declined = assessRepairOrReplace({
      ...wornHousing,
      consent: { declinedActions: ['reBush'], ceiling: euro('50.00'), evidence: ['call-2'] },
    });
    expect(priced(declined, 're-bush').removedBy).toEqual(['customerDeclined']);
    expect(declined.recommendation).toMatchObject({ consentNeeded: true });
    expect(declined.guards).toContainEqual(
      expect.objectContaining({ code: 'consentNeeded', evidence: ['call-2'] }),
    );
    const free: AssessmentInput = {
      ...withWear(wornHousing, 0.05),
      consent: { declinedActions: [], ceiling: euro('96.00'), evidence: [] },
    };
    expect(assessRepairOrReplace(free).recommendation).toMatchObject({
      optionId: 'adjust',
      consentNeeded: false,
    });
  });

  it('offers further readings before it replaces on an undecided measurement, once', () => {
    // Without functional check and with a coarse first reading close to where the answer flips, measuring pays.
    const coarse = withWear(
      { ...wornHousing, evidence: { ...wornHousing.evidence, functionalCriterion: { kind: 'notDone' } } },
      0.16,
      0.05,
    );
    const readings = {
      kind: 'available',
      count: 3,
      standardUncertainty: 0.01,
      labourHours: 0.02,
      wereOffered: false,
    } as const;
    const before = assessRepairOrReplace({ ...coarse, furtherReadings: readings });
    expect(before.furtherReadings.kind).toBe('worthIt');
    expect(before.recommendation).toMatchObject({ kind: 'measureFirst', readings: 3 });
    const beyond = assessRepairOrReplace({ ...withWear(coarse, 0.2, 0.05), furtherReadings: readings });
    expect(beyond.recommendation).toMatchObject({ kind: 'measureFirst', optionId: 're-bush' });
    expect(beyond.guards.map(({ code }) => code)).toContain('undecidedReadingAlone');
    const after = assessRepairOrReplace({ ...coarse, furtherReadings: { ...readings, wereOffered: true } });
    expect(after.recommendation.kind).not.toBe('measureFirst');
    const dear = assessRepairOrReplace({ ...coarse, furtherReadings: { ...readings, labourHours: 50 } });
    expect(dear.furtherReadings.kind).toBe('notWorthIt');
  });

  it('has contradictory readings repeated before it replaces', () => {
    const contradictory: AssessmentInput = {
      ...wornHousing,
      evidence: {
        ...wornHousing.evidence,
        functionalCriterion: { kind: 'notDone' },
        wearNow: { kind: 'contradictory', evidence: ['pair-1'] },
      },
    };
    const assessment = assessRepairOrReplace(contradictory);
    expect(assessment.reasons).toContainEqual({
      code: 'readingsContradict',
      optionId: null,
      values: {},
      evidence: ['pair-1'],
    });
    const dearest = assessment.options[0]!;
    if (dearest.action !== 'adjust') expect(assessment.recommendation.kind).toBe('measureFirst');
  });
});

describe('repair or replace: what is missing or wrong', () => {
  const only = (terms: OptionTerms) =>
    assessRepairOrReplace(replaced(wornHousing, terms)).options.find(
      ({ optionId }) => optionId === terms.optionId,
    );

  it.each([
    ['noOffers', { ...option('used'), offers: [] }, null],
    ['priceMissing', withOffer(option('used'), { price: null }), 'donor'],
    ['priceNegative', withOffer(option('used'), { price: euro('-1.00') }), 'donor'],
    ['priceAbsurd', withOffer(option('used'), { price: euro('99999999999.00') }), 'donor'],
    ['currencyDiffers', withOffer(option('used'), { price: { amount: '10.00', currency: 'CHF' } }), 'donor'],
    [
      'leadTimeUnknown',
      withOffer(option('used'), { leadTime: { kind: 'toOrder', promisedDays: null, delivered: [] } }),
      'donor',
    ],
    [
      'depositNegative',
      withOffer(option('used'), { core: { deposit: euro('-5.00'), probabilityOfLosing: 0.1 } }),
      'donor',
    ],
  ] as const)('says %s for the option it concerns, and prices the others', (code, terms, at) => {
    expect(only(terms)).toEqual({
      kind: 'cannotBePriced',
      optionId: 'used',
      action: 'fitUsed',
      removedBy: [],
      problems: [{ code, at }],
    });
    expect(assessRepairOrReplace(replaced(wornHousing, terms)).recommendation).toMatchObject({
      optionId: 're-bush',
    });
  });

  it.each([
    ['labourRateMissing', 'labourPerHour'],
    ['downtimeCostMissing', 'downtimePerDay'],
    ['comebackHandlingMissing', 'comebackHandling'],
  ] as const)('prices nothing with %s, and says so for every option', (code, at) => {
    const assessment = assessRepairOrReplace({ ...wornHousing, rates: { ...wornHousing.rates, [at]: null } });
    expect(assessment.recommendation).toEqual({ kind: 'none', why: 'nothingPriced' });
    expect(assessment.options).toHaveLength(6);
    for (const unpriced of assessment.options)
      expect(unpriced).toMatchObject({ kind: 'cannotBePriced', problems: [{ code, at }] });
  });

  it('says that what follows a comeback has no price where nobody offers anything that renews the part', () => {
    const assessment = assessRepairOrReplace({
      ...wornHousing,
      options: [option('adjust'), { ...option('used'), offers: [] }],
    });
    expect(assessment.options).toMatchObject([
      {
        kind: 'cannotBePriced',
        optionId: 'adjust',
        problems: [{ code: 'repairAfterComebackCannotBePriced' }],
      },
      { kind: 'cannotBePriced', optionId: 'used', problems: [{ code: 'noOffers' }] },
    ]);
    expect(assessRepairOrReplace({ ...wornHousing, options: [] }).recommendation).toEqual({
      kind: 'none',
      why: 'noOptions',
    });
  });

  it('assesses without any reading or history, from the population, and says so', () => {
    const unknown: AssessmentInput = {
      ...wornHousing,
      evidence: {
        ...wornHousing.evidence,
        wearNow: { kind: 'notMeasured' },
        wearRate: { kind: 'insufficientData', needed: 2, got: 0 },
        functionalCriterion: { kind: 'notDone' },
      },
    };
    const codes = assessRepairOrReplace(unknown).reasons.map(({ code }) => code);
    expect(codes).toEqual(
      expect.arrayContaining([
        'wearNotMeasured',
        'rateFromPopulation',
        'functionalCriterionNotDone',
        'judgementNumbersOnly',
      ]),
    );
  });

  it('answers ten comebacks with numbers, and trusts adjusting less for them', () => {
    const often = (count: number): AssessmentInput => ({
      ...wornHousing,
      evidence: { ...wornHousing.evidence, earlierComebacks: { count, evidence: ['job-1'] } },
    });
    const ten = assessRepairOrReplace(often(10));
    expect(priced(ten, 'adjust').comeback.probability).toBeGreaterThan(
      priced(assessRepairOrReplace(often(0)), 'adjust').comeback.probability,
    );
    expect(ten.reasons).toContainEqual({
      code: 'earlierComebacks',
      optionId: null,
      values: { count: { value: '10', unit: '1' } },
      evidence: ['job-1'],
    });
    expect(JSON.stringify(ten)).not.toMatch(/NaN|null,"unit"/);
  });

  it('says when the reading lies beyond the model', () => {
    expect(assessRepairOrReplace(withWear(wornHousing, 0.9)).reasons.map(({ code }) => code)).toContain(
      'wearBeyondModel',
    );
  });

  it.each([
    ['a reading that is no number', withWear(wornHousing, NaN)],
    ['an uncertainty below zero', withWear(wornHousing, 0.1, -1)],
    ['a planning distance below zero', { ...wornHousing, planningDistanceKm: -1 }],
    ['a watch window of nothing', { ...wornHousing, watchWindowKm: 0 }],
    ['a seed that is no whole number', { ...wornHousing, seed: 0.5 }],
    ['two options of one id', { ...wornHousing, options: [option('adjust'), option('adjust')] }],
    [
      'a criterion on the wrong side',
      { ...wornHousing, characteristic: { ...wornHousing.characteristic, criterionSize: -1 } },
    ],
    ['hours below zero', replaced(wornHousing, { ...option('adjust'), labourHours: -1 })],
  ])('refuses %s', (_name, input) => {
    expect(() => assessRepairOrReplace(input)).toThrow(RangeError);
  });
});

describe('repair or replace: monotone, and indifferent to what must not matter', () => {
  const wear = fc.integer({ min: 0, max: 38 }).map((hundredths) => hundredths / 100);

  it('never makes adjusting cheaper, against any renewal, with more wear', () => {
    fc.assert(
      fc.property(wear, fc.integer({ min: 1, max: 8 }), (value, more) => {
        const less = assessRepairOrReplace(withWear(wornHousing, value));
        const worse = assessRepairOrReplace(withWear(wornHousing, value + more / 100));
        for (const renewal of ['re-bush', 'used', 'remanufactured', 'new-old-stock']) {
          expect(cost(worse, 'adjust') - cost(worse, renewal)).toBeGreaterThanOrEqual(
            cost(less, 'adjust') - cost(less, renewal) - 0.02,
          );
        }
        expect(priced(worse, 'adjust').comeback.probability).toBeGreaterThanOrEqual(
          priced(less, 'adjust').comeback.probability,
        );
      }),
      { seed: 51, numRuns: 12 },
    );
  });

  it('never makes a dearer part, a longer wait or a likelier lost core cheaper', () => {
    fc.assert(
      fc.property(wear, fc.integer({ min: 1, max: 400 }), (value, more) => {
        const base = withWear(wornHousing, value);
        const [offer] = option('remanufactured').offers;
        const now = cost(assessRepairOrReplace(base), 'remanufactured');
        const changes: Partial<PartOffer>[] = [
          { price: euro((310 + more).toFixed(2)) },
          { leadTime: { kind: 'toOrder', promisedDays: 5 + more / 10, delivered: [] } },
          { core: { deposit: euro('80.00'), probabilityOfLosing: 0.1 + more / 1000 } },
        ];
        const bases: Partial<PartOffer>[] = [
          {},
          { leadTime: { kind: 'toOrder', promisedDays: 5, delivered: [] } },
          {},
        ];
        changes.forEach((change, k) => {
          const before =
            k === 1
              ? cost(
                  assessRepairOrReplace(replaced(base, withOffer(option('remanufactured'), bases[k]!))),
                  'remanufactured',
                )
              : now;
          const after = assessRepairOrReplace(replaced(base, withOffer(option('remanufactured'), change)));
          expect(cost(after, 'remanufactured')).toBeGreaterThanOrEqual(before);
        });
        expect(offer).toBeDefined();
      }),
      { seed: 52, numRuns: 6 },
    );
  });

  it('gives one answer whatever the order of options and offers', () => {
    const second: PartOffer = {
      ...option('used').offers[0]!,
      offerId: 'other-donor',
      price: euro('90.00'),
      arrivalWear: { kind: 'notMeasured' },
    };
    const two = replaced(wornHousing, { ...option('used'), offers: [...option('used').offers, second] });
    const swapped = {
      ...replaced(wornHousing, { ...option('used'), offers: [second, ...option('used').offers] }),
    };
    const turned = { ...swapped, options: swapped.options.toReversed() };
    expect(assessRepairOrReplace(turned)).toEqual(assessRepairOrReplace(two));
    expect(canonicaliseAssessmentInput(turned)).toBe(canonicaliseAssessmentInput(two));
    expect(priced(assessRepairOrReplace(two), 'used').otherOffers).toHaveLength(1);
  });

  it('gives the same decision in micrometres', () => {
    const { wearNow, wearRate } = wornHousing.evidence;
    if (wearNow.kind !== 'measured' || wearRate.kind !== 'estimated')
      throw new Error('the fixture is measured');
    const used = option('used');
    const arrival = { kind: 'measured', value: 60, standardUncertainty: 20, evidence: [] } as const;
    const micrometres: AssessmentInput = {
      ...replaced(wornHousing, withOffer(used, { arrivalWear: arrival })),
      characteristic: { ...wornHousing.characteristic, unit: 'um', criterionSize: 200 },
      evidence: {
        ...wornHousing.evidence,
        wearNow: { ...wearNow, value: 210, standardUncertainty: 21 },
        wearRate: { ...wearRate, perThousandKm: 1, standardError: 0.3 },
      },
      furtherReadings: {
        kind: 'available',
        count: 3,
        standardUncertainty: 19,
        labourHours: 0.2,
        wereOffered: false,
      },
    };
    const one = assessRepairOrReplace(wornHousing);
    const other = assessRepairOrReplace(micrometres);
    for (const { optionId } of housingOptions) {
      const a = priced(one, optionId);
      expect({ ...priced(other, optionId), wear: a.wear }).toEqual(a);
    }
    expect(other.recommendation).toEqual(one.recommendation);
    expect(other.belief.wearNow.mean.unit).toBe('um');
    expect(Number(other.belief.wearNow.mean.value)).toBeCloseTo(
      1000 * Number(one.belief.wearNow.mean.value),
      6,
    );
  });

  it('treats a lining that wears down like a play that grows', () => {
    // Thickness 10 new, worn at 2: 5.6 is a share of 0.55, as a play of 0.11 is of 0.20.
    const down: AssessmentInput = {
      ...withWear(wornHousing, 5.6, (8 * 0.021) / 0.2),
      characteristic: {
        characteristicId: 'lining',
        unit: 'mm',
        direction: 'down',
        unwornSize: 10,
        criterionSize: 2,
      },
      options: [option('adjust'), option('re-bush')],
    };
    const same = (input: AssessmentInput): AssessmentInput => ({
      ...input,
      evidence: { ...input.evidence, wearRate: { kind: 'insufficientData', needed: 2, got: 0 } },
      furtherReadings: { kind: 'notAvailable' },
    });
    const up = assessRepairOrReplace(same({ ...withWear(wornHousing, 0.11), options: down.options }));
    const lining = assessRepairOrReplace(same(down));
    expect(cost(lining, 'adjust')).toBe(cost(up, 'adjust'));
    expect(cost(lining, 're-bush')).toBe(cost(up, 're-bush'));
  });

  it('has expected costs that do not depend on the seed, and intervals that hold them', () => {
    const one = assessRepairOrReplace(wornHousing);
    const other = assessRepairOrReplace({ ...wornHousing, seed: 1 });
    for (const { optionId } of housingOptions) {
      const a = priced(one, optionId);
      expect(priced(other, optionId).expectedCost).toEqual(a.expectedCost);
      expect(Number(a.expectedCostInterval.lower.amount)).toBeLessThan(Number(a.expectedCost.amount));
      expect(Number(a.expectedCostInterval.upper.amount)).toBeGreaterThan(Number(a.expectedCost.amount));
    }
    const sum = one.options.reduce(
      (total, known) => total + (known.kind === 'priced' ? (known.probabilityOfBeingCheapest ?? 0) : 0),
      0,
    );
    expect(sum).toBeCloseTo(1, 3);
  });

  it('has components that add up to the expected cost, to the last digit', () => {
    for (const known of assessRepairOrReplace(wornHousing).options) {
      if (known.kind !== 'priced') throw new Error('all are priced');
      let cents = 0;
      for (const { amount } of Object.values(known.components)) cents += Math.round(Number(amount) * 100);
      expect(cents).toBe(Math.round(Number(known.expectedCost.amount) * 100));
    }
  });
});

describe('repair or replace: replay', () => {
  it('gives the same answer to the last digit from the stored text', () => {
    const text = canonicaliseAssessmentInput(wornHousing);
    expect(replayAssessment(text)).toEqual(assessRepairOrReplace(wornHousing));
    expect(canonicaliseAssessmentInput(JSON.parse(text) as AssessmentInput)).toBe(text);
  });

  it('differs in nothing but the flip points when they are left out', () => {
    expect(assessRepairOrReplace(wornHousing, 'withoutFlipPoints')).toEqual({
      ...assessRepairOrReplace(wornHousing),
      flipPoints: [],
    });
  });

  it('refuses to store a number that is none', () => {
    expect(() => canonicaliseAssessmentInput(withWear(wornHousing, Infinity))).toThrow(RangeError);
  });
});

describe('repair or replace: flip points', () => {
  const assessment = assessRepairOrReplace(wornHousing);
  const find = (quantity: FlipPoint['quantity'], optionId: string | null) =>
    assessment.flipPoints.filter((flip) => flip.quantity === quantity && flip.optionId === optionId);
  const bestOf = (input: AssessmentInput) => assessRepairOrReplace(input).options[0]!.optionId;
  const flipAt = (quantity: FlipPoint['quantity'], optionId: string | null) => {
    const [flip] = find(quantity, optionId);
    if (flip?.kind !== 'flipsAt') throw new Error(`no flip of ${quantity}`);
    return { at: Number(flip.at.value), to: flip.toOptionId };
  };

  it('turns the answer at the reading it names', () => {
    const { at, to } = flipAt('wearNow', null);
    expect(bestOf(withWear(wornHousing, at * 1.01))).toBe('re-bush');
    expect(bestOf(withWear(wornHousing, at * 0.99))).toBe(to);
  });

  it('turns the answer at the price it names', () => {
    const { at, to } = flipAt('price', 'remanufactured');
    const at_ = (price: number) =>
      bestOf(replaced(wornHousing, withOffer(option('remanufactured'), { price: euro(price.toFixed(2)) })));
    expect(at_(at * 1.01)).toBe('re-bush');
    expect(at_(at * 0.99)).toBe(to);
  });

  it('turns the answer at the downtime cost it names', () => {
    // The exchange unit on the shelf is dearer but keeps the van a day and a half less.
    const onShelf = replaced(
      wornHousing,
      withOffer(option('remanufactured'), { leadTime: { kind: 'inStock' } }),
    );
    const flip = assessRepairOrReplace(onShelf).flipPoints.find(
      ({ quantity }) => quantity === 'downtimeCost',
    );
    if (flip?.kind !== 'flipsAt') throw new Error('no flip of the downtime cost');
    const at_ = (day: number) =>
      bestOf({ ...onShelf, rates: { ...onShelf.rates, downtimePerDay: euro(day.toFixed(2)) } });
    const at = Number(flip.at.value);
    const sides = at > 60 ? [0.99, 1.01] : [1.01, 0.99];
    expect(at_(at * sides[0]!)).toBe(bestOf(onShelf));
    expect(at_(at * sides[1]!)).toBe(flip.toOptionId);
  });

  it('turns the answer at the lead time it names', () => {
    const { at, to } = flipAt('leadTime', 're-bush');
    const still: LearnedTables = {
      ...judgementTables,
      leadTime: { meanLogSlip: 0, betweenSuppliersSd: 0, withinSupplierSd: 0 },
    };
    const at_ = (days: number) =>
      bestOf({
        ...replaced(
          wornHousing,
          withOffer(option('re-bush'), { leadTime: { kind: 'toOrder', promisedDays: days, delivered: [] } }),
        ),
        tables: still,
      });
    const exact = assessRepairOrReplace({ ...wornHousing, tables: still }).flipPoints.find(
      (flip) => flip.quantity === 'leadTime' && flip.optionId === 're-bush',
    );
    if (exact?.kind !== 'flipsAt') throw new Error('no flip without slips');
    expect(at_(Number(exact.at.value) * 0.99)).toBe('re-bush');
    expect(at_(Number(exact.at.value) * 1.01)).toBe(exact.toOptionId);
    expect([at > 0, to.length > 0]).toEqual([true, true]);
  });

  it('turns the answer at the comeback chance it names: the gap over the cost of a comeback', () => {
    const best = priced(assessment, 're-bush');
    const gap =
      Number(priced(assessment, assessment.options[1]!.optionId).expectedCost.amount) -
      Number(best.expectedCost.amount);
    const per = Number(best.outcomes.withComeback.amount) - Number(best.outcomes.withoutComeback.amount);
    expect(flipAt('comebackProbability', 're-bush').at).toBeCloseTo(best.comeback.probability + gap / per, 3);
  });

  it('names the range it searched where nothing turns the answer', () => {
    const [flip] = find('price', 'new-old-stock');
    expect(flip).toMatchObject({
      kind: 'noFlipWithin',
      lower: { value: '0.00', unit: 'EUR' },
      upper: { value: '520.00', unit: 'EUR' },
    });
  });
});

describe('repair or replace: at a planned visit', () => {
  const visit: AssessmentInput = { ...wornHousing, occasion: 'serviceVisit' };

  it('leaves a part that hardly wears, and orders ahead for one that does', () => {
    expect(assessRepairOrReplace(withWear(visit, 0.05)).recommendation).toMatchObject({ optionId: 'leave' });
    const worn = assessRepairOrReplace(withWear(visit, 0.3));
    // Without waiting for it, the exchange unit that wears less wins over re-bushing.
    expect(worn.options[0]).toMatchObject({ optionId: 'remanufactured', isAdmissible: true });
    expect(worn.reasons.map(({ code }) => code)).toContain('replaceAtNextVisit');
    // Ordered ahead: half a day in the workshop, no wait.
    expect(priced(worn, 'new-old-stock').components.downtime).toEqual(euro('30.00'));
  });
});
