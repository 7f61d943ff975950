/** Ends a test run with one plain line that anybody, and any pipeline, can read. */
export default class SummaryReporter {
  onRunComplete(_contexts, results) {
    const failed = results.numFailedTests + results.numRuntimeErrorTestSuites;
    const skipped = results.numPendingTests + results.numTodoTests;
    process.stdout.write(`\n${results.numPassedTests} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}\n`);
  }
}
