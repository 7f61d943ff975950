import { shippedDiagnosisTables } from '@endfloat/catalogue';
import type { LearnedTables } from '@endfloat/decision';
import { tablesFromLearned, type DiagnosisTables } from '@endfloat/diagnosis';
import { notFound } from '../../errors/domain.errors.js';
import type { Clock } from '../../ports/clock.port.js';
import type { Fingerprint } from '../../ports/fingerprint.port.js';
import type { LearnedSubject, StoredTables } from '../../ports/plain-stores.port.js';
import type { ShopTransaction, UnitOfWork } from '../../ports/unit-of-work.port.js';
import { compute } from '../../computing/computations.js';
import type { Computing } from '../../ports/computing.port.js';
import { settledDeliveries, settledParts } from './settled-parts.js';
import { canonicalText } from './canonical-text.js';
import {
  hashOfDecision,
  hashOfDiagnosis,
  learnDecision,
  learnDiagnosis,
  type DecisionDocument,
  type DiagnosisDocument,
  type SettledHistory,
} from './learned-documents.js';

/** Tables in use with when they were learned; null: judgement, nothing was learned yet. */
export interface TablesInUse<D> {
  readonly version: string;
  readonly hash: string;
  readonly learnedAt: string | null;
  readonly document: D;
}

const nothing: SettledHistory = {
  jobs: [],
  checks: [],
  sheets: new Map(),
  assessed: [],
  parts: [],
  deliveries: [],
  until: '',
};

/** Tables of the diagnosis the shop works by. */
export async function diagnosisTablesInUse(
  tx: ShopTransaction,
  fingerprint: Fingerprint,
  hash?: string,
): Promise<TablesInUse<DiagnosisDocument>> {
  return inUse(tx, 'diagnosis', () => newDiagnosis(nothing, fingerprint), hash);
}

/** Tables of the decision the shop works by. */
export async function decisionTablesInUse(
  tx: ShopTransaction,
  fingerprint: Fingerprint,
  hash?: string,
): Promise<TablesInUse<DecisionDocument>> {
  return inUse(tx, 'decision', () => named(learnDecision(nothing), fingerprint), hash);
}

/** Judgement tables with their hash, worked out once for each adapter. */
const judgementByFingerprint = new WeakMap<Fingerprint, LearnedTables>();

/** The numbers an assessment takes before anything was learned. */
export function judgementNumbers(fingerprint: Fingerprint): LearnedTables {
  const known = judgementByFingerprint.get(fingerprint);
  if (known !== undefined) return known;
  const { tables } = named(learnDecision(nothing), fingerprint).document;
  judgementByFingerprint.set(fingerprint, tables);
  return tables;
}

/** The numbers an assessment takes. */
export async function decisionNumbers(tx: ShopTransaction, fingerprint: Fingerprint): Promise<LearnedTables> {
  return (await decisionTablesInUse(tx, fingerprint)).document.tables;
}

/** The numbers a diagnosis takes; as shipped, to the last digit, as long as nothing was learned. */
export function diagnosisNumbers({ document }: TablesInUse<DiagnosisDocument>): DiagnosisTables {
  return document.tables.jobsCounted === 0 ? shippedDiagnosisTables : tablesFromLearned(document.tables);
}

interface NewTables<D> {
  readonly version: string;
  readonly hash: string;
  readonly document: D;
}

function newDiagnosis(history: SettledHistory, fingerprint: Fingerprint): NewTables<DiagnosisDocument> {
  const document = learnDiagnosis(history);
  return { version: document.tables.version, hash: hashOfDiagnosis(document.tables, fingerprint), document };
}

/** Tables of the decision with the hash they go by. */
function named(document: DecisionDocument, fingerprint: Fingerprint): NewTables<DecisionDocument> {
  const hash = hashOfDecision(document.tables, fingerprint);
  const { version } = document.tables;
  return { version, hash, document: { ...document, tables: { ...document.tables, hash } } };
}

async function inUse<D>(
  tx: ShopTransaction,
  subject: LearnedSubject,
  judgement: () => NewTables<D>,
  hash: string | undefined,
): Promise<TablesInUse<D>> {
  const stored =
    hash === undefined
      ? await tx.learnedTables.latest(subject)
      : await tx.learnedTables.byHash(subject, hash);
  if (stored !== undefined) {
    const { version, learnedAt } = stored;
    return { version, hash: stored.hash, learnedAt, document: stored.document as D };
  }
  const first = judgement();
  if (hash !== undefined && hash !== first.hash) throw notFound('table');
  return { ...first, learnedAt: null };
}

/** What one round of learning did. */
export interface LearningRound {
  /** changes when something was recorded that could teach */
  readonly mark: string;
  /** subjects whose tables changed; null where nothing was recorded since `mark` */
  readonly changed: readonly LearnedSubject[] | null;
}

/**
 * Learns the tables anew from the whole settled history of a shop: released jobs whose window has elapsed, confirmed
 * comebacks, running windows as far as they were watched. A projection: dropping what it wrote and running it again gives
 * the same tables. Run by the worker, one shop at a time, and on demand.
 */
export class LearnTablesUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly fingerprint: Fingerprint,
    private readonly computing: Computing,
  ) {}

  /** Answers without learning where nothing was recorded since `mark`. */
  async execute(shopId: string, mark?: string): Promise<LearningRound> {
    const now = this.clock.now();
    const read = await this.work.read(shopId, async (tx) => {
      const found = await tx.learningHistory.mark(now);
      return { mark: found, history: found === mark ? null : await historyOf(tx, now) };
    });
    if (read.history === null) return { mark: read.mark, changed: null };
    const diagnosis = newDiagnosis(read.history, this.fingerprint);
    const learned = await compute(this.computing, 'learnDecision', read.history);
    const decision = named(learned, this.fingerprint);
    const changed = await this.work.run(shopId, async (tx) => {
      await tx.takeTurn('learned-tables');
      const stored: LearnedSubject[] = [];
      if (await store(tx, { subject: 'diagnosis', learnedAt: now, ...diagnosis })) stored.push('diagnosis');
      if (await store(tx, { subject: 'decision', learnedAt: now, ...decision })) stored.push('decision');
      return stored;
    });
    return { mark: read.mark, changed };
  }
}

async function historyOf(tx: ShopTransaction, until: string): Promise<SettledHistory> {
  const jobs = await tx.learningHistory.releasedJobs(until);
  const mayTeach = jobs.filter(({ causeId, comebacks }) => causeId !== null || comebacks.length > 0);
  const checks = await tx.learningHistory.foundChecks(mayTeach.map(({ jobId }) => jobId));
  const assessed = await tx.learningHistory.assessedRepairs(
    jobs.map(({ jobId }) => jobId),
    false,
  );
  const sheets = new Map((await tx.checkSheets.all({})).map(({ id, content }) => [id, content.definition]));
  const [parts, deliveries] = [await settledParts(tx), await settledDeliveries(tx)];
  return { jobs, checks, sheets, assessed, parts, deliveries, until };
}

/** Adds the tables where they differ from those in use; false where they are the same, or somebody learned later. */
async function store(tx: ShopTransaction, tables: StoredTables): Promise<boolean> {
  const latest = await tx.learnedTables.latest(tables.subject);
  if (latest !== undefined) {
    if (latest.learnedAt >= tables.learnedAt) return false;
    if (canonicalText(latest.document) === canonicalText(tables.document)) return false;
  }
  await tx.learnedTables.add(tables);
  return true;
}
