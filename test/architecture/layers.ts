import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { root } from './project-files.js';

const table = join(root, '.config/boundaries.cjs');
const tool = join(root, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs');
const run = promisify(execFile);

interface Cruised {
  readonly summary: {
    readonly totalCruised: number;
    readonly violations: readonly { readonly from: string; readonly rule: { readonly name: string } }[];
  };
}

export interface LayerReport {
  readonly modules: number;
  /** file -> names of the rules it breaks */
  readonly broken: ReadonlyMap<string, ReadonlySet<string>>;
}

/** Holds the layer table against the folders apps, libs and test below `folder`. */
export async function holdLayers(folder: string): Promise<LayerReport> {
  const { stdout } = await run(
    process.execPath,
    [tool, '--config', table, '--output-type', 'json', 'apps', 'libs', 'test'],
    // The number of broken rules is the exit code of this tool; the report is asked for all the same.
    { cwd: folder, maxBuffer: 1 << 28, env: { ...process.env, NODE_OPTIONS: '' } },
  ).catch((error: unknown) => {
    const { stdout: report } = error as { stdout?: string };
    if (report?.startsWith('{') !== true) throw error;
    return { stdout: report };
  });
  const { summary } = JSON.parse(stdout) as Cruised;
  const broken = new Map<string, Set<string>>();
  for (const { from, rule } of summary.violations)
    broken.set(from, (broken.get(from) ?? new Set()).add(rule.name));
  return { modules: summary.totalCruised, broken };
}
