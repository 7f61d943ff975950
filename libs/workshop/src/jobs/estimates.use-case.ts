import { compareMoney, multiplyMoney, parseMoney, sumMoney, type Money } from '@endfloat/metrology';
import { DomainError, invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { Recorded } from '../ports/record-store.port.js';
import type {
  Consent,
  ConsentIdentity,
  Estimate,
  EstimateIdentity,
  EstimateLine,
  OfJob,
  WorkLine,
} from '../ports/records/jobs.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { againWhenTaken } from '../recording/again-when-taken.js';
import { refuseFuture } from '../recording/happened-at.js';
import { keptName } from '../recording/kept-name.js';
import { requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { ownerOf } from '../recording/vehicle-visibility.js';
import { settingsOf } from '../shop/open-shop.use-case.js';

export type EstimateRecord = Recorded<EstimateIdentity, Estimate>;
export type ConsentRecord = Recorded<ConsentIdentity, Consent>;

/** A line as entered; its labour amount follows from hours and the shop's rate. */
export type EstimateLineEntry = Omit<EstimateLine, 'labourAmount'>;

export interface ProposeEstimateCommand {
  readonly id?: string | undefined;
  readonly jobId: string;
  readonly lines: readonly EstimateLineEntry[];
  /** amount not to be exceeded without new consent; the total where null */
  readonly ceilingAmount: string | null;
}

/** Prices the work of a job. Every proposal is a new version; earlier ones stay as they were shown to the customer. */
export class ProposeEstimateUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(caller: Caller, command: ProposeEstimateCommand): Promise<AddedRecord<EstimateIdentity, Estimate>> {
    const stamp = stampOf(this.clock, caller);
    const id = command.id ?? this.ids.next();
    const propose = async (tx: ShopTransaction): Promise<AddedRecord<EstimateIdentity, Estimate>> => {
      await requiredRecord(tx.jobs, 'job', command.jobId);
      const lines = await tx.workLines.all({ jobId: command.jobId });
      command.lines.forEach(({ workLineId }, index) => {
        if (workLineId !== null && !lines.some((line) => line.id === workLineId)) {
          throw invalidInput(
            `/lines/${String(index)}/workLineId`,
            'reference',
            'This work line does not belong to the job.',
          );
        }
      });
      const settings = await settingsOf(tx);
      const estimate = priced(command, settings.currency, settings.labourRatePerHour);
      const known = await tx.estimates.find(id);
      const versions = await tx.estimates.all({ jobId: command.jobId });
      const estimateVersion =
        known?.identity.estimateVersion ??
        Math.max(0, ...versions.map((each) => each.identity.estimateVersion)) + 1;
      return addRecord(
        tx.estimates,
        'estimate',
        { id, identity: { jobId: command.jobId, estimateVersion }, content: estimate },
        stamp,
      );
    };
    // Two proposals at once: the later one looks again and gets the next version.
    return againWhenTaken(() => this.work.run(caller.shopId, propose));
  }
}

function priced(command: ProposeEstimateCommand, currency: string, rate: string): Estimate {
  const money = (amount: string, pointer: string): Money => {
    const parsed = parseMoney(amount, currency);
    if (parsed.kind !== 'money' || amount.startsWith('-')) {
      throw invalidInput(
        pointer,
        'money',
        `Give an amount of ${currency} that is not negative, with no more decimals than the currency has.`,
      );
    }
    return parsed.money;
  };
  const lines = command.lines.map((line, index) => {
    const partsAmount = money(line.partsAmount, `/lines/${String(index)}/partsAmount`).amount;
    const labour = multiplyMoney(money(rate, '/labourRatePerHour'), line.labourHours);
    return { ...line, partsAmount, labourAmount: labour.amount };
  });
  const amounts = lines.flatMap(({ partsAmount, labourAmount }) =>
    [partsAmount, labourAmount].map((amount) => ({ amount, currency })),
  );
  const total = sumMoney(amounts, currency);
  if (total.kind !== 'money') throw new RangeError(`lines in one currency do not add up: ${total.kind}`);
  const ceiling =
    command.ceilingAmount === null ? total.money : money(command.ceilingAmount, '/ceilingAmount');
  const compared = compareMoney(ceiling, total.money);
  if (compared.kind === 'compared' && compared.order === 'less') {
    throw invalidInput(
      '/ceilingAmount',
      'ceiling',
      `The ceiling lies below the total of ${total.money.amount} ${currency}.`,
    );
  }
  return { currency, lines, totalAmount: total.money.amount, ceilingAmount: ceiling.amount };
}

export interface RecordConsentCommand {
  readonly id?: string | undefined;
  readonly jobId: string;
  readonly estimateId: string;
  readonly consent: Omit<Consent, 'personalRecordId'>;
  /** who answered; personal data */
  readonly name: string | null;
}

/** Records the customer's answer to one version of an estimate. It covers that version and no other. */
export class RecordConsentUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(caller: Caller, command: RecordConsentCommand): Promise<AddedRecord<ConsentIdentity, Consent>> {
    const stamp = stampOf(this.clock, caller);
    const id = command.id ?? this.ids.next();
    refuseFuture(command.consent.answeredAt, stamp.at, '/answeredAt');
    const record = async (tx: ShopTransaction): Promise<AddedRecord<ConsentIdentity, Consent>> => {
      const job = await requiredRecord(tx.jobs, 'job', command.jobId);
      const estimates = await tx.estimates.all({ jobId: command.jobId });
      const estimate = estimates.find((each) => each.id === command.estimateId);
      if (estimate === undefined)
        throw invalidInput('/estimateId', 'reference', 'This estimate does not belong to the job.');
      const latest = Math.max(...estimates.map((each) => each.identity.estimateVersion));
      const known = await tx.consents.find(id);
      if (known === undefined && estimate.identity.estimateVersion !== latest) {
        throw new DomainError(
          'consent.otherVersion',
          `The estimate has been replaced by version ${String(latest)}. Ask for consent to that one.`,
          [
            {
              pointer: '/estimateId',
              rule: 'latestVersion',
              detail: `version ${String(estimate.identity.estimateVersion)}`,
            },
          ],
        );
      }
      const isSameName =
        known !== undefined && (await keptName(tx, known.content.personalRecordId)) === command.name;
      const newRecordId = command.name === null ? null : this.ids.next();
      const personalRecordId = isSameName ? known.content.personalRecordId : newRecordId;
      const content = { ...command.consent, personalRecordId };
      const identity = { jobId: command.jobId, estimateId: command.estimateId };
      const added = await addRecord(tx.consents, 'consent', { id, identity, content }, stamp);
      if (added.created && personalRecordId !== null && command.name !== null) {
        const owner = await ownerOf(tx, job.identity.vehicleId, stamp.at);
        const personal = {
          id: personalRecordId,
          customerId: owner?.customerId ?? null,
          kind: 'consentName' as const,
          content: { name: command.name },
        };
        await tx.personal.add({ ...personal, recordedAt: stamp.at }, stamp.by);
      }
      return added;
    };
    return againWhenTaken(() => this.work.run(caller.shopId, record));
  }
}

export class ListEstimatesUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(
    caller: Caller,
    jobId: string,
    asOf?: string,
  ): Promise<{ readonly estimates: readonly EstimateRecord[]; readonly consents: readonly ConsentRecord[] }> {
    return this.work.read(caller.shopId, async (tx) => {
      await requiredRecord(tx.jobs, 'job', jobId, asOf);
      return {
        estimates: await tx.estimates.all({ jobId }, asOf),
        consents: await tx.consents.all({ jobId }, asOf),
      };
    });
  }
}

/** Refuses work that no consent covers: it must stand on a version of the estimate that the customer agreed to. */
export async function refuseUnconsented(tx: ShopTransaction, line: Recorded<OfJob, WorkLine>): Promise<void> {
  const { jobId } = line.identity;
  const estimates = await tx.estimates.all({ jobId });
  const answers = [...(await tx.consents.all({ jobId }))].sort((a, b) =>
    a.content.answeredAt.localeCompare(b.content.answeredAt),
  );
  const covering = estimates.filter(({ content }) =>
    content.lines.some(({ workLineId }) => workLineId === line.id),
  );
  const agreed = covering.some(
    (estimate) =>
      answers.filter(({ identity }) => identity.estimateId === estimate.id).at(-1)?.content.answer ===
      'given',
  );
  if (agreed) return;
  throw new DomainError(
    'work.notConsented',
    covering.length === 0
      ? 'This work stands on no estimate. Make a new version of the estimate that contains it and ask for consent.'
      : 'The customer has not consented to an estimate that contains this work. Record the consent first, or make a supplement.',
    [{ pointer: '/state', rule: 'consent', detail: 'work is done after consent' }],
  );
}
