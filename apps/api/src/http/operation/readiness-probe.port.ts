/** Whether the database is there and at the version this process was built for. */
export abstract class ReadinessProbe {
  /** Why the process is not ready, in a word or two without host names; undefined when it is ready. Answers in a bounded time. */
  abstract check(): Promise<string | undefined>;
}
