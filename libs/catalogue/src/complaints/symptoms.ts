import type { Symptom } from './symptom.js';

/**
 * The ten coded complaints of the throttle-housing job. Phrasings and questions are common practice, in our own words.
 * A symptom that nobody asked about is "not asked", which is a third state beside present and absent.
 */
export const symptoms: readonly Symptom[] = [
  {
    id: 'idle-rises-with-ac',
    name: 'idle rises when the air-conditioning is switched on',
    familyId: 'idle-speed',
    customerSays: ['the revs go up when I put the air on', 'it races as soon as the cooling starts'],
    ask: [
      'By how much does the idle rise, and does it stay up?',
      'Does switching the air-conditioning off bring it down again?',
      'Does it also rise with lights or the heater fan on?',
    ],
  },
  {
    id: 'idle-hunts-warm',
    name: 'idle swings up and down by itself, warm',
    familyId: 'idle-speed',
    customerSays: ['it goes up and down by itself at the lights', 'the needle never sits still'],
    ask: [
      'Only when warm, or cold as well?',
      'With the air-conditioning on, off, or both?',
      'Is it worse after refuelling or in hot weather?',
    ],
  },
  {
    id: 'idle-high-warm',
    name: 'idle steadily too high, warm',
    familyId: 'idle-speed',
    customerSays: ['it idles like it is in a hurry', 'it creeps forward on its own'],
    ask: [
      'Since when, and after which repair?',
      'Has anybody turned the stop screw?',
      'Does it come down if you blip the pedal?',
    ],
  },
  {
    id: 'idle-low-or-rough-warm',
    name: 'idle low or rough, warm',
    familyId: 'idle-speed',
    customerSays: ['it shakes at the lights', 'it nearly dies when I stop'],
    ask: [
      'Are lights, heater or rear window on when it shakes?',
      'In gear or in neutral?',
      'Is any warning lamp lit?',
    ],
  },
  {
    id: 'stalls-cold',
    name: 'stalls when cold, after the start or at the first stop',
    familyId: 'stalling',
    customerSays: ['it dies on me in the morning', 'I have to start it three times'],
    ask: [
      'How many seconds after the start?',
      'Also at the first stop after driving off?',
      'How cold is it outside when it happens?',
    ],
  },
  {
    id: 'stalls-warm-coming-to-rest',
    name: 'stalls when warm and coming to rest',
    familyId: 'stalling',
    customerSays: ['it dies when I roll up to a junction', 'it cuts out as I pull in'],
    ask: [
      'With the clutch down or the selector in drive?',
      'While the brake is pressed?',
      'Does it restart at once?',
    ],
  },
  {
    id: 'bucks-at-light-throttle',
    name: 'jerks fore and aft at steady light throttle',
    familyId: 'light-throttle',
    customerSays: ['it kicks like a mule in town', 'it hops along when I keep the pedal still'],
    ask: [
      'At which speed and in which gear?',
      'With the pedal held still?',
      'Does it go away with more pedal?',
    ],
  },
  {
    id: 'jerks-at-tip-in',
    name: 'jerk or hesitation when the pedal is first touched',
    familyId: 'light-throttle',
    customerSays: ['there is a jerk when I touch the pedal', 'it hangs a moment, then jumps'],
    ask: [
      'Only in the first millimetre of pedal?',
      'Also from a standstill?',
      'Does the pedal itself feel sticky?',
    ],
  },
  {
    id: 'slow-return-to-idle',
    name: 'engine speed hangs up or returns slowly to idle',
    familyId: 'overrun',
    customerSays: ['the revs stay up when I lift off', 'it takes ages to come down'],
    ask: [
      'Every time or only sometimes?',
      'How does the pedal feel, and is the mat clear of it?',
      'Warm only, or cold too?',
    ],
  },
  {
    id: 'no-overrun-fuel-cut-off',
    name: 'no fuel cut-off on the overrun, engine pushes on when coasting',
    familyId: 'overrun',
    customerSays: ['there is no engine braking', 'it drinks petrol'],
    ask: [
      'Does it push on downhill with the pedal released?',
      'Any popping from the exhaust?',
      'Since when has the consumption risen?',
    ],
  },
];
