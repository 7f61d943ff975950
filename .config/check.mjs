// Everything that must hold before a change lands, in the order in which it fails fastest. Each step can be run alone.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const run = (command, ...args) => {
  const env = { ...process.env, SCARF_ANALYTICS: 'false' };
  const { status } = spawnSync(command, args, { stdio: 'inherit', env });
  return status ?? 1;
};
const script = (name) => ['npm', 'run', '-s', name];

/** Writes the interface document anew, compares it with the one that is there, and leaves that as it was. */
function openapiIsFresh() {
  const file = fileURLToPath(new URL('../libs/contracts/openapi/openapi.json', import.meta.url));
  const before = existsSync(file) ? readFileSync(file) : undefined;
  const status = run(...script('openapi'));
  const after = status === 0 ? readFileSync(file) : undefined;
  if (before === undefined) rmSync(file, { force: true });
  else writeFileSync(file, before);
  if (status !== 0 || before?.equals(after)) return status;
  process.stdout.write(
    'The committed document is not the one that the routes give. Write it with: npm run openapi\n',
  );
  return 1;
}

const steps = [
  ['formatted', script('format:check')],
  ['generated client present', script('generate')],
  ['types', script('typecheck')],
  ['lint and layers', script('lint')],
  ['interface document fresh', openapiIsFresh],
  ['nothing breaks clients', [process.execPath, '.config/breaking-changes.mjs']],
  ['client fresh', [process.execPath, '.config/write-client.mjs', '--check']],
  ['interface document clean', script('lint:api')],
  ['tests', ['npm', 'test']],
];

for (const [name, step] of steps) {
  process.stdout.write(`\n== ${name}\n`);
  const status = typeof step === 'function' ? step() : run(...step);
  if (status === 0) continue;
  const alone = typeof step === 'function' ? '' : ` Run it alone with: ${step.join(' ')}`;
  process.stdout.write(`\n${name}: failed.${alone}\n`);
  process.exit(status);
}
