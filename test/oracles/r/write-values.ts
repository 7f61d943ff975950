/**
 * Runs the generators with R and writes what they print beside them, with the versions.
 *
 *   node --conditions=@endfloat/source --import ./.config/typescript-register.mjs test/oracles/r/write-values.ts
 */
import { writeFileSync } from 'node:fs';
import { generatedValues, generators } from './generators.js';
import { versionsOfR } from './rscript.js';

const versions = versionsOfR();
if (versions === null) {
  process.stdout.write('Nothing was written: Rscript or its package survival is not on this machine.\n');
} else {
  for (const generator of generators) writeFileSync(generator.values, generatedValues(generator, versions));
}
