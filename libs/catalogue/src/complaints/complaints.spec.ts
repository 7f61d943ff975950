import { comebackAttributionDefinitions, comebackAttributions } from '../comebacks/comeback-attributions.js';
import { shippedDiagnosisTables } from '../diagnosis-tables/shipped-diagnosis-tables.js';
import { partConditionDefinitions, partConditions } from '../parts/part-conditions.js';
import { mandatoryRoadTestPoints } from '../road-test/mandatory-road-test-points.js';
import { roadTestPoints } from '../road-test/road-test-points.js';
import { causes } from './causes.js';
import { operatingConditions } from './operating-conditions.js';
import { symptomFamilies } from './symptom-families.js';
import { symptoms } from './symptoms.js';

const ids = (rows: readonly { readonly id: string }[]): readonly string[] => rows.map((row) => row.id);

describe('complaints', () => {
  it('are ten symptoms and twelve causes, the same as in the tables, with unique ids', () => {
    expect(ids(symptoms)).toEqual(ids(shippedDiagnosisTables.symptoms));
    expect(ids(causes)).toEqual(ids(shippedDiagnosisTables.causes));
    expect(new Set(ids(symptoms)).size).toBe(10);
    expect(new Set(ids(causes)).size).toBe(12);
  });

  it('keep one cause open for what the list does not name', () => {
    expect(causes.filter((cause) => cause.openRemainder).map((cause) => cause.id)).toEqual(['other-cause']);
  });

  it('ask questions, quote customers and belong to a family', () => {
    for (const symptom of symptoms) {
      expect(symptom.ask.every((question) => question.endsWith('?'))).toBe(true);
      expect(symptom.customerSays.length).toBeGreaterThan(0);
      expect(ids(symptomFamilies)).toContain(symptom.familyId);
    }
  });

  it('name each operating condition once, a choice with its choices and a quantity with its kind', () => {
    expect(new Set(ids(operatingConditions)).size).toBe(operatingConditions.length);
    for (const condition of operatingConditions) {
      expect([condition.id, condition.choices.length > 1]).toEqual([
        condition.id,
        condition.kind === 'choice',
      ]);
      expect([condition.id, condition.quantityKind !== null]).toEqual([
        condition.id,
        condition.kind === 'quantity',
      ]);
    }
  });
});

describe('the starting tables', () => {
  it('have priors that add up to one and probabilities strictly between 0 and 1 in every cell', () => {
    expect(shippedDiagnosisTables.causes.reduce((sum, cause) => sum + cause.prior, 0)).toBeCloseTo(1, 12);
    const rows = [
      ...shippedDiagnosisTables.symptoms.map((row) => row.presentGivenCause),
      ...shippedDiagnosisTables.checks.map((row) => row.positiveGivenCause),
    ];
    for (const row of rows) {
      expect(Object.keys(row)).toEqual(ids(causes));
      expect(Object.values(row).every((p) => p > 0 && p < 1)).toBe(true);
    }
  });

  it('add up to 93 minutes of checks, three of them opening moves', () => {
    expect(shippedDiagnosisTables.checks.reduce((sum, row) => sum + row.minutes, 0)).toBe(93);
    expect(shippedDiagnosisTables.checks.filter((row) => row.openingMove)).toHaveLength(3);
  });
});

describe('mandatoryRoadTestPoints', () => {
  it('gives every complaint at least one point that must pass', () => {
    for (const symptom of symptoms)
      expect([symptom.id, mandatoryRoadTestPoints([symptom.id]).length > 0]).toEqual([symptom.id, true]);
  });

  it('names each point once and in driving order, nothing for no or unknown complaints', () => {
    const all = mandatoryRoadTestPoints(ids(symptoms));
    expect(all).toEqual(ids(roadTestPoints).filter((id) => all.includes(id)));
    expect(mandatoryRoadTestPoints([])).toEqual([]);
    expect(mandatoryRoadTestPoints(['rattles'])).toEqual([]);
  });

  it('tests the load, the light throttle, the overrun and the cold start where they were the complaint', () => {
    expect(mandatoryRoadTestPoints(['idle-rises-with-ac'])).toContain('ac-load-at-hot-idle');
    expect(mandatoryRoadTestPoints(['bucks-at-light-throttle'])).toContain('light-throttle-steady');
    expect(mandatoryRoadTestPoints(['no-overrun-fuel-cut-off'])).toContain('overrun-fuel-cut-off');
    expect(mandatoryRoadTestPoints(['stalls-cold'])).toContain('cold-start-idle');
    expect(ids(roadTestPoints)).toEqual(
      expect.arrayContaining(['full-throttle-enrichment', 'idle-stabilisation']),
    );
  });

  it('knows every complaint that a point is mandatory for', () => {
    for (const point of roadTestPoints)
      for (const id of point.mandatoryFor) expect(ids(symptoms)).toContain(id);
  });
});

describe('attribution and part condition', () => {
  it('define every class once', () => {
    expect(ids(comebackAttributionDefinitions)).toEqual(comebackAttributions);
    expect(ids(partConditionDefinitions)).toEqual(partConditions);
  });

  it('count against nobody what nobody could help', () => {
    expect(
      comebackAttributionDefinitions.filter((entry) => !entry.attributable).map((entry) => entry.id),
    ).toEqual([
      'intermittentNotReproduced',
      'recommendedWorkDeclined',
      'newUnrelatedFault',
      'operatingFuelTampering',
    ]);
  });

  it('measure a used housing before it is fitted', () => {
    expect(partConditionDefinitions.find((entry) => entry.id === 'used')!.inspectBeforeFitting).toBe(true);
  });
});
