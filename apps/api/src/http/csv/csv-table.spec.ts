import fc from 'fast-check';
import { csvCell, type CsvValue } from './csv-cell.js';
import { csvLines, writeCsv } from './csv-table.js';

describe('tables as CSV', () => {
  it('begin with the names and end every line with CR LF, also without rows', async () => {
    const columns = [
      { name: 'van', value: ({ van }: { van: string; km: number | null }) => van },
      { name: 'distanceKm', value: ({ km }: { van: string; km: number | null }) => km },
    ];
    const rows = [
      { van: 'Moss, "the green"', km: 1200.5 },
      { van: 'Heron', km: null },
    ];
    const expected = 'van,distanceKm\r\n"Moss, ""the green""",1200.5\r\nHeron,\r\n';
    expect(writeCsv(columns, rows)).toBe(expected);
    expect(writeCsv(columns, [])).toBe('van,distanceKm\r\n');
    const lines: string[] = [];
    for await (const line of csvLines(columns, rows)) lines.push(line);
    expect(lines.join('')).toBe(expected);
  });

  it.each([
    ['=1+1', "'=1+1"],
    ['+1+1', "'+1+1"],
    ['-2+3', "'-2+3"],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['  =1', "'  =1"],
    ['\t=1', '"\'\t=1"'],
    ['\uFF1D1', "'\uFF1D1"],
    ['-12.50', '-12.50'],
    ['1e-7', '1e-7'],
    ['a;=1', '"a;=1"'],
    ['plain', 'plain'],
  ])('write %j as %j: a formula is guarded, a figure stays one', (value, cell) => {
    expect(csvCell(value)).toBe(cell);
  });

  it('refuse a number that has no text', () => {
    expect(() => csvCell(Number.NaN)).toThrow(RangeError);
    expect(() => csvCell(Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });

  it('are read back as they were, apart from the guard', () => {
    const cell = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc.constantFrom('=a,"b"\r\n', '"', ',', '\r\n', '-1', '@x'),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 6 }), (rows) => {
        const columns = [0, 1].map((at) => ({
          name: `c${String(at)}`,
          value: (row: readonly CsvValue[]) => row[at] ?? null,
        }));
        const read = cellsOf(writeCsv(columns, rows)).slice(2);
        expect(read).toHaveLength(2 * rows.length);
        rows.flat().forEach((value, at) => {
          expect([String(value), `'${String(value)}`]).toContain(read[at]);
          if (typeof value === 'number') expect(Number(read[at])).toBe(value === 0 ? 0 : value);
          expect(read[at]).not.toMatch(/^\s*[=@]/);
        });
      }),
      { seed: 11, numRuns: 300 },
    );
  });
});

/** Every cell of a table, read character by character as RFC 4180 has it. */
function cellsOf(text: string): string[] {
  const cells: string[] = [];
  let cell = '';
  let isQuoted = false;
  for (let at = 0; at < text.length; at++) {
    const [here, next] = [text[at] ?? '', text[at + 1]];
    if (isQuoted && here === '"' && next === '"') {
      cell += '"';
      at++;
    } else if (here === '"') isQuoted = !isQuoted;
    else if (!isQuoted && (here === ',' || (here === '\r' && next === '\n'))) {
      cells.push(cell);
      cell = '';
      if (here === '\r') at++;
    } else cell += here;
  }
  return cells;
}
