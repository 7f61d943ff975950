import { parentPort } from 'node:worker_threads';
import { computeHere } from '@endfloat/workshop';
import { thrownAsData, type ComputeAnswer, type ComputeTask } from './compute-messages.js';

/** The far end of the pool: one computation after the other, nothing kept between them. */
parentPort?.on('message', ({ name, parts }: ComputeTask) => {
  let answer: ComputeAnswer;
  try {
    answer = { kind: 'computed', value: computeHere(name, parts) };
  } catch (error) {
    answer = { kind: 'thrown', thrown: thrownAsData(error) };
  }
  parentPort?.postMessage(answer);
});
parentPort?.postMessage({ kind: 'ready' } satisfies ComputeAnswer);
