/**
 * Runs pure computations beside whatever else the process does. Arguments and answer are plain data.
 *
 * A computation that takes longer than the port allows, or one too many at once, is refused with an error of the adapter;
 * what a computation throws comes back as it was thrown.
 */
export abstract class Computing {
  /** Answer of the computation of that name in the table of the workshop. */
  abstract run(name: string, parts: readonly unknown[]): Promise<unknown>;
}
