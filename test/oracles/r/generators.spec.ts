import { readFileSync } from 'node:fs';
import { generatedValues, generators } from './generators.js';
import { versionsOfR } from './rscript.js';

// The values beside each script are printed to 12 digits (tables: 8); figures found by a search agree to 1e-7 from one
// version of R to the next, so 1e-6 relative is asked for, and 1e-9 absolute where a figure is nothing but rounding.

const versions = versionsOfR();

/** Text between figures, and the figures. */
function split(line: string): { words: string; figures: number[] } {
  const figures: number[] = [];
  const words = line.replaceAll(/-?\d+(?:\.\d+)?(?:e[-+]?\d+)?/gu, (text) => {
    figures.push(Number(text));
    return '#';
  });
  return { words: words.replaceAll(/\s+/gu, ' ').trim(), figures };
}

const linesOf = (text: string): string[] => text.trimEnd().split('\n').slice(1);

describe.each(generators)('the generator of $name', (generator) => {
  if (versions === null) {
    it.skip('prints the values kept beside it (skipped: Rscript with its package survival is not on this machine)', () =>
      undefined);
    return;
  }

  it('prints the values kept beside it', () => {
    const kept = linesOf(readFileSync(generator.values, 'utf8'));
    const now = linesOf(generatedValues(generator, versions));
    expect(now.map((line) => split(line).words)).toEqual(kept.map((line) => split(line).words));
    const off = now.filter((line, row) => {
      const { figures } = split(kept[row] ?? '');
      return split(line).figures.some(
        (figure, index) =>
          Math.abs(figure - (figures[index] ?? NaN)) > 1e-9 + 1e-6 * Math.abs(figures[index] ?? NaN),
      );
    });
    expect(off).toEqual([]);
  });
});

describe('the values kept of R', () => {
  it.each(generators)('of $name name the versions that made them', ({ values }) => {
    expect(readFileSync(values, 'utf8')).toMatch(/^# R \d+\.\d+\.\d+, survival \d+\.\d+\.\d+\n/u);
  });
});
