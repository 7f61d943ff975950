import { csvMediaType, json } from '../requests/media-types.js';
import { withRules } from '../requests/route-rules.js';
import { writeCsv, type CsvColumn } from './csv-table.js';

/** How the answer of an operation is told as a table. */
export interface CsvForm {
  /** Name of the file without its ending. */
  readonly fileName: string;
  /** The answer as CSV; gets what the contract lets out, never more. */
  readonly write: (answer: unknown) => string;
}

const forms = new WeakMap<object, CsvForm>();

/** The table of a handler's answer; undefined where it has none. */
export function csvFormOf(handler: object): CsvForm | undefined {
  return forms.get(handler);
}

/**
 * The operation answers with CSV, too, for whoever prefers it (`Accept: text/csv`): the rows of its JSON answer.
 *
 * @param fileName  in kebab-case, without an ending
 * @param rowsOf  the rows of the answer; a union without rows gives none
 * @param columns  in their order
 */
export function AlsoCsv<Answer, Row>(
  fileName: string,
  rowsOf: (answer: Answer) => readonly Row[],
  columns: readonly CsvColumn<Row>[],
): MethodDecorator {
  const rules = withRules({ produces: [json, csvMediaType] });
  return (target, key, descriptor) => {
    const handler = descriptor.value as object;
    forms.set(handler, { fileName, write: (answer) => writeCsv(columns, rowsOf(answer as Answer)) });
    rules(target, key, descriptor as PropertyDescriptor);
  };
}
