import type { Clock } from '../ports/clock.port.js';
import type { Caller, ShopRole } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';

/** Who a key speaks for, if it may speak at all: not revoked, not expired, its user still active. */
export class IdentifyCallerUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async execute(
    shopId: string,
    keyId: string,
  ): Promise<
    { readonly secretHash: string; readonly caller: Caller; readonly lastUsedAt: string | null } | undefined
  > {
    const now = this.clock.now();
    return this.work.read(shopId, async (tx) => {
      const key = await tx.apiKeys.find(keyId);
      if (key === undefined || key.revokedAt !== null || (key.expiresAt !== null && key.expiresAt <= now))
        return undefined;
      const caller = await callerOf(tx, key.userId, key.roles);
      if (caller === undefined) return undefined;
      const { secretHash, readOnly, lastUsedAt } = key;
      return { secretHash, caller: readOnly ? { ...caller, readOnly } : caller, lastUsedAt };
    });
  }
}

/** How exactly the last use of a key is kept, milliseconds. */
const exactness = 60_000;

/** Notes that a key was used, at most once a minute. */
export class NoteKeyUseUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async execute(shopId: string, keyId: string, lastUsedAt: string | null): Promise<void> {
    const now = this.clock.now();
    if (lastUsedAt !== null && Date.parse(now) - Date.parse(lastUsedAt) < exactness) return;
    await this.work.run(shopId, (tx) => tx.apiKeys.noteUse(keyId, now));
  }
}

/** Whom a token of another issuer speaks for: a person of the shop who may still work there. */
export class IdentifyPersonUseCase {
  constructor(private readonly work: UnitOfWork) {}

  /** @param claimed  what the token may do at most; the person's own roles bound it further */
  execute(claimed: {
    readonly shopId: string;
    readonly userId: string;
    readonly roles: readonly ShopRole[];
  }): Promise<Caller | undefined> {
    const { shopId, userId, roles } = claimed;
    return this.work.read(shopId, (tx) => callerOf(tx, userId, roles));
  }
}

async function callerOf(
  tx: ShopTransaction,
  userId: string,
  most: readonly ShopRole[],
): Promise<Caller | undefined> {
  const user = (await tx.users.find(userId))?.content;
  if (!user?.active) return undefined;
  return {
    shopId: tx.shopId,
    userId,
    roles: most.filter((role) => user.roles.includes(role)),
    ...(user.customerId === null ? {} : { customerId: user.customerId }),
  };
}
