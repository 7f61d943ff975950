import type { RoadTestPoint } from './road-test-point.js';

/** Points of the proof road test of the throttle-housing job; common practice, the mapping to complaints is judgement. */
export const roadTestPoints: readonly RoadTestPoint[] = [
  {
    id: 'cold-start-idle',
    title: 'cold start and two minutes of idle',
    whatToDo: 'Start after standing cold, pedal untouched; let it idle for two minutes.',
    passWhen: 'it starts and does not stall',
    proves: 'cold start',
    mandatoryFor: ['stalls-cold'],
    whereFitted: false,
  },
  {
    id: 'cold-first-stop',
    title: 'drive off cold, first stop',
    whatToDo: 'Drive off while cold and come to a stop.',
    passWhen: 'no stall',
    proves: 'cold drive-off',
    mandatoryFor: ['stalls-cold'],
    whereFitted: false,
  },
  {
    id: 'ac-load-at-hot-idle',
    title: 'hot idle, air-conditioning off, then on, then off',
    whatToDo:
      'Note the idle speed, switch the air-conditioning on, note speed and settling time, switch it off.',
    passWhen: 'the change and the settling time are recorded and no rise remains',
    proves: 'air-conditioning load is balanced',
    mandatoryFor: ['idle-rises-with-ac', 'idle-hunts-warm'],
    whereFitted: true,
  },
  {
    id: 'electrical-and-steering-load',
    title: 'lights, heater fan and steering on lock; in gear or drive',
    whatToDo: 'Add the loads one after another at hot idle.',
    passWhen: 'the idle holds',
    proves: 'idle under load',
    mandatoryFor: ['idle-low-or-rough-warm', 'stalls-warm-coming-to-rest'],
    whereFitted: false,
  },
  {
    id: 'idle-stabilisation',
    title: 'idle settles after the pedal is released',
    whatToDo: 'At hot idle blip the pedal five times, slowly and quickly, and wait after each.',
    passWhen: 'the idle comes back to the same speed every time and stays there',
    proves: 'idle stabilisation',
    mandatoryFor: [
      'idle-rises-with-ac',
      'idle-hunts-warm',
      'idle-high-warm',
      'idle-low-or-rough-warm',
      'slow-return-to-idle',
    ],
    whereFitted: false,
  },
  {
    id: 'light-throttle-steady',
    title: 'steady light throttle at 30, 50 and 70 km/h',
    whatToDo: 'Hold each speed with the pedal still for half a minute, lawful speed permitting.',
    passWhen: 'no jerking fore and aft',
    proves: 'light throttle',
    mandatoryFor: ['bucks-at-light-throttle', 'jerks-at-tip-in'],
    whereFitted: false,
  },
  {
    id: 'tip-in-from-overrun',
    title: 'tip-in from the overrun',
    whatToDo: 'Coast in gear, then touch the pedal gently.',
    passWhen: 'no jerk',
    proves: 'transition from closed throttle',
    mandatoryFor: ['jerks-at-tip-in', 'bucks-at-light-throttle'],
    whereFitted: false,
  },
  {
    id: 'overrun-fuel-cut-off',
    title: 'lift off from about 3000 rpm',
    whatToDo:
      'Release the pedal in gear; watch injector pulse or air-fuel reading, or feel the engine braking.',
    passWhen: 'fuel is cut, and comes back without a jerk',
    proves: 'overrun fuel cut-off',
    mandatoryFor: ['no-overrun-fuel-cut-off', 'slow-return-to-idle', 'bucks-at-light-throttle'],
    whereFitted: false,
  },
  {
    id: 'roll-to-stop-clutch-down',
    title: 'roll to a stop with the clutch down or the selector in neutral',
    whatToDo: 'From town speed, release the pedal, clutch down, brake to rest.',
    passWhen: 'no stall',
    proves: 'coming to rest',
    mandatoryFor: ['stalls-warm-coming-to-rest', 'idle-high-warm'],
    whereFitted: false,
  },
  {
    id: 'full-throttle-enrichment',
    title: 'full throttle in a middle gear',
    whatToDo:
      'Press the pedal fully from medium speed where road and law permit; watch the air-fuel reading or the pull.',
    passWhen: 'it pulls without a hole, and the mixture goes rich where a full-load contact is fitted',
    proves: 'full-throttle enrichment',
    mandatoryFor: [],
    whereFitted: false,
  },
  {
    id: 'hot-restart',
    title: 'hot restart after ten minutes',
    whatToDo: 'Stop the hot engine, wait ten minutes, start.',
    passWhen: 'it starts, idle is normal',
    proves: 'hot restart',
    mandatoryFor: ['idle-hunts-warm', 'stalls-warm-coming-to-rest'],
    whereFitted: false,
  },
];

/** Re-check after the proof, when a point stayed untested: about 500 km or two weeks, whichever first. Judgement. */
export const roadTestRecheck = { kilometres: 500, days: 14 } as const;
