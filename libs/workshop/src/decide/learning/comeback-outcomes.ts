import type { PartCondition } from '@endfloat/catalogue';
import type { ComebackOutcome, OptionAction, WatchOutcome } from '@endfloat/decision';
import type { AssessedRepair, ReleasedJobHistory, RepairDone } from '../../ports/learning-history.port.js';
import type { WorkAction } from '../../ports/records/jobs.records.js';
import { actionOfCondition } from '../gather-offers.js';
import { usualActions } from '../repair-tariffs.js';
import { watchedOf } from './watched.js';

/** Why a repair teaches the chances of a comeback nothing. */
export const repairsLeftOutReasons = ['comebackNotSettled', 'conditionUnknown', 'notWatched'] as const;
export type RepairLeftOutReason = (typeof repairsLeftOutReasons)[number];

/** One repair of a component of a released job, and what followed. */
export interface SettledRepair {
  readonly jobId: string;
  readonly componentType: string;
  readonly position: string;
  readonly assessed: AssessedRepair | null;
  readonly outcome: ComebackOutcome;
}

export interface SettledRepairs {
  readonly repairs: readonly SettledRepair[];
  readonly leftOut: readonly { readonly jobId: string; readonly reason: RepairLeftOutReason }[];
}

/** Comebacks that say nothing about the choice of repair: another fault, or what others did to the vehicle. */
const beyondTheRepair = new Set(['newUnrelatedFault', 'operatingFuelTampering']);

/** Work that leaves the worn surfaces as they were. */
const adjusting: ReadonlySet<WorkAction> = new Set([
  'clean',
  'freeLinkage',
  'adjustStop',
  'adjustSwitch',
  'replaceSwitch',
]);

/**
 * Repairs of components that can be assessed, as the comeback model learns from them. How worn the part was, and what the
 * functional criterion said, comes from the assessment made before the release; without one it is not known.
 */
export function settledRepairs(
  jobs: readonly ReleasedJobHistory[],
  assessed: readonly AssessedRepair[],
  until: string,
): SettledRepairs {
  const byId = new Map(jobs.map((job) => [job.jobId, job]));
  const ofJob = new Map<string, AssessedRepair[]>();
  for (const each of assessed) ofJob.set(each.jobId, [...(ofJob.get(each.jobId) ?? []), each]);
  const repairs: SettledRepair[] = [];
  const leftOut: { jobId: string; reason: RepairLeftOutReason }[] = [];
  for (const job of jobs) {
    for (const place of placesOf(job, ofJob.get(job.jobId) ?? [])) {
      const done = strongestOf(job.repairs.filter((each) => isAt(place, each)));
      const action = done === null ? leftAsItWas(place.assessed) : done;
      if (action === null) continue;
      const watched = watchOutcomeOf(job, until);
      if (action === 'conditionUnknown') leftOut.push({ jobId: job.jobId, reason: 'conditionUnknown' });
      else if (typeof watched === 'string') leftOut.push({ jobId: job.jobId, reason: watched });
      else
        repairs.push({
          jobId: job.jobId,
          ...place,
          outcome: {
            context: contextOf(action, place.assessed, earlierComebacks(job, byId)),
            wear: wearLeftIn(action.action, place.assessed),
            outcome: watched,
          },
        });
    }
  }
  return { repairs, leftOut };
}

interface Place {
  readonly componentType: string;
  readonly position: string;
  readonly assessed: AssessedRepair | null;
}

const isAt = (place: Place, { componentType, position }: RepairDone): boolean =>
  place.componentType === componentType && place.position === position;

/** Components worked on or assessed in a job, of kinds that can be assessed. */
function placesOf({ repairs }: ReleasedJobHistory, assessed: readonly AssessedRepair[]): readonly Place[] {
  const places = assessed.map((each): Place => {
    const { componentType, position } = each.question;
    return { componentType, position, assessed: each };
  });
  for (const repair of repairs) {
    const { componentType, position } = repair;
    if (usualActions(componentType) === null || places.some((place) => isAt(place, repair))) continue;
    places.push({ componentType, position, assessed: null });
  }
  return places;
}

interface DoneAction {
  readonly action: OptionAction;
  readonly condition: PartCondition | null;
}

/** What the work on one component amounts to: a renewal outweighs everything done beside it. */
function strongestOf(repairs: readonly RepairDone[]): DoneAction | 'conditionUnknown' | null {
  const replaced = repairs.findLast(({ action }) => action === 'replace');
  if (replaced !== undefined) {
    const { condition } = replaced;
    return condition === null ? 'conditionUnknown' : { action: actionOfCondition[condition], condition };
  }
  if (repairs.some(({ action }) => action === 'reBush'))
    return { action: 'reBush', condition: 'repairedOwnPart' };
  return repairs.some(({ action }) => adjusting.has(action)) ? { action: 'adjust', condition: null } : null;
}

/** What was done on the component of an assessment; null where nothing is recorded and nobody chose to leave it. */
export function doneActionAt(job: ReleasedJobHistory, assessed: AssessedRepair): OptionAction | null {
  const { componentType, position } = assessed.question;
  const done = strongestOf(job.repairs.filter((each) => isAt({ componentType, position, assessed }, each)));
  if (done === 'conditionUnknown') return null;
  return (done ?? leftAsItWas(assessed))?.action ?? null;
}

/** Nothing was done on purpose: only where somebody chose that. */
function leftAsItWas(assessed: AssessedRepair | null): DoneAction | null {
  return assessed?.chosen === 'leave' ? { action: 'leave', condition: null } : null;
}

/** How the repair went; a link that nobody has settled yet teaches nothing, nor does a vehicle never seen again. */
export function watchOutcomeOf(
  job: ReleasedJobHistory,
  until: string,
): WatchOutcome | 'comebackNotSettled' | 'notWatched' {
  const counted = job.comebacks.filter(({ attribution }) => !beyondTheRepair.has(attribution ?? ''));
  if (counted.some(({ state }) => state === 'confirmed')) return { kind: 'comeback' };
  if (counted.some(({ state }) => state === 'proposed')) return 'comebackNotSettled';
  const { standing, share } = watchedOf(job, until);
  if (standing === 'elapsed') return { kind: 'held' };
  return share > 0 ? { kind: 'running', shareOfWindow: share } : 'notWatched';
}

/** Earlier repairs of the chain that kept the wear; the chain ends where the part was renewed. */
function earlierComebacks(job: ReleasedJobHistory, byId: ReadonlyMap<string, ReleasedJobHistory>): number {
  const seen = new Set<string>([job.jobId]);
  const open = [...job.comebackOf];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    const earlier = byId.get(id);
    const isRenewed = earlier?.repairs.some(({ action }) => action === 'replace' || action === 'reBush');
    if (seen.has(id) || isRenewed === true) continue;
    seen.add(id);
    open.push(...(earlier?.comebackOf ?? []));
  }
  return seen.size - 1;
}

function contextOf(
  { action, condition }: DoneAction,
  assessed: AssessedRepair | null,
  earlier: number,
): ComebackOutcome['context'] {
  const criterion = assessed?.evidence.functionalCriterion;
  return {
    action,
    condition,
    // Parts arrive unmeasured; what little that says is carried by the level of the action.
    arrivalStep: 0,
    functional:
      criterion === undefined || criterion.kind === 'notDone' || !criterion.isValid ? 'none' : criterion.kind,
    earlierComebacks: assessed?.evidence.earlierComebacks.count ?? earlier,
  };
}

/** Wear as a share of the criterion; only what stays in has a bearing. */
function wearLeftIn(action: OptionAction, assessed: AssessedRepair | null): ComebackOutcome['wear'] {
  if (assessed === null || (action !== 'leave' && action !== 'adjust')) return null;
  const { wearNow } = assessed.evidence;
  if (wearNow.kind !== 'measured') return null;
  const { unwornSize, criterionSize } = assessed.characteristic;
  const whole = criterionSize - unwornSize;
  return {
    share: Math.max(0, (wearNow.value - unwornSize) / whole),
    standardUncertainty: wearNow.standardUncertainty / Math.abs(whole),
  };
}
