export interface RunningWorker {
  /** Starts the next round now. */
  wake(): void;
  /** Ends after the round that is running. */
  stop(): Promise<void>;
}

export interface Rounds extends RunningWorker {
  /** Resolves when the first round has ended, well or not. */
  readonly first: Promise<void>;
}

/** Runs a piece of work again and again with a pause in between; a fault is reported and ends nothing. */
export function runRounds(
  round: () => Promise<void>,
  pauseMs: number,
  onFault: (error: unknown) => void,
): Rounds {
  let stopping = false;
  let endPause = (): void => undefined;
  const guarded = (): Promise<void> => round().catch(onFault);
  const first = guarded();
  const all = (async (): Promise<void> => {
    await first;
    for (;;) {
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, stopping ? 0 : pauseMs);
        endPause = () => {
          clearTimeout(timer);
          resolve();
        };
      });
      if (stopping) return;
      await guarded();
    }
  })();
  return {
    first,
    wake: () => {
      endPause();
    },
    stop: () => {
      stopping = true;
      endPause();
      return all;
    },
  };
}
