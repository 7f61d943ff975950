import { DomainError, invalidInput, notFound } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { ApiKey } from '../ports/plain-stores.port.js';
import type { Caller, ShopRole } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { referencedRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';

export interface CreateApiKeyCommand {
  readonly id: string;
  readonly userId: string;
  readonly name: string;
  readonly secretHash: string;
  /** what the key may do at most; the user's own roles bound it further */
  readonly roles: readonly ShopRole[];
  readonly readOnly?: boolean | undefined;
  readonly expiresAt: string | null;
}

/** Gives a person or program of the shop a key. Only the hash of its secret is kept. */
export class CreateApiKeyUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, command: CreateApiKeyCommand): Promise<ApiKey> {
    const stamp = stampOf(this.clock, caller);
    return this.work.run(caller.shopId, async (tx) => {
      const user = await referencedRecord(tx.users, 'user', command.userId, '/userId');
      if (!command.roles.every((role) => user.content.roles.includes(role))) {
        throw invalidInput(
          '/roles',
          'rolesOfUser',
          'A key can do no more than its user may. Ask for roles the user has.',
        );
      }
      refuseExpired(command.expiresAt, stamp.at);
      const key = { ...command, readOnly: command.readOnly ?? false, replaces: null };
      await tx.apiKeys.add({ ...key, recordedAt: stamp.at, recordedBy: stamp.by });
      return asMade(key, stamp);
    });
  }
}

export interface RotateApiKeyCommand {
  /** the key that is to end */
  readonly id: string;
  /** id of the key that takes its place */
  readonly newId: string;
  readonly secretHash: string;
  /** how long both keys work */
  readonly overlapMinutes: number;
  readonly expiresAt: string | null;
}

/** Gives a key a successor that may do the same; the earlier one ends after an overlap. */
export class RotateApiKeyUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, command: RotateApiKeyCommand): Promise<ApiKey> {
    const stamp = stampOf(this.clock, caller);
    return this.work.run(caller.shopId, async (tx) => {
      const earlier = await tx.apiKeys.find(command.id);
      if (earlier === undefined) throw notFound('key');
      if (earlier.revokedAt !== null || (earlier.expiresAt !== null && earlier.expiresAt <= stamp.at))
        throw new DomainError('record.wrongState', 'This key has ended. Make a new one instead.');
      refuseExpired(command.expiresAt, stamp.at);
      const endsAt = new Date(Date.parse(stamp.at) + command.overlapMinutes * 60_000).toISOString();
      const isEnded = await tx.apiKeys.endAt(command.id, endsAt);
      const hasSuccessor = (await tx.apiKeys.list()).some(({ replaces }) => replaces === command.id);
      if (!isEnded || hasSuccessor) {
        throw new DomainError(
          'record.wrongState',
          'This key has a successor already or was revoked just now. Rotate the successor.',
        );
      }
      const { userId, name, roles, readOnly } = earlier;
      const { newId: id, secretHash, expiresAt } = command;
      const key = { id, userId, name, roles, readOnly, secretHash, expiresAt, replaces: earlier.id };
      await tx.apiKeys.add({ ...key, recordedAt: stamp.at, recordedBy: stamp.by });
      return asMade(key, stamp);
    });
  }
}

function asMade(
  key: Omit<ApiKey, 'recordedAt' | 'recordedBy' | 'revokedAt' | 'revokedBy' | 'lastUsedAt'>,
  stamp: { readonly at: string; readonly by: string },
): ApiKey {
  const ended = { revokedAt: null, revokedBy: null, lastUsedAt: null };
  return { ...key, recordedAt: stamp.at, recordedBy: stamp.by, ...ended };
}

function refuseExpired(expiresAt: string | null, now: string): void {
  if (expiresAt !== null && expiresAt <= now)
    throw invalidInput('/expiresAt', 'future', 'The key would have expired already.');
}

export class ListApiKeysUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(caller: Caller): Promise<readonly ApiKey[]> {
    return this.work.read(caller.shopId, (tx) => tx.apiKeys.list());
  }
}

/** Ends a key for good. */
export class RevokeApiKeyUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, id: string): Promise<ApiKey> {
    return this.work.run(caller.shopId, async (tx) => {
      const before = await tx.apiKeys.find(id);
      if (before === undefined) throw notFound('key');
      if (!(await tx.apiKeys.revoke(id, this.clock.now(), caller.userId))) {
        throw new DomainError('record.wrongState', 'This key was revoked before; it stays revoked.');
      }
      return (await tx.apiKeys.find(id)) ?? before;
    });
  }
}
