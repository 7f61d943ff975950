import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Folder of the repository, without a slash at the end. */
export const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/[/\\]$/, '');

/** What .gitignore keeps out of the repository, and the repository's own administration. */
const notOurs = new Set(['node_modules', 'dist', 'generated', 'coverage', '.data', '.git']);

/** Files of the repository below a folder, relative to its root, with forward slashes, sorted. */
export function projectFiles(folder = '', accept: (file: string) => boolean = () => true): string[] {
  const found: string[] = [];
  const visit = (path: string): void => {
    for (const entry of readdirSync(path, { withFileTypes: true })) {
      if (notOurs.has(entry.name) || entry.name.endsWith('.log')) continue;
      const full = join(path, entry.name);
      if (entry.isDirectory()) visit(full);
      else found.push(relative(root, full).split(sep).join('/'));
    }
  };
  visit(join(root, folder));
  return found.filter(accept).sort();
}

export function readProjectFile(file: string): string {
  return readFileSync(join(root, file), 'utf8');
}

/** Names in a folder of the repository, sorted. */
export function entriesOf(folder: string): string[] {
  return readdirSync(join(root, folder)).sort();
}

export const isTypeScript = (file: string): boolean => file.endsWith('.ts') && !file.endsWith('.d.ts');
export const isTest = (file: string): boolean =>
  /[.](spec|int-spec|e2e-spec)[.]ts$/.test(file) || file.startsWith('test/');
export const isSource = (file: string): boolean => isTypeScript(file) && !isTest(file);

/**
 * The values that a source file exports. By path and not by name: the specs of this folder look behind front doors,
 * and an import they could write down would break the table they guard.
 */
export async function valuesOf(file: string): Promise<Readonly<Record<string, unknown>>> {
  return (await import(join(root, file))) as Record<string, unknown>;
}
