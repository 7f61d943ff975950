import { roadTestPoints } from '../road-test/road-test-points.js';

/** What a proof point belongs to. */
export const proofPointKinds = ['linkageAndPedal', 'visual', 'refit', 'roadTest'] as const;
export type ProofPointKind = (typeof proofPointKinds)[number];

/** Work after which a refit point is due. */
export const refitOccasions = [
  'connectorOpened',
  'housingRemoved',
  'coolantOpened',
  'cableTouched',
  'valuesLearned',
] as const;
export type RefitOccasion = (typeof refitOccasions)[number];

/** One point of the proof of a job: passed, failed, or not tested with a reason. */
export interface ProofPointDefinition {
  readonly id: string;
  readonly kind: ProofPointKind;
  readonly title: string;
  readonly passWhen: string;
  /** due only when this was done; null: always due */
  readonly dueAfter: RefitOccasion | null;
}

const refit = (
  id: string,
  title: string,
  passWhen: string,
  dueAfter: RefitOccasion,
): ProofPointDefinition => ({
  id,
  kind: 'refit',
  title,
  passWhen,
  dueAfter,
});

/** Points that close a throttle-housing job. Linkage and pedal, visual and road test always; refit points as the work asks. */
export const proofPoints: readonly ProofPointDefinition[] = [
  {
    id: 'linkage-and-pedal',
    kind: 'linkageAndPedal',
    title: 'linkage and pedal',
    passWhen: 'the plate returns and the idle switch closes every time the pedal is operated',
    dueAfter: null,
  },
  {
    id: 'visual',
    kind: 'visual',
    title: 'visual check',
    passWhen: 'hoses, connectors, clips and gaskets are in place and nothing leaks',
    dueAfter: null,
  },
  refit(
    'connector-seen',
    'connector refitted and seen by the control unit',
    'the control unit shows the switch opening and closing',
    'connectorOpened',
  ),
  refit(
    'gasket-renewed',
    'gasket',
    'a new gasket is fitted on clean faces and the nuts are tightened to the stated torque',
    'housingRemoved',
  ),
  refit(
    'coolant-refilled-and-bled',
    'coolant refilled and bled',
    'level right when cold, no air, heater hot, no leak',
    'coolantOpened',
  ),
  refit(
    'cables-reset',
    'throttle cable and kick-down cable reset',
    'free play at rest and full opening from the pedal; kick-down at its mark',
    'cableTouched',
  ),
  refit(
    'codes-and-adaptations-reset',
    'codes and adaptations reset',
    'codes read, written down and cleared; adaptations reset by procedure; none comes back',
    'valuesLearned',
  ),
  ...roadTestPoints.map((point): ProofPointDefinition => ({
    id: point.id,
    kind: 'roadTest',
    title: point.title,
    passWhen: point.passWhen,
    dueAfter: null,
  })),
];
