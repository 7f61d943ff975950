import type { CheckResult, Evidence } from './evidence/evidence.js';
import { judgementTables as tables } from './fixtures/judgement-tables.js';
import type { WorkedStage } from './fixtures/worked-example.js';
import { workedExamples } from './fixtures/worked-examples.js';
import { rankCheckChains } from './ranking/rank-check-chains.js';
import { rankSingleChecks } from './ranking/rank-single-checks.js';
import { singleCausePosterior } from './single-cause/single-cause-posterior.js';

/** The examples print six digits; the file asks for 1e-5. */
const DIGITS = 5;

const evidenceOf = (
  present: readonly string[],
  absent: readonly string[],
  results: readonly CheckResult[],
): Evidence => ({
  symptoms: Object.fromEntries([
    ...present.map((id) => [id, 'present']),
    ...absent.map((id) => [id, 'absent']),
  ]),
  results,
});

function expectStage(evidence: Evidence, stage: WorkedStage, ignorePrerequisites: boolean): void {
  const posterior = singleCausePosterior(tables, evidence);
  if (posterior.kind !== 'estimated') throw new Error('expected a posterior');
  expect(posterior.causes.map((cause) => cause.causeId)).toEqual(tables.causes.map((cause) => cause.id));
  stage.posterior.forEach((expected, i) =>
    expect(posterior.causes[i]!.probability).toBeCloseTo(expected, DIGITS),
  );
  expect(posterior.entropyBits).toBeCloseTo(stage.entropyBits, DIGITS);
  if (stage.ranking !== null) {
    const ranking = rankSingleChecks(tables, evidence, { ignorePrerequisites });
    if (ranking.kind !== 'ranked') throw new Error('expected a ranking');
    expect(ranking.checks.map((check) => check.checkId)).toEqual(stage.ranking.map(([id]) => id));
    stage.ranking.forEach(([, bits, positive], i) => {
      expect(ranking.checks[i]!.informationBits).toBeCloseTo(bits, DIGITS);
      expect(ranking.checks[i]!.probabilityPositive).toBeCloseTo(positive, DIGITS);
    });
  }
  if (stage.chains !== null) {
    const ranking = rankCheckChains(tables, evidence);
    if (ranking.kind !== 'ranked') throw new Error('expected a ranking');
    const best = ranking.chains.slice(0, stage.chains.length);
    expect(best.map((chain) => chain.chain)).toEqual(stage.chains.map(([chain]) => chain));
    stage.chains.forEach(([, bits, minutes], i) => {
      expect(best[i]!.jointInformationBits).toBeCloseTo(bits, DIGITS);
      expect(best[i]!.minutes).toBe(minutes);
    });
  }
}

describe('the eight worked examples of the judgement tables', () => {
  it('are eight, with rankings and chains among them', () => {
    expect(workedExamples).toHaveLength(8);
    expect(
      workedExamples
        .flatMap((e) => [e.afterSymptoms, ...e.steps.map((s) => s.after)])
        .filter((s) => s.chains !== null).length,
    ).toBeGreaterThan(12);
  });

  it.each(workedExamples.map((example) => [example.id, example] as const))(
    'come out for %s at every stage',
    (_id, example) => {
      const ignore = !example.respectsPrerequisites;
      expectStage(evidenceOf(example.present, example.absent, []), example.afterSymptoms, ignore);
      const results: CheckResult[] = [];
      for (const step of example.steps) {
        results.push({ checkId: step.check, outcome: step.result });
        expectStage(evidenceOf(example.present, example.absent, results), step.after, ignore);
      }
    },
  );
});
