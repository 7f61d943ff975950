import { DomainError } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { Fingerprint } from '../ports/fingerprint.port.js';
import type { Caller } from '../ports/roles.js';
import type { Sealer } from '../ports/sealer.port.js';
import type { SharedTransaction } from '../ports/shared-transaction.port.js';
import type { AnswerToKeep, StoredAnswer } from '../ports/stored-answers.port.js';
import { canonicalJson } from './canonical-json.js';

/** Hours for which an answer can be asked for again. */
export const keptAnswerHours = 48;

/** What makes two requests the same one. */
export interface KeyedRequest {
  /** chosen by the client */
  readonly key: string;
  readonly method: string;
  /** path and query as they were sent */
  readonly address: string;
  /** as it was read; undefined without one */
  readonly body: unknown;
}

/** An answer, and whether it is one that was given before. */
export interface OnceAnswered {
  readonly answer: AnswerToKeep;
  readonly isReplay: boolean;
}

/**
 * Answers a request that carries a key once. Its effect and its answer are one transaction: either both are there, or
 * neither, also after a crash. The same request again gets the first answer; while it runs, and for other content under
 * the key, it is refused. A request that is refused or fails leaves nothing, and may be sent again under its key.
 *
 * Keys belong to a person of a shop, whatever credential they show: who changes the credential between two attempts
 * still gets the first answer. The key is stored as a hash, and the answer sealed for that key, so that the database
 * does not tell what only the caller was to see.
 */
export class AnswerOnceUseCase {
  constructor(
    private readonly shared: SharedTransaction,
    private readonly clock: Clock,
    private readonly fingerprint: Fingerprint,
    private readonly sealer: Sealer,
  ) {}

  /**
   * @param produce does the work and says what is answered; whatever it does through the unit of work is part of the
   *   transaction. It may be run more than once, each time after everything it did was taken back.
   * @throws DomainError `request.running` or `request.keyReused`
   */
  execute(
    caller: Caller,
    request: KeyedRequest,
    produce: () => Promise<AnswerToKeep>,
  ): Promise<OnceAnswered> {
    const purpose = `answer/${caller.shopId}/${caller.userId}/${request.key}`;
    const keyHash = this.fingerprint.of(`${caller.userId}/${request.key}`);
    const fingerprint = this.fingerprint.of(
      `${request.method}\n${request.address}\n${canonicalJson(request.body)}`,
    );
    return this.shared.run(caller.shopId, async (tx) => {
      const now = this.clock.now();
      if (!(await tx.storedAnswers.claim(keyHash))) throw stillRunning();
      const known = await tx.storedAnswers.find(keyHash, now);
      if (known !== undefined) {
        if (known.fingerprint !== fingerprint) throw usedForAnother();
        return { answer: this.opened(known, purpose), isReplay: true };
      }
      const answer = await produce();
      const { status, location, headers, body } = answer;
      await tx.storedAnswers.add({
        keyHash,
        fingerprint,
        status,
        location,
        content: this.sealer.seal(JSON.stringify({ headers, body }), purpose),
        recordedAt: now,
        expiresAt: new Date(Date.parse(now) + keptAnswerHours * 3_600_000).toISOString(),
      });
      return { answer, isReplay: false };
    });
  }

  /** An answer that was erased still tells that the request was done, and where its effect stands. */
  private opened({ status, location, content }: StoredAnswer, purpose: string): AnswerToKeep {
    if (content === null) return { status: 204, location, headers: {}, body: null };
    const kept = JSON.parse(this.sealer.open(content, purpose)) as Pick<AnswerToKeep, 'headers' | 'body'>;
    return { status, location, ...kept };
  }
}

function stillRunning(): DomainError {
  return new DomainError(
    'request.running',
    'A request with this Idempotency-Key is being worked on. Wait, and send it again.',
  );
}

function usedForAnother(): DomainError {
  return new DomainError(
    'request.keyReused',
    'This Idempotency-Key was sent with another request. Choose a new key for each request, and keep it when repeating one.',
    [{ pointer: '/Idempotency-Key', rule: 'sameRequest', detail: 'belongs to another request' }],
  );
}
