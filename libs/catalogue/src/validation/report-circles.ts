import type { Check } from '../check-sheets/check-sheet.js';
import type { Report } from './data-issue.js';

/** Reports each check that is, through its prerequisites, a prerequisite of itself. */
export function reportCircles(checks: readonly Pick<Check, 'id' | 'prerequisites'>[], report: Report): void {
  const needs = new Map(checks.map(({ id, prerequisites }) => [id, prerequisites]));
  checks.forEach(({ id }, index) => {
    const reached = new Set<string>();
    const waiting = [...(needs.get(id) ?? [])];
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      if (reached.has(next)) continue;
      reached.add(next);
      waiting.push(...(needs.get(next) ?? []));
    }
    if (reached.has(id)) report(`/checks/${index}/prerequisites`, 'prerequisiteCircular', id);
  });
}
