import { fileURLToPath } from 'node:url';
import { withGeneratorTables } from './generator-tables.js';
import { printedByR, type VersionsOfR } from './rscript.js';

export interface Generator {
  readonly name: string;
  /** the R script */
  readonly script: string;
  /** what it printed, kept beside it */
  readonly values: string;
}

const besideOracles = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url));

/** Every R script of the oracles. */
export const generators: readonly Generator[] = [
  'statistics-survival',
  'statistics-regression',
  'datasets-of-r',
].map((name) => ({
  name,
  script: besideOracles(`${name}/generate.R`),
  values: besideOracles(`${name}/values.txt`),
}));

/** What a generator prints now, below a line with the versions. */
export function generatedValues({ script }: Generator, { r, survival }: VersionsOfR): string {
  return withGeneratorTables((folder) => `# R ${r}, survival ${survival}\n${printedByR(script, folder)}`);
}
