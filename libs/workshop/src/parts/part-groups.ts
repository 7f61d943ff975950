import type { PartRecord } from './parts.use-case.js';
import type { VanNeeds } from './gather-needs.js';

/** Parts of one kind that stand in for each other, and the vans they fit. */
export interface PartGroup {
  readonly parts: readonly PartRecord[];
  /** the number that is ordered now: not superseded, the lowest one where several are */
  readonly current: PartRecord;
  readonly vans: readonly VanNeeds[];
}

/** Parts of a kind by variant, with the vans each fits; vans that none fits are told apart. */
export function partGroups(
  parts: readonly PartRecord[],
  vans: readonly VanNeeds[],
): { readonly groups: readonly PartGroup[]; readonly unfitted: readonly VanNeeds[] } {
  const components = connected(parts);
  const groupOf = (van: VanNeeds): number => {
    const named = components.findIndex((group) =>
      group.some(({ content }) => van.application !== null && content.applications.includes(van.application)),
    );
    return named >= 0
      ? named
      : components.findIndex((group) => group.some(({ content }) => content.applications.length === 0));
  };
  const places = vans.map(groupOf);
  return {
    groups: components.map((group, index) => ({
      parts: group,
      current: group.find(({ content }) => content.supersededById === null) ?? group[0]!,
      vans: vans.filter((_, at) => places[at] === index),
    })),
    unfitted: vans.filter((_, at) => places[at] === -1),
  };
}

/** Parts joined by succession or interchange, whichever way it was said; sorted by number. */
function connected(parts: readonly PartRecord[]): PartRecord[][] {
  const root = new Map(parts.map(({ id }) => [id, id]));
  const rootOf = (id: string): string => {
    let at = id;
    while (root.get(at) !== at) at = root.get(at) ?? at;
    return at;
  };
  for (const { id, content } of parts) {
    for (const other of [content.supersededById, ...content.interchangesWith]) {
      if (other !== null && root.has(other)) root.set(rootOf(id), rootOf(other));
    }
  }
  const groups = new Map<string, PartRecord[]>();
  for (const part of [...parts].sort((a, b) => (a.content.partNumber < b.content.partNumber ? -1 : 1)))
    groups.set(rootOf(part.id), [...(groups.get(rootOf(part.id)) ?? []), part]);
  return [...groups.values()];
}
