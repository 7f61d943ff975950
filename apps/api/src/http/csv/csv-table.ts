import { csvCell, type CsvValue } from './csv-cell.js';

/** One column: its name, with the unit where it has one (`distanceKm`), and what stands in it. */
export interface CsvColumn<Row> {
  readonly name: string;
  readonly value: (row: Row) => CsvValue;
}

/** One line with its end (RFC 4180: CR LF). */
export function csvLine(values: readonly CsvValue[]): string {
  return `${values.map(csvCell).join(',')}\r\n`;
}

/** A table with the line of its column names; without rows it is that line alone. */
export function writeCsv<Row>(columns: readonly CsvColumn<Row>[], rows: readonly Row[]): string {
  const lines = rows.map((row) => csvLine(columns.map(({ value }) => value(row))));
  return csvLine(columns.map(({ name }) => name)) + lines.join('');
}

/** The same line by line, for `Readable.from`: what is exported is never held as a whole. */
export async function* csvLines<Row>(
  columns: readonly CsvColumn<Row>[],
  rows: Iterable<Row> | AsyncIterable<Row>,
): AsyncGenerator<string> {
  yield csvLine(columns.map(({ name }) => name));
  for await (const row of rows) yield csvLine(columns.map(({ value }) => value(row)));
}
