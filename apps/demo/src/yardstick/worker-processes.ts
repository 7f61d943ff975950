import { fork, type ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { YardstickAnswer, YardstickTask } from './yardstick-worker.js';

interface Waiting {
  readonly task: YardstickTask;
  readonly done: (answer: YardstickAnswer) => void;
  readonly failed: (error: Error) => void;
}

/** A few processes that work through tasks, first come first served. */
export class WorkerProcesses {
  private readonly idle: ChildProcess[] = [];
  private readonly all: ChildProcess[] = [];
  private readonly queue: Waiting[] = [];

  constructor(count: number) {
    // The same ending as this file: .ts when the source runs, .js after a build.
    const file = fileURLToPath(
      new URL(
        `./yardstick-worker${import.meta.url.slice(import.meta.url.lastIndexOf('.'))}`,
        import.meta.url,
      ),
    );
    for (let k = 0; k < count; k += 1) {
      const child = fork(file, [], { execArgv: [...process.execArgv, '--max-semi-space-size=64'] });
      this.all.push(child);
      this.idle.push(child);
    }
  }

  /** Does a task as soon as a process is free. */
  run(task: YardstickTask): Promise<YardstickAnswer> {
    return new Promise((done, failed) => {
      this.queue.push({ task, done, failed });
      this.next();
    });
  }

  close(): void {
    for (const child of this.all) child.disconnect();
  }

  private next(): void {
    const child = this.idle.shift();
    if (child === undefined) return;
    const waiting = this.queue.shift();
    if (waiting === undefined) {
      this.idle.unshift(child);
      return;
    }
    const ended = (code: number | null) => {
      waiting.failed(new Error(`a process of the yardstick ended with ${String(code)}`));
    };
    child.once('exit', ended);
    child.once('message', (answer: YardstickAnswer) => {
      child.off('exit', ended);
      this.idle.push(child);
      waiting.done(answer);
      this.next();
    });
    child.send(waiting.task);
  }
}
