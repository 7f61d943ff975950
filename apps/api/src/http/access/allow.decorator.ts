import type { ShopRole } from '@endfloat/workshop';
import { withRules } from '../requests/route-rules.js';

/** Who may call a route: callers with at least one of these roles. A route with neither this nor `@Public` does not start. */
export const Allow = (...roles: readonly [ShopRole, ...ShopRole[]]): MethodDecorator =>
  withRules({ access: roles });

/** A route for everybody, without a credential. */
export const Public = (): MethodDecorator => withRules({ access: 'public' });
