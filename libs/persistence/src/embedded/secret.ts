import { createHmac, randomBytes, randomUUID } from 'node:crypto';
import { existsSync, linkSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import type { DataFolder } from './data-folder.js';
import { DatabaseStartError, faultOf } from './database-start.error.js';

/**
 * The random secret of a data folder, from which the passwords of its roles follow; made on first use, readable by
 * its owner only.
 *
 * @throws DatabaseStartError when a cluster exists without it, or it cannot be read or written
 */
export function readOrCreateSecret({ path, cluster, secret }: DataFolder): string {
  try {
    if (!existsSync(secret)) {
      if (existsSync(cluster)) throw lost(secret);
      const unfinished = `${secret}.${randomUUID()}`;
      writeFileSync(unfinished, randomBytes(32).toString('base64url'), { mode: 0o600 });
      linkUnlessThere(unfinished, secret);
    }
    const value = readFileSync(secret, 'utf8').trim();
    if (value.length < 32) throw lost(secret);
    return value;
  } catch (cause) {
    if (cause instanceof DatabaseStartError) throw cause;
    throw faultOf(String(cause), path, 'secretUnusable', cause);
  }
}

/** Password of a role: as long as the secret stays, it stays. */
export function rolePassword(secret: string, role: string): string {
  return createHmac('sha256', secret).update(role).digest('base64url');
}

/** Of two that start at once, the first one's secret holds. */
function linkUnlessThere(unfinished: string, secret: string): void {
  try {
    linkSync(unfinished, secret);
  } catch (error) {
    if (!existsSync(secret)) throw error;
  } finally {
    rmSync(unfinished, { force: true });
  }
}

function lost(secret: string): DatabaseStartError {
  return new DatabaseStartError(
    'secretUnusable',
    `${secret} is missing or damaged, and without it the data beside it cannot be opened. Restore it from a backup; ` +
      'where the data may be thrown away, remove the folder.',
  );
}
