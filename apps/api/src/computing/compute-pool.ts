import { Worker } from 'node:worker_threads';
import { Computing } from '@endfloat/workshop';
import { thrownAgain, type ComputeAnswer, type ComputeTask } from './compute-messages.js';

export interface ComputePoolSettings {
  /** most threads at once; each is started when it is first needed */
  readonly threads: number;
  /** most computations waiting for a thread */
  readonly mostWaiting: number;
  /** milliseconds a computation may take once it has begun */
  readonly timeLimit: number;
  /** further options of Node for the threads, e.g. to run the source as it stands */
  readonly execArgv?: readonly string[];
}

/** Milliseconds a new thread may take to load before it can compute. Judgement: seconds, on a machine that is busy. */
const loadLimit = 60_000;

/** Why the pool itself could not give an answer; the caller may ask again later. */
export const computeRefusals = {
  COMPUTING_FULL: 'more computations are waiting than this process takes',
  COMPUTING_TIMED_OUT: 'the computation took longer than it may',
  COMPUTING_CLOSED: 'the process is ending',
} as const;
export type ComputeRefusal = keyof typeof computeRefusals;

export class ComputeError extends Error {
  constructor(readonly code: ComputeRefusal) {
    super(computeRefusals[code]);
    this.name = 'ComputeError';
  }
}

interface Job extends ComputeTask {
  resolve(value: unknown): void;
  reject(error: unknown): void;
}

interface Thread {
  readonly worker: Worker;
  job: Job | null;
  timer: NodeJS.Timeout | undefined;
  isReady: boolean;
}

/**
 * Threads that compute while the process goes on answering. A thread that dies or runs over its time is replaced when the
 * next computation needs one; what it was at is refused, everything else goes on.
 */
export class ComputePool extends Computing {
  private readonly threads = new Set<Thread>();
  private readonly waiting: Job[] = [];
  private closing: (() => void) | undefined;
  private isClosed = false;

  constructor(private readonly settings: ComputePoolSettings) {
    super();
  }

  run(name: string, parts: readonly unknown[]): Promise<unknown> {
    if (this.isClosed) return Promise.reject(new ComputeError('COMPUTING_CLOSED'));
    if (this.waiting.length >= this.settings.mostWaiting)
      return Promise.reject(new ComputeError('COMPUTING_FULL'));
    return new Promise((resolve, reject) => {
      this.waiting.push({ name, parts, resolve, reject });
      this.handOut();
    });
  }

  /** Refuses what waits, lets what has begun come to its end, and ends the threads. */
  async close(): Promise<void> {
    this.isClosed = true;
    for (const job of this.waiting.splice(0)) job.reject(new ComputeError('COMPUTING_CLOSED'));
    if (this.isBusy()) await new Promise<void>((resolve) => (this.closing = resolve));
    const ended = [...this.threads].map(({ worker }) => worker.terminate());
    this.threads.clear();
    await Promise.all(ended);
  }

  private isBusy(): boolean {
    return [...this.threads].some(({ job }) => job !== null);
  }

  private handOut(): void {
    while (this.waiting.length > 0) {
      const thread = [...this.threads].find(({ job }) => job === null) ?? this.oneMore();
      if (thread === undefined) return;
      this.begin(thread, this.waiting.shift()!);
    }
  }

  private oneMore(): Thread | undefined {
    if (this.threads.size >= this.settings.threads) return undefined;
    // Beside this file in either form: the build gives .js, tests and scripts run the .ts.
    const own = import.meta.url;
    const entry = new URL(`./compute-worker${own.slice(own.lastIndexOf('.'))}`, own);
    const { execArgv } = this.settings;
    const worker = new Worker(entry, execArgv === undefined ? {} : { execArgv: [...execArgv] });
    const thread: Thread = { worker, job: null, timer: undefined, isReady: false };
    worker.on('message', (answer: ComputeAnswer) => {
      if (answer.kind === 'ready') {
        thread.isReady = true;
        if (thread.job !== null) this.limit(thread);
        return;
      }
      this.finish(thread, (job) => {
        if (answer.kind === 'computed') job.resolve(answer.value);
        else job.reject(thrownAgain(answer.thrown));
      });
    });
    worker.on('error', (error) => {
      this.drop(thread, error);
    });
    worker.on('exit', () => {
      this.drop(thread, new Error('a computing thread ended'));
    });
    this.threads.add(thread);
    return thread;
  }

  private begin(thread: Thread, job: Job): void {
    thread.job = job;
    thread.worker.ref();
    this.limit(thread);
    try {
      thread.worker.postMessage({ name: job.name, parts: job.parts });
    } catch (error) {
      // What cannot be copied to a thread is a fault of the caller; the thread is as good as before.
      this.finish(thread, (each) => {
        each.reject(error);
      });
    }
  }

  private limit(thread: Thread): void {
    clearTimeout(thread.timer);
    const { timeLimit } = this.settings;
    thread.timer = setTimeout(
      () => {
        this.drop(thread, new ComputeError('COMPUTING_TIMED_OUT'));
        void thread.worker.terminate();
      },
      thread.isReady ? timeLimit : loadLimit,
    );
  }

  private finish(thread: Thread, settle: (job: Job) => void): void {
    const { job } = thread;
    clearTimeout(thread.timer);
    thread.job = null;
    // An idle thread keeps no process alive.
    thread.worker.unref();
    if (job !== null) settle(job);
    this.goOn();
  }

  private drop(thread: Thread, error: Error): void {
    if (!this.threads.delete(thread)) return;
    clearTimeout(thread.timer);
    thread.job?.reject(error);
    thread.job = null;
    this.goOn();
  }

  private goOn(): void {
    if (!this.isClosed) this.handOut();
    else if (!this.isBusy()) this.closing?.();
  }
}
