import type { PartUsed, SymptomAnswer } from '@endfloat/workshop';
import type { SeededRandom } from './seeded-random.js';

/** What is true of a demo van and nobody in the shop knows; invented, like everything here. */
export interface VanTruth {
  km: number;
  /** play of the throttle shaft at its lower end, mm */
  play: number;
  /** growth of the play, mm per 100,000 km */
  rate: number;
  readonly kmPerDay: number;
  /** whether the idle switch has drifted */
  switchOff: boolean;
  /** a repair that did not hold: when the customer will be back, and with which words */
  returning: Returning | null;
}

export interface Returning {
  readonly at: string;
  readonly saying: Saying;
  /** the repair that did not hold */
  readonly jobId: string;
  /** what the shop will find it was, when it looks back */
  readonly attribution: 'wrongRootCause' | 'workmanship' | 'partDefective';
}

/** Play at which moving the shaft by hand works the switch, mm. */
export const playThatWorksSwitch = 0.2;

export function newVan(random: SeededRandom): VanTruth {
  return {
    km: Math.round(random.between(95_000, 310_000)),
    play: random.between(0.03, 0.13),
    rate: Math.exp(random.normal(Math.log(0.07), 0.6)),
    kmPerDay: Math.exp(random.normal(Math.log(58), 0.35)),
    switchOff: random.happens(0.15),
    returning: null,
  };
}

export function drive(van: VanTruth, days: number, random: SeededRandom): void {
  const driven = van.kmPerDay * days;
  van.km += Math.round(driven);
  van.play += (van.rate * driven * random.between(0.6, 1.4)) / 100_000;
  if (random.happens(1 - Math.exp(-driven / 60_000))) van.switchOff = true;
}

/** Complaints per day: more as the play passes what works the switch, and while the switch is off. */
export function complaintHazard(van: VanTruth): number {
  const worn = 1 / (1 + Math.exp(-(van.play - playThatWorksSwitch) / 0.02));
  return 0.003 + 0.012 * worn + (van.switchOff ? 0.004 : 0);
}

export interface Saying {
  readonly words: string;
  readonly symptoms: Readonly<Record<string, SymptomAnswer>>;
}

const sayings: readonly Saying[] = [
  {
    words: 'The revs go up when I put the air on, and it kicks in town.',
    symptoms: {
      'idle-rises-with-ac': 'present',
      'bucks-at-light-throttle': 'present',
      'stalls-cold': 'absent',
    },
  },
  {
    words: 'It goes up and down by itself at the lights.',
    symptoms: { 'idle-hunts-warm': 'present', 'idle-rises-with-ac': 'absent' },
  },
  {
    words: 'Dies on me in the morning, and no engine braking down the hill.',
    symptoms: { 'stalls-cold': 'present', 'no-overrun-fuel-cut-off': 'present' },
  },
  {
    words: 'It idles like it is in a hurry.',
    symptoms: { 'idle-high-warm': 'present', 'slow-return-to-idle': 'absent' },
  },
  {
    words: 'Kicks like a mule in town with my foot hardly on the pedal.',
    symptoms: { 'bucks-at-light-throttle': 'present', 'jerks-at-tip-in': 'present' },
  },
];

export function sayingOf(random: SeededRandom): Saying {
  return random.pick(sayings);
}

/** What a repair did to the part. */
export interface RepairTruth {
  readonly part: PartUsed | null;
  /** play afterwards; null where the wear stayed in */
  readonly play: number | null;
  readonly waitDays: number;
  /** chance that it does not hold, and what it will be put down to */
  readonly failure: number;
  readonly attribution: Returning['attribution'];
}

const partOf = (
  condition: PartUsed['condition'],
  supplier: string,
  amount: string,
  random: SeededRandom,
): PartUsed => ({
  condition,
  supplier,
  partNumber: null,
  serial: `S${String(random.whole(10_000, 99_999))}`,
  batch: `B${String(random.whole(1, 6))}`,
  price: { amount, currency: 'EUR' },
});

/** How each option turns out in this world. */
export function truthOfRepair(optionId: string, worn: boolean, random: SeededRandom): RepairTruth {
  switch (optionId) {
    case 'reBush':
      return {
        part: partOf('repairedOwnPart', 'Birchmoor Castings', '35.00', random),
        play: random.between(0.03, 0.07),
        waitDays: random.whole(1, 3),
        failure: 0.12,
        attribution: 'workmanship',
      };
    case 'fitRemanufactured':
      return {
        part: partOf('remanufactured', 'Rill & Daughters', '310.00', random),
        play: random.between(0.02, 0.06),
        waitDays: random.whole(2, 6),
        failure: 0.07,
        attribution: 'partDefective',
      };
    case 'fitUsed':
      return {
        part: partOf('used', 'Harl Breakers', '120.00', random),
        play: random.between(0.05, 0.19),
        waitDays: random.whole(2, 9),
        failure: 0.22,
        attribution: 'partDefective',
      };
    case 'fitNew':
      return {
        part: partOf('newOldStock', 'Oxbow Stores', '520.00', random),
        play: random.between(0.01, 0.03),
        waitDays: random.whole(8, 16),
        failure: 0.04,
        attribution: 'partDefective',
      };
    default:
      return {
        part: null,
        play: null,
        waitDays: 0,
        failure: worn ? 0.55 : 0.14,
        attribution: worn || random.happens(0.5) ? 'wrongRootCause' : 'workmanship',
      };
  }
}
