import type {
  LearnedDecisionResponse,
  LearnedDiagnosisResponse,
  LearnedNumberDto,
  LearnedRowDto,
  LeftOutOfLearningDto,
} from '@endfloat/contracts';
import type { DecisionTablesView, DiagnosisTablesView, LearnedCell, LearnedRow } from '@endfloat/workshop';

/** Why a job or a repair teaches nothing, in words. */
const leftOutTexts: Readonly<Record<string, string>> = {
  causeNotEstablished: 'No cause was established: that never teaches.',
  windowRunning: 'The watch window is still running: pending, not a success.',
  notSeenSince: 'The van was not seen after the window closed: not a success.',
  comebackNotDecided: 'A later complaint may be its comeback, and nobody has confirmed or refused it yet.',
  comebackWithoutAnotherCause: 'It came back and no other cause was established.',
  countedWithOriginal: 'It is a comeback itself and counted with the job it came back from.',
  unknownCause: 'Its cause is not one of the tables.',
  repeatedCase: 'It was counted already.',
  comebackNotSettled: 'A later complaint may be its comeback, and nobody has confirmed or refused it yet.',
  conditionUnknown: 'A part was fitted and its condition is not recorded.',
  notWatched: 'The van has not been seen since its release.',
};

const presentLeftOut = (counts: Readonly<Record<string, number | undefined>>): LeftOutOfLearningDto[] =>
  Object.entries(counts)
    .map(([reason, count]) => ({ reason, count: count ?? 0, detail: leftOutTexts[reason] ?? reason }))
    .sort((a, b) => (a.reason < b.reason ? -1 : 1));

function presentCell(cell: LearnedCell): LearnedNumberDto {
  const { causeId, startingValue, startingWorthJobs, yes, no, current, interval } = cell;
  const { fromSelectedChecks, fedOnlyBySelectedChecks } = cell;
  const known = interval.kind === 'estimated' ? interval : null;
  return {
    causeId,
    startingValue,
    startingWorthJobs,
    yes,
    no,
    current,
    lower: known?.lower ?? null,
    upper: known?.upper ?? null,
    fromSelectedChecks,
    fedOnlyBySelectedChecks,
  };
}

const presentRow = ({ id, cells }: LearnedRow): LearnedRowDto => ({ id, cells: cells.map(presentCell) });

export function presentDiagnosisTables(view: DiagnosisTablesView): LearnedDiagnosisResponse {
  const { version, hash, learnedAt, document, causes, symptoms, checks } = view;
  const { released, taught, taughtByComeback, notTaught } = document.jobs;
  return {
    version,
    hash,
    learnedAt,
    method: document.tables.method,
    jobs: { released, taught, taughtByComeback, notTaught: presentLeftOut(notTaught) },
    causes: causes.map(presentCell),
    symptoms: symptoms.map(presentRow),
    checks: checks.map(presentRow),
  };
}

export function presentDecisionTables(view: DecisionTablesView): LearnedDecisionResponse {
  const { version, hash, learnedAt, document, coefficients } = view;
  return {
    version,
    hash,
    learnedAt,
    method:
      'comebacks: penalised logistic regression, normal belief at its mode; wear, complaint rates and lead times: penalised likelihood',
    fit: document.fit.kind,
    byAction: Object.entries(document.byAction).map(([action, counts]) => ({
      action: action as keyof typeof document.byAction,
      comebacks: counts.comebacks,
      held: counts.held,
      running: counts.running,
    })),
    leftOut: presentLeftOut(document.leftOut),
    counts: {
      parts: document.counts.parts,
      inspections: document.counts.inspections,
      complaints: document.counts.complaints,
      repairs: document.counts.repairs,
      deliveries: document.counts.deliveries,
      watchedKm: document.counts.watchedKm,
    },
    coefficients: coefficients.map(({ name, startingMean, startingDeviation, mean, deviation }) => ({
      name,
      startingMean,
      startingDeviation,
      mean,
      deviation,
    })),
    tables: { ...document.tables },
  };
}
