import { Computing } from '../ports/computing.port.js';
import { computeHere } from './computations.js';

/** Computes on the spot, for a process that has nothing else to do meanwhile. */
export class ComputingHere extends Computing {
  run(name: string, parts: readonly unknown[]): Promise<unknown> {
    return new Promise((resolve) => {
      resolve(computeHere(name, parts));
    });
  }
}
