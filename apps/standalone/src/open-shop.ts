import { createHash, randomBytes } from 'node:crypto';
import { openPorts, writeKeyPrefix } from '@endfloat/api';
import { CreateApiKeyUseCase, isTimeZone, OpenShopUseCase, type ShopSettings } from '@endfloat/workshop';
import type { RunningDatabase } from './database.module.js';
import { SettingsError } from './settings.js';

const usage = 'Usage: npm run open-shop -- "Name of the shop" "Name of the owner" EUR Europe/Lisbon';

/** Judgement values to start from; the owner changes them with PATCH /v1/settings. */
const usualSettings: Omit<ShopSettings, 'name' | 'currency' | 'timeZone'> = {
  labourRatePerHour: '80.00',
  downtimeCostPerDay: '60.00',
  comebackHandling: '250.00',
  comebackWindowDays: 90,
  comebackWindowKm: '5000',
  planningDistanceKm: '120000',
  rankingMinimumJobs: 20,
};

/** Opens a shop with its first owner; answers the owner's key, which is shown this once. */
export async function openShop(database: RunningDatabase, words: readonly string[]): Promise<string> {
  const [name, ownerName, currency, timeZone] = words;
  if (name === undefined || ownerName === undefined || currency === undefined || timeZone === undefined)
    throw new SettingsError(usage);
  if (!/^[A-Z]{3}$/.test(currency))
    throw new SettingsError(`"${currency}" is no currency code of three capital letters. ${usage}`);
  if (!isTimeZone(timeZone))
    throw new SettingsError(`"${timeZone}" is no time zone of the IANA database. ${usage}`);
  const ports = openPorts({ url: database.apiUrl, size: 1, waitMs: 5000 });
  try {
    const { work, clock, ids } = ports;
    const [shopId, ownerId, keyId] = [ids.next(), ids.next(), ids.next()];
    const settings = { ...usualSettings, name, currency, timeZone };
    await new OpenShopUseCase(work, clock, ids).execute({
      shopId,
      settings,
      owner: { id: ownerId, displayName: ownerName },
    });
    const secret = randomBytes(32).toString('base64url');
    const secretHash = createHash('sha256').update(secret).digest('hex');
    const key = {
      id: keyId,
      userId: ownerId,
      name: 'first key of the owner',
      secretHash,
      roles: ['owner'] as const,
      expiresAt: null,
    };
    await new CreateApiKeyUseCase(work, clock).execute({ shopId, userId: ownerId, roles: ['owner'] }, key);
    return `${writeKeyPrefix(shopId, keyId)}.${secret}`;
  } finally {
    await ports.close();
  }
}
