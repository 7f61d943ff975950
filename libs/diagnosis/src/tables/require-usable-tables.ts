import type { DiagnosisTables } from './diagnosis-tables.js';

const PRIOR_SUM_TOLERANCE = 1e-6;

function requireUnique(what: string, ids: readonly string[]): void {
  if (new Set(ids).size !== ids.length) throw new RangeError(`${what} ids repeat`);
}

function requireProbabilities(
  row: string,
  given: Readonly<Record<string, number>>,
  causeIds: readonly string[],
): void {
  for (const cause of causeIds) {
    const p = given[cause];
    if (p === undefined || !(p >= 0 && p <= 1)) {
      throw new RangeError(`${row}: the probability under ${cause} must lie between 0 and 1`);
    }
  }
}

function requireNoCircle(tables: DiagnosisTables): void {
  const done = new Set<string>();
  const open = new Set<string>();
  const visit = (id: string): void => {
    if (done.has(id)) return;
    if (open.has(id)) throw new RangeError(`prerequisites of ${id} run in a circle`);
    open.add(id);
    const row = tables.checks.find((check) => check.id === id);
    if (row === undefined) throw new RangeError(`prerequisite ${id} is not among the checks`);
    row.prerequisites.forEach(visit);
    open.delete(id);
    done.add(id);
  };
  tables.checks.forEach((check) => visit(check.id));
}

/**
 * Refuses tables that cannot be computed with.
 *
 * @param tables  weights of causes, symptoms and checks
 * @throws RangeError when causes are missing or repeat, priors are negative or do not add up to one (within 1e-6), a probability
 *   lies outside 0 to 1, minutes are not above zero, or a prerequisite is unknown or circular
 */
export function requireUsableTables(tables: DiagnosisTables): void {
  const causeIds = tables.causes.map((cause) => cause.id);
  if (causeIds.length === 0) throw new RangeError('the tables name no cause');
  requireUnique('cause', causeIds);
  requireUnique(
    'symptom',
    tables.symptoms.map((row) => row.id),
  );
  requireUnique(
    'check',
    tables.checks.map((row) => row.id),
  );
  let sum = 0;
  for (const { id, prior } of tables.causes) {
    if (!(prior >= 0 && prior <= 1)) throw new RangeError(`the prior of ${id} must lie between 0 and 1`);
    sum += prior;
  }
  if (Math.abs(sum - 1) > PRIOR_SUM_TOLERANCE) throw new RangeError(`the priors add up to ${sum}, not to 1`);
  tables.symptoms.forEach((row) => requireProbabilities(row.id, row.presentGivenCause, causeIds));
  for (const row of tables.checks) {
    requireProbabilities(row.id, row.positiveGivenCause, causeIds);
    if (!(row.minutes > 0 && Number.isFinite(row.minutes)))
      throw new RangeError(`${row.id}: minutes must be above zero`);
  }
  requireNoCircle(tables);
}
