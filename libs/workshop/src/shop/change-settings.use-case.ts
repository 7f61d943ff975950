import { symptomFamilies } from '@endfloat/catalogue';
import { currencyExponent, parseMoney } from '@endfloat/metrology';
import { DomainError, invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { ListPosition, Recorded } from '../ports/record-store.port.js';
import type { NoReferences, ShopSettings } from '../ports/records/shop.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
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
      refuseWrongFamilies(settings);
      if (changesNothing(current, change.expected, settings)) return current;
      if (settings.currency !== current.content.currency)
        await refuseOtherCurrency(tx, current.content.currency);
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

function refuseWrongFamilies({ comebackFamilyWindows = [] }: ShopSettings): void {
  const known = symptomFamilies.map(({ id }) => id);
  comebackFamilyWindows.forEach(({ familyId }, at) => {
    const pointer = `/comebackFamilyWindows/${at}/familyId`;
    if (!known.includes(familyId))
      throw invalidInput(
        pointer,
        'family',
        `"${familyId}" is no family of symptoms. Known: ${known.join(', ')}.`,
      );
    if (comebackFamilyWindows.findIndex((each) => each.familyId === familyId) < at)
      throw invalidInput(pointer, 'twice', `The window of ${familyId} is given twice. Give it once.`);
  });
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

/** Every amount is text in the currency of the shop: another currency would change what was recorded. */
async function refuseOtherCurrency(tx: ShopTransaction, currency: string): Promise<void> {
  const recorded = await recordedAmount(tx);
  if (recorded === undefined) return;
  throw new DomainError(
    'record.wrongState',
    `Amounts in ${currency} are recorded (${recorded}), and another currency would make something else of them. The currency is chosen before the first amount; open another shop for another currency.`,
    [{ pointer: '/currency', rule: 'fixed', detail: `${currency} is in use: ${recorded}` }],
  );
}

/** Some amount of the shop beside its settings; undefined where there is none. */
async function recordedAmount(tx: ShopTransaction): Promise<string | undefined> {
  const one = { limit: 1 };
  if ((await tx.estimates.list(one)).items.length > 0) return 'an estimate';
  if ((await tx.offers.list(one)).items.length > 0) return 'an offer';
  if ((await tx.assessments.list(one)).items.length > 0) return 'an assessment';
  if ((await tx.comebacks.list({ ...one, where: { state: 'confirmed' } })).items.length > 0)
    return 'the cost of a comeback';
  if ((await tx.stockMoves.list(one)).items.length > 0) return 'a stock move';
  if ((await tx.cores.list(one)).items.length > 0) return 'the deposit of a core';
  if ((await tx.warrantyClaims.list(one)).items.length > 0) return 'a warranty claim';
  const customers = await tx.customers.all({});
  if (customers.some(({ content }) => content.downtimeCostPerDay !== null))
    return "a customer's cost of a day off the road";
  return (await hasPricedPart(tx)) ? 'the price of a part used' : undefined;
}

/** Pages through the work lines until one has a priced part. */
async function hasPricedPart(tx: ShopTransaction): Promise<boolean> {
  let after: ListPosition | undefined;
  do {
    const page = await tx.workLines.list({ limit: 500, after });
    if (page.items.some(({ content }) => (content.part?.price ?? null) !== null)) return true;
    after = page.next;
  } while (after !== undefined);
  return false;
}
