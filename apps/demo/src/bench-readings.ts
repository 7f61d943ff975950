import type { ReadingEntry } from '@endfloat/workshop';
import { demoInstruments } from './people.js';
import type { SeededRandom } from './seeded-random.js';
import { playThatWorksSwitch, type VanTruth } from './van-world.js';

type Measured = Omit<ReadingEntry, 'takenAt' | 'measuredBy' | 'position' | 'place' | 'note' | 'conditions'>;

export function linkage(): readonly Measured[] {
  return ['linkage-return', 'linkage-free-play'].map((checkId) => ({
    checkId,
    phase: 'asFound' as const,
    result: { kind: 'yesNo' as const, answer: true },
    instrumentId: null,
  }));
}

export function playReadings(van: VanTruth, random: SeededRandom): readonly Measured[] {
  const read = (truth: number): string => Math.max(0, random.normal(truth, 0.02)).toFixed(2);
  const number = (checkId: string, truth: number): Measured => ({
    checkId,
    phase: 'asFound',
    result: { kind: 'number', shown: read(truth), unit: 'mm' },
    instrumentId: demoInstruments.dial,
  });
  return [
    ...Array.from({ length: 3 }, () => number('shaft-radial-play-lower', van.play)),
    number('shaft-radial-play-upper', van.play * 0.6),
  ];
}

/** Port vacuum and switch, in the order the sheet wants. */
export function settingReadings(
  van: VanTruth,
  random: SeededRandom,
  phase: 'asFound' | 'asLeft',
): readonly Measured[] {
  const vacuum = Math.max(0, random.normal(van.play > playThatWorksSwitch ? 1.6 : 0.4, 0.3)).toFixed(1);
  const off = phase === 'asFound' && van.switchOff;
  return [
    {
      checkId: 'purge-port-vacuum-idle',
      phase,
      result: { kind: 'number', shown: vacuum, unit: 'kPa' },
      instrumentId: demoInstruments.vacuum,
    },
    {
      checkId: 'idle-switch-closing-point',
      phase,
      result: {
        kind: 'bladePair',
        largestClosed: off ? '0.10' : '0.06',
        smallestOpen: off ? '0.15' : '0.08',
        unit: 'mm',
      },
      instrumentId: demoInstruments.blades,
    },
  ];
}
