import { randomInt } from 'node:crypto';
import { Chance } from '@endfloat/workshop/ports';

const steps = 2 ** 32;

/** Chance of the machine. */
export class SystemChance extends Chance {
  next(): number {
    return randomInt(steps) / steps;
  }
}
