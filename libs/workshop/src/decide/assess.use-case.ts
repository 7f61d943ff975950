import { canonicaliseAssessmentInput, modelVersion } from '@endfloat/decision';
import type { Money } from '@endfloat/metrology';
import { compute } from '../computing/computations.js';
import { DomainError, invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { Computing } from '../ports/computing.port.js';
import type { Fingerprint } from '../ports/fingerprint.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { Recorded } from '../ports/record-store.port.js';
import type { Assessment, AssessmentIdentity, AssessmentQuestion } from '../ports/records/decide.records.js';
import type { Caller } from '../ports/roles.js';
import { sameContent } from '../ports/same-content.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { referencedRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { referencedVehicle } from '../recording/vehicle-visibility.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { buildInput, type ReadingsTaken } from './build-input.js';
import { adviceOf } from './preventive-advice.js';
import { furtherCheckOf } from './further-check.js';
import { decisionNumbers } from './learning/learned-tables.use-case.js';
import { notNegative } from './offers.use-case.js';

export type AssessmentRecord = Recorded<AssessmentIdentity, Assessment>;

interface AssessCommand {
  readonly id?: string | undefined;
  readonly question: AssessmentQuestion;
}

type AddedAssessment = AddedRecord<AssessmentIdentity, Assessment>;

/**
 * Assesses what to do with a component of a vehicle: gathers what is known, has it reckoned, and keeps question, canonical
 * input and answer, so that it can be run again to the last digit. Reckoned between two transactions, so that none is held
 * open by it; the second one makes the same checks as the first.
 */
export class AssessUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
    private readonly fingerprint: Fingerprint,
    private readonly computing: Computing,
  ) {}

  async execute(caller: Caller, command: AssessCommand): Promise<AddedAssessment> {
    const stamp = stampOf(this.clock, caller);
    const { question } = command;
    const gathered = await this.work.read(caller.shopId, async (tx) => {
      const known = await knownBefore(tx, command);
      if (known !== undefined) return known;
      await refuseUnknown(tx, caller, question, stamp.at);
      const readingsTaken = await readingsTakenSince(tx, question);
      const tables = await decisionNumbers(tx, this.fingerprint);
      const built = await buildInput(tx, question, { now: stamp.at, tables, readingsTaken });
      const given = { now: stamp.at, fingerprint: this.fingerprint };
      return { ...built, furtherCheck: await furtherCheckOf(tx, question, given) };
    });
    if ('record' in gathered) return gathered;
    const { input, sources, fittedPart, furtherCheck, wear } = gathered;
    const text = canonicaliseAssessmentInput(input);
    const result = await compute(this.computing, 'assessRepairOrReplace', input);
    const inputHash = this.fingerprint.of(text);
    const content: Assessment = {
      modelVersion,
      inputHash,
      question,
      input: text,
      result,
      sources,
      furtherCheck,
      advice: adviceOf(result, input, wear),
    };
    const { vehicleId, jobId } = question;
    const identity = { vehicleId, jobId, fittedPartId: fittedPart?.id ?? null };
    return this.work.run(caller.shopId, async (tx) => {
      const known = await knownBefore(tx, command);
      if (known !== undefined) return known;
      await refuseUnknown(tx, caller, question, stamp.at);
      const id = command.id ?? this.ids.next();
      const added = await addRecord(tx.assessments, 'assessment', { id, identity, content }, stamp);
      if (added.created) {
        const recommendation = result.recommendation.kind;
        const payload = { vehicleId, jobId, componentType: question.componentType, recommendation };
        await tx.announce({ type: 'endfloat.assessment.made.v1', subjectId: id, at: stamp.at, payload });
      }
      return added;
    });
  }
}

async function knownBefore(
  tx: ShopTransaction,
  { id, question }: AssessCommand,
): Promise<AddedAssessment | undefined> {
  const known = id === undefined ? undefined : await tx.assessments.find(id);
  return known === undefined ? undefined : sameQuestion(known, question);
}

/** The same question under the same id is the same assessment, whatever was recorded since. */
function sameQuestion(
  known: AssessmentRecord,
  question: AssessmentQuestion,
): AddedRecord<AssessmentIdentity, Assessment> {
  if (sameContent(known.content.question, question)) return { record: known, created: false };
  throw new DomainError(
    'record.idTaken',
    'Another assessment is already recorded under this id. Choose a new id.',
    [{ pointer: '/id', rule: 'unique', detail: 'taken by another question' }],
  );
}

async function refuseUnknown(
  tx: ShopTransaction,
  caller: Caller,
  question: AssessmentQuestion,
  now: string,
): Promise<void> {
  await referencedVehicle(tx, caller, question.vehicleId, now);
  if (question.jobId !== null) {
    const job = await referencedRecord(tx.jobs, 'job', question.jobId, '/jobId');
    if (job.identity.vehicleId !== question.vehicleId)
      throw invalidInput('/jobId', 'sameVehicle', 'This job is about another vehicle.');
  }
  const { currency } = await settingsOf(tx);
  for (const member of ['labourPerHour', 'downtimePerDay', 'comebackHandling'] as const) {
    const money: Money | null = question[member];
    if (money === null) continue;
    notNegative(money, `/${member}`);
    if (money.currency === currency) continue;
    throw new DomainError(
      'currency.mismatch',
      `The shop reckons in ${currency}; an amount in ${money.currency} cannot be added to it.`,
      [{ pointer: `/${member}/currency`, rule: 'shopCurrency', detail: currency }],
    );
  }
}

/** Further readings count as offered once an assessment asked for them and more readings stand there now. */
async function readingsTakenSince(
  tx: ShopTransaction,
  { vehicleId, componentType, position }: AssessmentQuestion,
): Promise<ReadingsTaken> {
  const earlier = await tx.assessments.all({ vehicleId });
  return (fittedPartId, readings) =>
    earlier.some(
      ({ identity, content: { question, result, sources } }) =>
        identity.fittedPartId === fittedPartId &&
        question.componentType === componentType &&
        question.position === position &&
        result.recommendation.kind === 'measureFirst' &&
        sources.observations.readings < readings,
    );
}
