import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Columns of one case, as R printed them; `NA` is NaN. */
export type KeptCase = (column: string) => readonly number[];

/**
 * Cases that a generator printed, one line a column: case | name | numbers.
 *
 * @param name  folder of the generator beside this one
 * @returns a case by its name, and its columns by theirs; a name that is not there is an error
 */
export function keptValues(name: string): (title: string) => KeptCase {
  const file = fileURLToPath(new URL(`../${name}/values.txt`, import.meta.url));
  const columns = new Map<string, readonly number[]>();
  for (const line of readFileSync(file, 'utf8').split('\n')) {
    const [title, column, figures] = line.split('|').map((part) => part.trim());
    if (title === undefined || column === undefined || figures === undefined) continue;
    columns.set(`${title}|${column}`, figures.split(/\s+/u).map(numberOf));
  }
  return (title) => (column) => {
    const found = columns.get(`${title}|${column}`);
    if (found === undefined) throw new Error(`${name} keeps no ${column} of ${title}`);
    return found;
  };
}

function numberOf(text: string): number {
  if (text === 'Inf') return Infinity;
  return text === '-Inf' ? -Infinity : Number(text);
}
