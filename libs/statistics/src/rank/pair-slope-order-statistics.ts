import { eachSlopeRow, highWord, type SlopeRow } from './pair-slope-rows.js';

/** Up to this many slopes are kept in memory and sorted (16 MB). */
const KEPT = 2 ** 21;

/** Slopes whose leading bits are settled alike, and the ranks sought among them (1 = smallest of the group). */
interface Group {
  readonly prefix: number;
  readonly size: number;
  readonly targets: readonly { readonly slot: number; readonly rank: number }[];
}

type Answers = readonly { readonly slot: number; readonly slope: number }[];

/**
 * Calls back with the places of a row whose slopes belong to a group: the first `digits` groups of 16 bits of the
 * double, turned so that they sort as the number does, equal the prefix. `bits` are the next 16.
 */
function matchRow(
  { words, length }: SlopeRow,
  { prefix }: Group,
  digits: number,
  visit: (place: number, bits: number) => void,
): void {
  for (let place = 0; place < length; place += 1) {
    const high = words[2 * place + highWord]!;
    const flip = high >>> 31 === 1 ? -1 : 0;
    const upper = (high ^ (flip | 0x80000000)) >>> 0;
    if (digits === 0) visit(place, upper >>> 16);
    else if (digits === 1) {
      if (upper >>> 16 === prefix) visit(place, upper & 0xffff);
    } else {
      const lower = (words[2 * place + 1 - highWord]! ^ flip) >>> 0;
      if (digits === 2) {
        if (upper === prefix) visit(place, lower >>> 16);
      } else if (upper * 65536 + (lower >>> 16) === prefix) visit(place, lower & 0xffff);
    }
  }
}

/** One pass over all pairs: splits every group by its next 16 bits and keeps the parts that hold a sought rank. */
function split(x: Float64Array, y: Float64Array, groups: readonly Group[], digits: number): Group[] {
  const tallies = groups.map((group) => ({ group, counts: new Uint32Array(65536) }));
  eachSlopeRow(x, y, (row) => {
    for (const { group, counts } of tallies) {
      matchRow(row, group, digits, (_, bits) => {
        counts[bits]! += 1;
      });
    }
  });
  return tallies.flatMap(({ group, counts }) => {
    const narrowed = new Map<number, Group>();
    for (const { slot, rank } of group.targets) {
      let bucket = 0;
      let remaining = rank;
      while (remaining > counts[bucket]!) {
        remaining -= counts[bucket]!;
        bucket += 1;
      }
      narrowed.set(bucket, {
        prefix: group.prefix * 65536 + bucket,
        size: counts[bucket]!,
        targets: [...(narrowed.get(bucket)?.targets ?? []), { slot, rank: remaining }],
      });
    }
    return [...narrowed.values()];
  });
}

/** Last pass when the groups fit in memory: sorts their slopes and reads the ranks off. */
function readOff(x: Float64Array, y: Float64Array, groups: readonly Group[], digits: number): Answers {
  const lists = groups.map((group) => ({ group, slopes: new Float64Array(group.size), filled: 0 }));
  eachSlopeRow(x, y, (row) => {
    for (const list of lists) {
      matchRow(row, list.group, digits, (place) => {
        list.slopes[list.filled] = row.slopes[place]!;
        list.filled += 1;
      });
    }
  });
  return lists.flatMap(({ group, slopes }) => {
    slopes.sort();
    return group.targets.map(({ slot, rank }) => ({ slot, slope: slopes[rank - 1]! }));
  });
}

/** Last pass when ties are many: 48 bits are settled, so a group has at most 65,536 different slopes to count. */
function readOffTied(x: Float64Array, y: Float64Array, groups: readonly Group[]): Answers {
  const tallies = groups.map((group) => ({
    group,
    counts: new Uint32Array(65536),
    slopes: new Float64Array(65536),
  }));
  eachSlopeRow(x, y, (row) => {
    for (const { group, counts, slopes } of tallies) {
      matchRow(row, group, 3, (place, bits) => {
        counts[bits]! += 1;
        slopes[bits] = row.slopes[place]!;
      });
    }
  });
  return tallies.flatMap(({ group, counts, slopes }) =>
    group.targets.map(({ slot, rank }) => {
      let passed = 0;
      const bits = counts.findIndex((count) => (passed += count) >= rank);
      return { slot, slope: slopes[bits]! };
    }),
  );
}

/**
 * Order statistics of the slopes of all pairs of points with different x.
 *
 * While all slopes fit in memory they are sorted. Beyond that they are never kept: their bits are settled 16 at a time
 * by counting, all ranks in the same passes, until the few slopes that are left fit. O(n²) time in three or four passes
 * and bounded memory, whatever the ties.
 *
 * @param x  ascending
 * @param y  of the same length
 * @param count  number of pairs with different x
 * @param ranks  whole numbers from 1 to `count`
 * @param kept  how many slopes may be kept in memory
 * @returns for each rank the slope of that rank, exactly as its pair gives it
 */
export function pairSlopeOrderStatistics(
  x: Float64Array,
  y: Float64Array,
  count: number,
  ranks: readonly number[],
  kept: number = KEPT,
): readonly number[] {
  let groups: Group[] = [{ prefix: 0, size: count, targets: ranks.map((rank, slot) => ({ slot, rank })) }];
  const held = (): number => groups.reduce((sum, group) => sum + group.size, 0);
  let digits = 0;
  while (held() > kept && digits < 3) {
    groups = split(x, y, groups, digits);
    digits += 1;
  }
  const answers = held() <= kept ? readOff(x, y, groups, digits) : readOffTied(x, y, groups);
  const bySlot = new Map(answers.map(({ slot, slope }) => [slot, slope]));
  return ranks.map((_, slot) => bySlot.get(slot)!);
}
