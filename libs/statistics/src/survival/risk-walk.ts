import { tallyByAge, type AgeTally } from './age-tally.js';
import { totalWeight, type CensoredSample } from './censored-sample.js';

/** Walks one sample along rising ages, keeping count of who is at risk. */
export class RiskWalk {
  readonly deaths: AgeTally;
  private readonly exits: AgeTally;
  private readonly entries: AgeTally | null;
  private atRisk: number;
  private nextDeath = 0;
  private nextExit = 0;
  private nextEntry = 0;

  constructor({ ages, events, entryAges, weights }: CensoredSample) {
    this.deaths = tallyByAge({ ages, weights, keep: (row) => Number(events[row]) === 1 });
    this.exits = tallyByAge({ ages, weights });
    this.entries = entryAges === undefined ? null : tallyByAge({ ages: entryAges, weights });
    this.atRisk = entryAges === undefined ? totalWeight({ ages, events, weights }) : 0;
  }

  /** Greatest age observed; there is at least one row. */
  get lastAge(): number {
    return this.exits.ages[this.exits.ages.length - 1]!;
  }

  /** Weight at risk and weight of events at the age; ages must rise from call to call. */
  stepTo(age: number): readonly [number, number] {
    const { entries, exits, deaths } = this;
    while (
      entries !== null &&
      this.nextEntry < entries.ages.length &&
      entersBefore(entries.ages[this.nextEntry]!, age)
    ) {
      this.atRisk += entries.totals[this.nextEntry]!;
      this.nextEntry += 1;
    }
    while (this.nextExit < exits.ages.length && exits.ages[this.nextExit]! < age) {
      this.atRisk -= exits.totals[this.nextExit]!;
      this.nextExit += 1;
    }
    if (deaths.ages[this.nextDeath] !== age) return [this.atRisk, 0];
    this.nextDeath += 1;
    return [this.atRisk, deaths.totals[this.nextDeath - 1]!];
  }
}

/** Entry 0 means observed from the very start, age 0 included. */
const entersBefore = (entry: number, age: number): boolean => entry < age || entry === 0;
