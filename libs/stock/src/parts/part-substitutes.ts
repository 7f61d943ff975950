/** What is known of a part's successor and of parts that may be fitted in its stead. */
export interface PartRelations {
  readonly id: string;
  /** the part that took its place; null: none */
  readonly supersededBy: string | null;
  /** fit the same; said of one of them it holds for both */
  readonly interchangesWith: readonly string[];
}

/** Parts that may be fitted instead. */
export interface PartSubstitutes {
  /** the newest number: what is ordered now; the part itself where nothing took its place */
  readonly current: string;
  /** the part, its successors in order */
  readonly chain: readonly string[];
  /** all that fit the same, without the part itself, sorted by id */
  readonly substitutes: readonly string[];
}

/**
 * Which parts may stand in for a part: its successors, what interchanges with it or with them, and so on. A successor fits
 * where its predecessor did; the reverse is not taken for granted. Interchange holds both ways.
 *
 * @param id     of the part
 * @param parts  all relations that are known; unknown ids lead nowhere
 * @returns the newest number and every part that fits, none for an unknown id; a chain that comes back to itself ends
 *   where it would
 * @complexity O(parts + relations)
 * @source common practice, no source
 * @example substitutesOf('a', [{ id: 'a', supersededBy: 'b', interchangesWith: [] }, { id: 'b', supersededBy: null, interchangesWith: [] }]).current // => 'b'
 */
export function substitutesOf(id: string, parts: readonly PartRelations[]): PartSubstitutes {
  const successor = new Map<string, string>();
  const alike = new Map<string, Set<string>>();
  const link = (one: string, other: string): void => {
    alike.set(one, (alike.get(one) ?? new Set()).add(other));
  };
  for (const part of parts) {
    if (part.supersededBy !== null) successor.set(part.id, part.supersededBy);
    for (const other of part.interchangesWith) {
      link(part.id, other);
      link(other, part.id);
    }
  }
  const chain = [id];
  for (let next = successor.get(id); next !== undefined && !chain.includes(next); next = successor.get(next))
    chain.push(next);
  const found = new Set([id]);
  const open = [id];
  for (let part = open.pop(); part !== undefined; part = open.pop()) {
    for (const next of [...(alike.get(part) ?? []), ...[successor.get(part) ?? part]]) {
      if (found.has(next)) continue;
      found.add(next);
      open.push(next);
    }
  }
  found.delete(id);
  return { current: chain.at(-1) ?? id, chain, substitutes: [...found].sort() };
}

/**
 * Whether naming a successor would make a chain that comes back to the part.
 *
 * @param id         of the part
 * @param successor  that is to be named
 * @param parts      relations known so far
 * @returns true where the successor's own chain leads to the part
 * @complexity O(parts)
 * @source none needed
 * @example closesCircle('a', 'a', []) // => true
 */
export function closesCircle(id: string, successor: string, parts: readonly PartRelations[]): boolean {
  return substitutesOf(
    successor,
    parts.filter((part) => part.id !== id),
  ).chain.includes(id);
}
