import { hasFields } from '@endfloat/contracts';
import type { WalkedRoute } from './route-walk.js';

/**
 * What is wrong with how routes are declared. Such a route would let input through unread, so the process refuses to
 * start: a type-only import leaves `Object` or `Function` as the type of a body, and a bare list or a single member of a
 * body is never validated.
 */
export function faultyRoutes(routes: readonly WalkedRoute[]): readonly string[] {
  return [...routes.flatMap(faultsOf), ...doubleOperations(routes)];
}

function faultsOf({ name, path, rules, answer, arguments: filled }: WalkedRoute): string[] {
  const faults: string[] = [];
  if (rules.access === undefined) faults.push('does not say who may call it: @Allow(...) or @Public()');
  if (answer === undefined)
    faults.push('does not say what it answers: @Answer, @AnswerNothing or @AnswerStream');
  for (const { source, member, type } of filled) {
    if (source === 'other') continue;
    if (member !== undefined)
      faults.push(`takes the single member ${member} of its ${source}: take a class with fields`);
    else if (type === undefined || !hasFields(type))
      faults.push(
        `takes a ${source} of type ${type?.name ?? 'unknown'}, which declares no fields: import the class as a value`,
      );
  }
  const named = [...path.matchAll(/:([A-Za-z0-9_]+)/g)].map(([, parameter]) => parameter);
  if (named.length > 0 && !filled.some(({ source }) => source === 'path'))
    faults.push(`does not read ${named.join(', ')} from its path`);
  return faults.map((fault) => `${name} ${fault}`);
}

function doubleOperations(routes: readonly WalkedRoute[]): string[] {
  const seen = new Set<string>();
  return routes.flatMap(({ operationId, name }) => {
    if (!seen.has(operationId)) {
      seen.add(operationId);
      return [];
    }
    return [`${name} has the name of another operation: handler names are the operationIds of the document`];
  });
}
