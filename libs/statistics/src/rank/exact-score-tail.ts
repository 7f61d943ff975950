type Counts = readonly number[];

function times(a: Counts, b: Counts): number[] {
  const product = Array.from({ length: a.length + b.length - 1 }, () => 0);
  a.forEach((p, i) => b.forEach((q, j) => (product[i + j]! += p * q)));
  return product;
}

/** Arrangements of `ones` ones among n places, counted by inversions: the Gaussian binomial coefficient. */
function twoGroups(n: number, ones: number): Counts {
  if (ones === 0 || ones === n) return [1];
  const without = twoGroups(n - 1, ones);
  const withOne = twoGroups(n - 1, ones - 1);
  const counts = Array.from({ length: ones * (n - ones) + 1 }, () => 0);
  without.forEach((count, i) => (counts[i]! += count));
  withOne.forEach((count, i) => (counts[i + n - ones]! += count));
  return counts;
}

/**
 * P(score ≥ s) when all arrangements of the values are equally likely, exactly, with ties on one side.
 * The arrangements of a multiset by inversions are counted by the Gaussian multinomial coefficient (MacMahon 1916); the
 * score is the number of untied pairs minus twice the inversions.
 *
 * @param s  score reached
 * @param observations  number of values, small (counts stay exact up to 18)
 * @param ties  sizes of the groups of equal values, singles left out
 */
export function exactScoreTail(s: number, observations: number, ties: readonly number[]): number {
  const singles = observations - ties.reduce((sum, t) => sum + t, 0);
  const groups = [...ties, ...Array.from({ length: singles }, () => 1)];
  let counts: Counts = [1];
  let placed = 0;
  for (const size of groups) {
    placed += size;
    counts = times(counts, twoGroups(placed, size));
  }
  const untied = counts.length - 1;
  let reached = 0;
  let total = 0;
  counts.forEach((count, inversions) => {
    total += count;
    if (untied - 2 * inversions >= s) reached += count;
  });
  return reached / total;
}
