import { writeSync } from 'node:fs';

/** Ends a test run with one plain line that anybody, and any pipeline, can read; after everything else is printed. */
export default class SummaryReporter {
  onRunComplete(_contexts, results) {
    const failed = results.numFailedTests + results.numRuntimeErrorTestSuites;
    const skipped = results.numPendingTests + results.numTodoTests;
    const line = `${results.numPassedTests} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
    process.once('exit', () => writeSync(1, `\n${line}\n`));
  }
}
