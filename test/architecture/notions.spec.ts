import { valuesOf } from './project-files.js';

/**
 * Neighbours do not import each other, so a list that two of them need stands in both. Here such lists are held equal.
 */
const from = async (file: string, name: string): Promise<unknown> => {
  const value = (await valuesOf(file))[name];
  if (value === undefined) throw new Error(`${file} exports no ${name}`);
  return value;
};
const sorted = async (file: string, name: string): Promise<string[]> =>
  [...((await from(file, name)) as readonly string[])].sort();
type Tables = Readonly<Record<'causes' | 'symptoms' | 'checks', unknown>>;

describe('notions that stand in two rooms', () => {
  it('are the same conditions of a part where they are offered, priced and fitted', async () => {
    const catalogue = await sorted('libs/catalogue/src/index.ts', 'partConditions');
    expect(await sorted('libs/decision/src/terms/option-actions.ts', 'offeredConditions')).toEqual(catalogue);
    const fitted = await sorted('libs/workshop/src/ports/index.ts', 'fittedConditions');
    expect(fitted).toEqual([...catalogue, 'original'].sort());
  });

  it('are the same starting tables of diagnosis where they are shipped and where they are worked by hand', async () => {
    const shipped = (await from('libs/catalogue/src/index.ts', 'shippedDiagnosisTables')) as Tables;
    const worked = (await from(
      'libs/diagnosis/src/fixtures/judgement-tables.ts',
      'judgementTables',
    )) as Tables;
    for (const part of ['causes', 'symptoms', 'checks'] as const) expect(worked[part]).toEqual(shipped[part]);
  });

  it('are the same two phases of a reading where it is stored and where it enters a trend', async () => {
    expect(await sorted('libs/wear/src/trend/as-found-points.ts', 'readingPhases')).toEqual(
      await sorted('libs/workshop/src/ports/index.ts', 'readingPhases'),
    );
  });

  it('are the same outcomes of a verdict, those not judged added where it is stored', async () => {
    const computed = await sorted('libs/metrology/src/index.ts', 'verdictOutcomes');
    expect(await sorted('libs/workshop/src/ports/index.ts', 'verdictOutcomes')).toEqual(
      [...computed, 'notJudged'].sort(),
    );
  });

  it('are the same answers to a symptom, the one not asked left out where it is stored', async () => {
    const computed = await sorted('libs/diagnosis/src/evidence/evidence.ts', 'symptomStates');
    expect(await sorted('libs/workshop/src/ports/index.ts', 'symptomAnswers')).toEqual(
      computed.filter((state) => state !== 'notAsked'),
    );
  });

  it('are units of distance or time that the odometer and the table of units both know', async () => {
    const known = await sorted('libs/metrology/src/index.ts', 'unitCodes');
    const shown = await sorted('libs/workshop/src/index.ts', 'odometerUnits');
    expect(shown.length).toBeGreaterThan(1);
    expect(shown.filter((unit) => !known.includes(unit))).toEqual([]);
  });
});
