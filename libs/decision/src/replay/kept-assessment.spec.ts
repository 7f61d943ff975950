import { modelVersion } from '../assess/assess-repair-or-replace.js';
import { keptAssessment } from '../fixtures/kept-assessment.fixture.js';
import { canonicaliseAssessmentInput, replayAssessment } from './canonicalise-assessment-input.js';

describe('an assessment kept from another day and machine', () => {
  const kept = JSON.parse(keptAssessment.result) as { readonly modelVersion: string };

  it('JOB rule 15: replays to the last digit; a change that moves one has to carry another version, and keep another', () => {
    expect(kept.modelVersion).toBe(modelVersion);
    expect(JSON.parse(JSON.stringify(replayAssessment(keptAssessment.input)))).toEqual(kept);
  });

  it('has the text that its input has today, so that its hash is the same', () => {
    const input = JSON.parse(keptAssessment.input) as Parameters<typeof canonicaliseAssessmentInput>[0];
    expect(canonicaliseAssessmentInput(input)).toBe(keptAssessment.input);
  });
});
