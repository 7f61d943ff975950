import { currencyExponent, parseMoney } from '@endfloat/metrology';
import { invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { Recorded } from '../ports/record-store.port.js';
import type { NoReferences, ShopSettings } from '../ports/records/shop.records.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { changesNothing, correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { isTimeZone } from './time-zone.js';

export { isTimeZone };

export type SettingsRecord = Recorded<NoReferences, ShopSettings>;

/** The settings of the shop, now or as of a moment. */
export class ShowSettingsUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(caller: Caller, asOf?: string): Promise<SettingsRecord> {
    return this.work.read(caller.shopId, (tx) => requiredRecord(tx.settings, 'shop', caller.shopId, asOf));
  }
}

/** Changes some settings; the earlier ones stay readable as of their time. */
export class ChangeSettingsUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    change: { readonly expected: ExpectedRevision; readonly settings: Partial<ShopSettings> },
  ): Promise<SettingsRecord> {
    return this.work.run(caller.shopId, async (tx) => {
      const current = await requiredRecord(tx.settings, 'shop', caller.shopId);
      const settings = { ...current.content, ...change.settings };
      refuseWrongMoney(settings);
      refuseUnknownTimeZone(settings);
      if (changesNothing(current, change.expected, settings)) return current;
      return correctRecord(
        tx.settings,
        'settings',
        { id: caller.shopId, expected: change.expected, content: settings },
        stampOf(this.clock, caller),
      );
    });
  }
}

function refuseUnknownTimeZone({ timeZone }: ShopSettings): void {
  if (isTimeZone(timeZone)) return;
  throw invalidInput(
    '/timeZone',
    'timeZone',
    `"${timeZone}" is no time zone. Give a name of the IANA database such as Europe/Lisbon.`,
  );
}

const amounts = ['labourRatePerHour', 'downtimeCostPerDay', 'comebackHandling'] as const;

function refuseWrongMoney(settings: ShopSettings): void {
  if (currencyExponent(settings.currency) === undefined) {
    throw invalidInput(
      '/currency',
      'currency',
      `"${settings.currency}" is no currency code of ISO 4217. Give three capital letters such as EUR.`,
    );
  }
  for (const member of amounts) {
    const parsed = parseMoney(settings[member], settings.currency);
    if (parsed.kind !== 'money' || settings[member].startsWith('-')) {
      throw invalidInput(
        `/${member}`,
        'money',
        `${member} must be an amount of ${settings.currency} that is not negative, with no more decimals than the currency has.`,
      );
    }
  }
}
