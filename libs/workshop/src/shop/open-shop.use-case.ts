import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ShopSettings } from '../ports/records/shop.records.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { DomainError } from '../errors/domain.errors.js';
import { addShippedSheets } from '../bench/shipped-sheets.js';

export interface OpenShopCommand {
  readonly shopId: string;
  readonly settings: ShopSettings;
  readonly owner: { readonly id: string; readonly displayName: string };
}

/** Opens a new shop: its settings, its first owner, and the shipped check sheets. */
export class OpenShopUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  /** Answers false when the shop is open already; nothing is changed then. */
  execute(command: OpenShopCommand): Promise<boolean> {
    const stamp = { at: this.clock.now(), by: command.owner.id };
    return this.work.run(command.shopId, async (tx) => {
      if (!(await tx.shops.add(stamp.at))) return false;
      await tx.settings.add(command.shopId, {}, command.settings, stamp);
      const owner = {
        displayName: command.owner.displayName,
        roles: ['owner'] as const,
        customerId: null,
        active: true,
      };
      await tx.users.add(command.owner.id, {}, owner, stamp);
      await addShippedSheets(tx, this.ids, stamp);
      return true;
    });
  }
}

/** The settings of the shop, as of a moment. Every open shop has them. */
export async function settingsOf(tx: ShopTransaction, asOf?: string): Promise<ShopSettings> {
  const record = await tx.settings.find(tx.shopId, asOf);
  if (record === undefined) throw new DomainError('record.notFound', 'The shop was not open at that moment.');
  return record.content;
}
