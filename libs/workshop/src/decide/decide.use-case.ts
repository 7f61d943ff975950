import { DomainError, invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Recorded } from '../ports/record-store.port.js';
import type { Assessment, Decision, DecisionChoice, OfAssessment } from '../ports/records/decide.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { refuseFuture } from '../recording/happened-at.js';
import { referencedRecord, requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { visibleAssessment } from './show-assessments.use-case.js';

export type DecisionRecord = Recorded<OfAssessment, Decision>;

/**
 * Records what a person chose after an assessment. What a guard removed cannot be chosen; what differs from the
 * recommendation needs a reason; giving the van back unrepaired is always open, with a reason.
 */
export class DecideUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly assessmentId: string; readonly decision: Decision },
  ): Promise<AddedRecord<OfAssessment, Decision>> {
    const stamp = stampOf(this.clock, caller);
    const { assessmentId, decision } = command;
    refuseFuture(decision.decidedAt, stamp.at, '/decidedAt');
    return this.work.run(caller.shopId, async (tx) => {
      const assessment = await visibleAssessment(tx, caller, assessmentId, stamp.at);
      await refuseUnsound(tx, assessment.content, decision);
      const id = command.id ?? this.ids.next();
      const added = await addRecord(
        tx.decisions,
        'decision',
        { id, identity: { assessmentId }, content: decision },
        stamp,
      );
      if (added.created) {
        const { vehicleId, jobId } = assessment.identity;
        const payload = { assessmentId, vehicleId, jobId, chosen: decision.chosen };
        await tx.announce({ type: 'endfloat.decision.recorded.v1', subjectId: id, at: stamp.at, payload });
      }
      return added;
    });
  }
}

/** Corrects a decision; the earlier one stays as it was recorded. */
export class CorrectDecisionUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly decision: Decision;
      readonly reason: string;
    },
  ): Promise<DecisionRecord> {
    const stamp = stampOf(this.clock, caller, command.reason);
    const { decision } = command;
    refuseFuture(decision.decidedAt, stamp.at, '/decidedAt');
    return this.work.run(caller.shopId, async (tx) => {
      const known = await requiredRecord(tx.decisions, 'decision', command.id);
      const assessment = await visibleAssessment(tx, caller, known.identity.assessmentId, stamp.at);
      await refuseUnsound(tx, assessment.content, decision);
      const change = { id: command.id, expected: command.expected, content: decision };
      return correctRecord(tx.decisions, 'decision', change, stamp);
    });
  }
}

export class ListDecisionsUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    query: {
      readonly assessmentId: string;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<ListPage<OfAssessment, Decision>> {
    const { assessmentId, ...page } = query;
    return this.work.read(caller.shopId, async (tx) => {
      await visibleAssessment(tx, caller, assessmentId, this.clock.now());
      return tx.decisions.list({ where: { assessmentId }, ...page });
    });
  }

  /** One decision, now or as it was known at a moment. */
  one(caller: Caller, id: string, asOf?: string): Promise<DecisionRecord> {
    return this.work.read(caller.shopId, async (tx) => {
      const decision = await requiredRecord(tx.decisions, 'decision', id, asOf);
      await visibleAssessment(tx, caller, decision.identity.assessmentId, this.clock.now());
      return decision;
    });
  }

  revisions(caller: Caller, id: string): Promise<readonly DecisionRecord[]> {
    return this.work.read(caller.shopId, async (tx) => {
      const decision = await requiredRecord(tx.decisions, 'decision', id);
      await visibleAssessment(tx, caller, decision.identity.assessmentId, this.clock.now());
      return tx.decisions.history(id);
    });
  }
}

async function refuseUnsound(tx: ShopTransaction, assessment: Assessment, decision: Decision): Promise<void> {
  await referencedRecord(tx.users, 'user', decision.decidedBy, '/decidedBy');
  refuseRemoved(assessment, decision.chosen);
  const isReasoned = (decision.reason ?? '').trim() !== '';
  if (isReasoned || followsRecommendation(assessment, decision.chosen)) return;
  throw new DomainError(
    'work.reasonNeeded',
    'This is not what the assessment recommends. Say why it was chosen all the same.',
    [{ pointer: '/choiceReason', rule: 'required', detail: 'differs from the recommendation' }],
  );
}

function refuseRemoved({ result }: Assessment, chosen: DecisionChoice): void {
  if (chosen === 'handOverUnrepaired') return;
  const option = result.options.find(({ optionId }) => optionId === chosen);
  if (option === undefined)
    throw invalidInput('/chosen', 'reference', 'This option was not considered in the assessment.');
  if (option.removedBy.length === 0) return;
  throw new DomainError(
    'decision.optionRemoved',
    'A guard takes this option out of the offer, whatever it costs. Choose another, or hand the van over unrepaired and not for the road.',
    option.removedBy.map((guard) => ({ pointer: '/chosen', rule: guard, detail: `removed by ${guard}` })),
  );
}

/** In a close call a person may take any of the options named. */
function followsRecommendation({ result: { recommendation } }: Assessment, chosen: DecisionChoice): boolean {
  switch (recommendation.kind) {
    case 'recommended':
      return recommendation.optionId === chosen;
    case 'closeCall':
      return recommendation.optionIds.includes(chosen);
    case 'measureFirst':
    case 'none':
      return false;
  }
}
