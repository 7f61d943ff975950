import { createHmac, randomBytes } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { SettingsError } from './settings.js';

/**
 * The secret of this installation: given, or made once and kept in a file that only its owner reads.
 *
 * @param mayMake  false for who only asks: an installation that was never started has none
 */
export function serviceSecret(
  given: string | undefined,
  dataFolder: string | undefined,
  mayMake = true,
): string {
  if (given !== undefined) return given;
  if (dataFolder === undefined) {
    throw new SettingsError(
      'ENDFLOAT_SECRET is needed with DATABASE_URL: at least 32 characters, the same for all processes of the service.',
    );
  }
  const file = join(dataFolder, 'service-secret');
  if (!mayMake && !existsSync(file)) {
    throw new SettingsError(
      `Nothing has been started in ${dataFolder} yet. Run npm start first, and give both the same ENDFLOAT_DATA.`,
    );
  }
  if (!existsSync(file))
    writeFileSync(file, randomBytes(48).toString('base64url'), { mode: 0o600, flag: 'wx' });
  return readFileSync(file, 'utf8').trim();
}

/** A secret for one purpose; none of them tells another. */
export function derivedSecret(secret: string, purpose: string): string {
  return createHmac('sha256', secret).update(purpose).digest('base64url');
}
