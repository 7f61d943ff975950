import { HttpProblem } from '../problems/http-problem.js';
import { forbiddenNames } from './strict-json.js';

/**
 * Refuses a query that the framework's parser would silently change: a name twice, a name that reaches a prototype,
 * an escape that is no UTF-8.
 */
export function checkQueryNames(url: string): void {
  const from = url.indexOf('?');
  if (from < 0) return;
  const seen = new Set<string>();
  for (const pair of url.slice(from + 1).split('&')) {
    if (pair === '') continue;
    const name = decoded(pair.split('=', 1)[0] ?? '');
    decoded(pair);
    if (forbiddenNames.has(name)) throw refusal(name, 'forbiddenName', 'is not a name for a parameter');
    if (seen.has(name)) throw refusal(name, 'once', 'may be given once');
    seen.add(name);
  }
}

/** Refuses every parameter of a route that takes none; where a route takes some, their class refuses the others. */
export function refuseQuery(url: string): void {
  const names = [...new URLSearchParams(url.split('?', 2)[1] ?? '').keys()];
  if (names.length === 0) return;
  const detail = 'is no parameter of this request';
  const faults = names
    .slice(0, 100)
    .map((name) => ({ pointer: pointerTo(name), rule: 'unknownMember', detail }));
  throw new HttpProblem('invalid-parameter', { faults });
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text.replaceAll('+', ' '));
  } catch {
    throw new HttpProblem('invalid-parameter', { detail: 'The query is not UTF-8.' });
  }
}

function refusal(name: string, rule: string, detail: string): HttpProblem {
  return new HttpProblem('invalid-parameter', {
    faults: [{ pointer: pointerTo(name), rule, detail }],
  });
}

function pointerTo(name: string): string {
  return `/${name.slice(0, 64)}`;
}
