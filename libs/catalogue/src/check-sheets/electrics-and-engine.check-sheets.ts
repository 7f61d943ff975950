import { publishedLimitsFor } from '../limits/published/find-published-limit.js';
import type { Check, CheckSheet } from './check-sheet.js';
import { defineCheck, shippedPrecedence } from './define-check.js';

const common = { edition: 1, proofPointIds: [], precedence: shippedPrecedence } as const;

export const batterySheet: CheckSheet = {
  ...common,
  id: 'battery-and-charging',
  title: 'battery and charging',
  componentTypeIds: ['battery'],
  checks: [
    defineCheck({
      id: 'battery-voltage-rested',
      title: 'open-circuit voltage, rested',
      section: 'search',
      steps: [
        'Note how long it rested, its type and temperature.',
        'All loads off; measure at the posts.',
        'The result is a class of charge, never a percentage.',
      ],
      componentTypeId: 'battery',
      characteristicId: 'battery-voltage-rested',
      resultKind: 'number',
      requiredStates: ['engineOff', 'electricalLoadsOff', 'batteryRested'],
      instrumentKind: 'multimeter',
      minutes: 3,
      hazards: ['batteryGas'],
      limits: publishedLimitsFor('battery-voltage-rested'),
      outsideMeans: 'discharged; a state, not wear',
      whatToDo: 'Charge and test under load before judging the battery.',
    }),
    defineCheck({
      id: 'charging-voltage',
      title: 'charging voltage with loads on',
      section: 'search',
      steps: ['Raised idle, lights, heater fan and rear window on; measure at the posts.'],
      componentTypeId: 'battery',
      characteristicId: 'charging-voltage',
      resultKind: 'number',
      advisedAfter: ['battery-voltage-rested'],
      requiredStates: ['raisedIdle', 'electricalLoadsOn'],
      instrumentKind: 'multimeter',
      minutes: 3,
      hazards: ['batteryGas'],
      outsideMeans: 'outside the shop’s or maker’s range',
      whatToDo: 'Belt, connections, regulator, alternator in this order.',
    }),
    defineCheck({
      id: 'ground-voltage-drop',
      title: 'voltage drop of the ground connection',
      section: 'search',
      steps: ['Loads on; measure from engine block to battery negative.'],
      componentTypeId: 'battery',
      characteristicId: 'ground-voltage-drop',
      resultKind: 'number',
      advisedAfter: ['charging-voltage'],
      requiredStates: ['raisedIdle', 'electricalLoadsOn'],
      instrumentKind: 'multimeter',
      minutes: 2,
      hazards: ['batteryGas'],
      outsideMeans: 'bad ground: many odd engine faults',
      whatToDo: 'Clean and tighten the strap, measure again.',
    }),
  ],
};

export const compressionSheet: CheckSheet = {
  ...common,
  id: 'compression-balance',
  title: 'compression balance and coolant',
  componentTypeIds: ['engine'],
  checks: [
    defineCheck({
      id: 'cylinder-compression',
      title: 'compression of every cylinder',
      section: 'search',
      steps: [
        'Battery charged, engine hot, all plugs out, throttle held open.',
        'Fuel and ignition disabled.',
        'Crank the same number of turns for each cylinder; two rounds.',
      ],
      componentTypeId: 'engine',
      characteristicId: 'cylinder-compression',
      resultKind: 'number',
      requiredStates: ['engineHot', 'fuelAndIgnitionDisabled', 'cranking'],
      instrumentKind: 'compressionTester',
      minutes: 30,
      hazards: ['petrolVapour', 'batteryGas'],
      limits: publishedLimitsFor('cylinder-compression'),
      outsideMeans: 'one cylinder low against the best or the mean: each rule names its own reference',
      whatToDo: 'Leak-down test of the low cylinder; compare with the vehicle’s own history.',
    }),
    defineCheck({
      id: 'coolant-freezing-point',
      title: 'freezing point of the coolant',
      section: 'search',
      steps: [
        'Engine cold, cap off slowly.',
        'Use the refractometer scale of the right glycol; a wrong scale is far out.',
      ],
      componentTypeId: 'engine',
      characteristicId: 'coolant-freezing-point',
      resultKind: 'number',
      requiredStates: ['engineCold', 'engineOff', 'coolingSystemOpen'],
      instrumentKind: 'refractometer',
      minutes: 4,
      hazards: ['chemicals'],
      limits: publishedLimitsFor('coolant-freezing-point'),
      outsideMeans: 'too little glycol',
      whatToDo: 'Correct the mixture; bleed the system.',
    }),
  ],
};

const exhaust = (id: string, title: string, raised: boolean): Check =>
  defineCheck({
    id,
    title,
    section: 'search',
    steps: [
      'Analyser warmed up, leak-checked and zeroed; engine hot.',
      raised
        ? 'Hold at least 2000 rpm until the reading is steady.'
        : 'Let the idle settle, read when steady.',
      'The maker’s value comes before the general one.',
    ],
    componentTypeId: 'engine',
    characteristicId: id,
    resultKind: 'number',
    requiredStates: ['engineHot', raised ? 'raisedIdle' : 'idling'],
    instrumentKind: 'gasAnalyser',
    minutes: 4,
    limits: publishedLimitsFor(id),
    outsideMeans: 'mixture, leak or catalyst',
    whatToDo: 'Look for leaks first; set nothing before idle switch and sensors are right.',
  });

export const exhaustSheet: CheckSheet = {
  ...common,
  id: 'exhaust-gas',
  title: 'exhaust gas',
  componentTypeIds: ['engine'],
  checks: [
    exhaust('exhaust-co-idle', 'carbon monoxide at idle', false),
    exhaust('exhaust-hc-idle', 'hydrocarbons at idle', false),
    exhaust('exhaust-co-raised-idle', 'carbon monoxide at raised idle', true),
    exhaust('exhaust-hc-raised-idle', 'hydrocarbons at raised idle', true),
    exhaust('exhaust-lambda', 'lambda at raised idle', true),
  ],
};

export const headlampSheet: CheckSheet = {
  ...common,
  id: 'headlamp-aim',
  title: 'headlamp aim',
  componentTypeIds: ['headlamp'],
  checks: [
    defineCheck({
      id: 'headlamp-dip',
      title: 'dip of the cut-off below horizontal',
      section: 'search',
      steps: [
        'Level floor, tyres at pressure, driver’s weight in the seat, levelling at its stop.',
        'Measure the height of the lamp centre; align the tester; read the cut-off.',
      ],
      componentTypeId: 'headlamp',
      characteristicId: 'headlamp-dip',
      resultKind: 'number',
      requiredStates: ['wheelsStraightAhead', 'idling'],
      instrumentKind: 'headlampTester',
      minutes: 5,
      limits: publishedLimitsFor('headlamp-dip'),
      adjustable: 'yes',
      outsideMeans: 'dazzles or lights too short',
      whatToDo: 'Set, and measure again.',
    }),
  ],
};
