import type { Caller, ShopRole } from '@endfloat/workshop';
import { HttpProblem } from '../problems/http-problem.js';

/** Refuses a caller who holds none of the roles a route lists, or may only read and would write (403). */
export function checkRole(caller: Caller, roles: readonly ShopRole[], method: string): void {
  const mayDoThis = caller.readOnly !== true || method === 'GET' || method === 'HEAD';
  if (mayDoThis && caller.roles.some((role) => roles.includes(role))) return;
  throw new HttpProblem('insufficient-scope', {
    headers: { 'www-authenticate': 'Bearer realm="endfloat", error="insufficient_scope"' },
  });
}
