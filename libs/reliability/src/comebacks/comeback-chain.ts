/** A confirmed comeback: the repeat job, and the earlier job whose complaint came back. */
export interface ConfirmedComeback {
  readonly repeatJobId: string;
  readonly jobId: string;
}

/**
 * Jobs a repeat belongs to in the end: a comeback of a comeback belongs to the first job of the chain, not to the one that
 * took the repeat in. A repeat of two jobs at once belongs to both.
 *
 * @param jobId       any job
 * @param comebacks   confirmed comebacks of the shop, any order
 * @returns ids of the first jobs, sorted; the job itself where it is no repeat
 * @throws RangeError where the comebacks lead in a circle
 * @source judgement: count by the complaint as the customer sees it
 * @example originalJobsOf('c', [{ repeatJobId: 'c', jobId: 'b' }, { repeatJobId: 'b', jobId: 'a' }]) // => ['a']
 */
export function originalJobsOf(jobId: string, comebacks: readonly ConfirmedComeback[]): string[] {
  const originals = new Set<string>();
  const follow = (id: string, path: readonly string[]): void => {
    if (path.includes(id)) throw new RangeError(`comebacks lead in a circle through ${id}`);
    const before = comebacks.filter(({ repeatJobId }) => repeatJobId === id);
    if (before.length === 0) originals.add(id);
    for (const { jobId: earlier } of before) follow(earlier, [...path, id]);
  };
  follow(jobId, []);
  return [...originals].sort();
}

/**
 * Every repeat of a job, and the repeats of those.
 *
 * @param jobId       the first job
 * @param comebacks   confirmed comebacks of the shop, any order
 * @returns ids in the order found, without the job itself, each once even where comebacks lead in a circle
 * @source judgement, as `originalJobsOf`
 * @example repeatsOf('a', [{ repeatJobId: 'c', jobId: 'b' }, { repeatJobId: 'b', jobId: 'a' }]) // => ['b', 'c']
 */
export function repeatsOf(jobId: string, comebacks: readonly ConfirmedComeback[]): string[] {
  const found = [jobId];
  for (const id of found) {
    const next = comebacks.filter(
      (comeback) => comeback.jobId === id && !found.includes(comeback.repeatJobId),
    );
    found.push(...new Set(next.map(({ repeatJobId }) => repeatJobId)));
  }
  return found.slice(1);
}
