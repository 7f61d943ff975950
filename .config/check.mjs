// Everything that must hold before a change lands, in the order in which it fails fastest. Each step can be run alone.
import { spawnSync } from 'node:child_process';

const steps = [
  ['formatted', ['npm', 'run', '-s', 'format:check']],
  ['generated client present', ['npm', 'run', '-s', 'generate']],
  ['types', ['npm', 'run', '-s', 'typecheck']],
  ['lint and layers', ['npm', 'run', '-s', 'lint']],
  ['interface document fresh', ['npm', 'run', '-s', 'openapi:check']],
  ['interface document clean', ['npm', 'run', '-s', 'lint:api']],
  ['tests', ['npm', 'test']],
];

for (const [name, [command, ...args]] of steps) {
  process.stdout.write(`\n== ${name}\n`);
  const { status } = spawnSync(command, args, {
    stdio: 'inherit',
    env: { ...process.env, SCARF_ANALYTICS: 'false' },
  });
  if (status !== 0) {
    process.stdout.write(`\n${name}: failed. Run it alone with: ${[command, ...args].join(' ')}\n`);
    process.exit(status ?? 1);
  }
}
