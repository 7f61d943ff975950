import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const repository = fileURLToPath(new URL('../..', import.meta.url));

/** Folder with published data that the project does not carry: ENDFLOAT_CASE_FOLDER, or one beside the repository. */
const folder = process.env['ENDFLOAT_CASE_FOLDER'] ?? resolve(repository, '..', 'shared', 'validation');

/** Rows of a published data file by column name, or null when the file is not at hand. */
export function publishedRows(file: string): Record<string, string>[] | null {
  const path = resolve(folder, 'data', file);
  if (!existsSync(path)) return null;
  const [header = '', ...lines] = readFileSync(path, 'utf8').trim().split(/\r?\n/);
  const names = header.split(',');
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, i) => [names[i] ?? '', cell])));
}

/**
 * A test on a published data file; where the file is not at hand the test is reported as skipped, with the file named.
 */
export function itWithPublished(
  file: string,
  title: string,
  check: (rows: readonly Record<string, string>[]) => void,
): void {
  const rows = publishedRows(file);
  if (rows === null)
    it.skip(`${title} (skipped: ${file} is not in the folder of published cases)`, () => undefined);
  else it(title, () => check(rows));
}
