/** What a replacement part for the cause costs, as a class. */
export const partsCostClasses = ['noPart', 'smallPart', 'mediumPart', 'majorPart'] as const;
export type PartsCostClass = (typeof partsCostClasses)[number];

/** What can produce a complaint; established by a check and by the cure, never at intake. */
export interface Cause {
  readonly id: string;
  readonly name: string;
  /** the cause in words a customer understands */
  readonly forCustomer: string;
  readonly partsCostClass: PartsCostClass;
  /** the open remainder: whatever the list does not name */
  readonly openRemainder: boolean;
}

const cause = (id: string, name: string, forCustomer: string, partsCostClass: PartsCostClass): Cause => ({
  id,
  name,
  forCustomer,
  partsCostClass,
  openRemainder: id === 'other-cause',
});

/** The twelve causes of the throttle-housing job; cost classes are judgement. */
export const causes: readonly Cause[] = [
  cause(
    'shaft-worn',
    'throttle shaft or bores worn, radial or axial play',
    'the throttle shaft is worn in its housing',
    'majorPart',
  ),
  cause(
    'plate-stop-too-far-open',
    'plate stop misadjusted, plate too far open at rest',
    'the throttle plate does not close far enough because its stop is set wrong',
    'noPart',
  ),
  cause(
    'idle-switch-misset-or-faulty',
    'idle switch closing point wrong or switch faulty',
    'the switch that tells the engine "pedal released" is set wrong or faulty',
    'smallPart',
  ),
  cause(
    'linkage-binding',
    'linkage or cable binding, or no free play',
    'the pedal cable or linkage does not let the throttle close freely',
    'noPart',
  ),
  cause(
    'unmetered-air-leak',
    'unmetered-air leak elsewhere: hose, gasket, breather, brake servo',
    'the engine draws in air through a leak',
    'smallPart',
  ),
  cause(
    'idle-air-valve-faulty',
    'idle air valve sticking or electrically faulty',
    'the valve that steadies the idle sticks or is faulty',
    'mediumPart',
  ),
  cause(
    'coolant-sensor-wrong',
    'coolant temperature sensor or its circuit reads wrong',
    'the engine is told a wrong coolant temperature',
    'smallPart',
  ),
  cause('base-timing-wrong', 'base ignition timing wrong', 'the ignition timing is set wrong', 'noPart'),
  cause(
    'purge-faulty-or-misrouted',
    'canister purge faulty or misrouted',
    'fuel vapour from the tank reaches the engine at the wrong moment',
    'smallPart',
  ),
  cause(
    'low-voltage-or-bad-ground',
    'low system voltage or bad ground',
    'the battery, the charging or an earth connection is poor',
    'mediumPart',
  ),
  cause(
    'deposits-in-bore',
    'deposits on plate or bore: sticking, starved of air',
    'deposits in the throttle housing hold the plate or block its air',
    'noPart',
  ),
  cause(
    'other-cause',
    'another cause: fuel pressure, air meter, mixture control, exhaust gas recirculation, idle-up device',
    'a cause that is not on this list',
    'majorPart',
  ),
];
