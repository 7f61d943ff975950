import {
  mandatoryRoadTestPoints,
  proofPoints,
  type ProofPointDefinition,
  type RefitOccasion,
} from '@endfloat/catalogue';
import type { ProofPoint, WorkAction } from '../ports/records/jobs.records.js';

/** What work opens, touches or disturbs, so that it must be put right and seen before the van leaves; judgement. */
const occasions: Readonly<Record<WorkAction, readonly RefitOccasion[]>> = {
  clean: [],
  freeLinkage: ['cableTouched'],
  adjustStop: ['valuesLearned'],
  adjustSwitch: ['connectorOpened'],
  replaceSwitch: ['connectorOpened', 'valuesLearned'],
  reBush: ['connectorOpened', 'housingRemoved', 'coolantOpened', 'cableTouched', 'valuesLearned'],
  replace: ['connectorOpened', 'housingRemoved', 'coolantOpened', 'cableTouched', 'valuesLearned'],
  repairWiring: ['connectorOpened'],
  other: [],
};

const housing = 'throttle-housing';

/** One point that a release still wants, and why. */
export interface MissingProof {
  readonly point: string;
  readonly title: string;
  readonly why: 'notRecorded' | 'failed' | 'mandatoryNotTested' | 'noReason' | 'noRecheckDate';
}

export interface ProofCase {
  /** symptoms present in the complaints of the job */
  readonly symptomsPresent: readonly string[];
  readonly workDone: readonly { readonly action: WorkAction; readonly componentType: string }[];
  /** the latest record of each point */
  readonly points: readonly ProofPoint[];
}

/** Points a release of this job wants: always linkage and pedal and the visual check, then what was complained of and touched. */
export function wantedProof({
  symptomsPresent,
  workDone,
}: Omit<ProofCase, 'points'>): readonly ProofPointDefinition[] {
  const touched = new Set(
    workDone.filter((line) => line.componentType === housing).flatMap((line) => occasions[line.action]),
  );
  return proofPoints.filter((point) => {
    if (point.kind === 'refit') return point.dueAfter !== null && touched.has(point.dueAfter);
    return point.kind !== 'roadTest' || symptomsPresent.length > 0;
  });
}

/**
 * What is missing before the job may be released. Points that prove a complaint must have passed; others may be "not
 * tested" with a reason and a date to look again, or "not fitted". A failed point is a failed proof.
 */
export function missingProof(given: ProofCase): readonly MissingProof[] {
  const mandatory = new Set(mandatoryRoadTestPoints(given.symptomsPresent));
  const missing = wantedProof(given).flatMap((point) => {
    const why = faultOf(
      given.points.find((each) => each.point === point.id),
      point.kind !== 'roadTest' && point.kind !== 'refit' ? true : mandatory.has(point.id),
    );
    return why === null ? [] : [{ point: point.id, title: point.title, why }];
  });
  const failedOthers = given.points
    .filter((each) => each.outcome === 'failed' && !missing.some(({ point }) => point === each.point))
    .map(({ point }) => ({ point, title: titleOf(point), why: 'failed' as const }));
  const noRoadTest =
    given.symptomsPresent.length === 0 &&
    !given.points.some(({ point, outcome }) => outcome === 'passed' && isRoadTest(point));
  const roadTest = noRoadTest
    ? [{ point: 'idle-stabilisation', title: 'any point of the road test', why: 'notRecorded' as const }]
    : [];
  return [...missing, ...failedOthers, ...roadTest];
}

function faultOf(record: ProofPoint | undefined, mandatory: boolean): MissingProof['why'] | null {
  if (record === undefined) return 'notRecorded';
  switch (record.outcome) {
    case 'passed':
      return null;
    case 'failed':
      return 'failed';
    case 'notFitted':
      return mandatory ? 'mandatoryNotTested' : null;
    case 'notTested':
      if (mandatory) return 'mandatoryNotTested';
      if ((record.notTestedBecause ?? '').trim() === '') return 'noReason';
      return record.recheckOn === null ? 'noRecheckDate' : null;
  }
}

function isRoadTest(id: string): boolean {
  return proofPoints.some((point) => point.id === id && point.kind === 'roadTest');
}

function titleOf(id: string): string {
  return proofPoints.find((point) => point.id === id)?.title ?? id;
}
