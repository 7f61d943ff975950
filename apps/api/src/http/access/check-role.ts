import type { Caller, ShopRole } from '@endfloat/workshop';
import { HttpProblem } from '../problems/http-problem.js';

/** Refuses a caller who holds none of the roles a route lists (403). */
export function checkRole(caller: Caller, roles: readonly ShopRole[]): void {
  if (caller.roles.some((role) => roles.includes(role))) return;
  throw new HttpProblem('insufficient-scope', {
    headers: { 'www-authenticate': 'Bearer realm="endfloat", error="insufficient_scope"' },
  });
}
