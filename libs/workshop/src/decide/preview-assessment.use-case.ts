import type { Assessment } from '@endfloat/decision';
import { compute } from '../computing/computations.js';
import type { Computing } from '../ports/computing.port.js';
import type { Fingerprint } from '../ports/fingerprint.port.js';
import type { AssessmentSources, PreventiveAdvice, PreviewTables } from '../ports/records/decide.records.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { decisionNumbers, judgementNumbers } from './learning/learned-tables.use-case.js';
import type { PreviewCommand } from './preview-assessment.js';

export interface PreviewOutcome {
  readonly result: Assessment;
  readonly inputHash: string;
  readonly sources: AssessmentSources;
  readonly advice: PreventiveAdvice | null;
}

/** Assesses what it is sent, history and prices included, and keeps nothing. Of the shop it reads its tables, if asked to. */
export class PreviewAssessmentUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly fingerprint: Fingerprint,
    private readonly computing: Computing,
  ) {}

  async execute(caller: Caller, command: PreviewCommand, by: PreviewTables): Promise<PreviewOutcome> {
    const tables =
      by === 'judgement'
        ? judgementNumbers(this.fingerprint)
        : await this.work.read(caller.shopId, (tx) => decisionNumbers(tx, this.fingerprint));
    const { result, input, sources, advice } = await compute(
      this.computing,
      'previewAssessment',
      command,
      tables,
    );
    return { result, inputHash: this.fingerprint.of(input), sources, advice };
  }
}
