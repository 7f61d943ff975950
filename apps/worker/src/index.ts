export { openDeliveries, startWorker, type WorkerSettings } from './worker.module.js';
export type { RunningWorker } from './run-rounds.js';
