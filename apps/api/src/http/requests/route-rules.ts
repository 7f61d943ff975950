import { FASTIFY_ROUTE_CONFIG_METADATA } from '@nestjs/platform-fastify/constants.js';
import type { ShopRole } from '@endfloat/workshop';

/** That a route is going (RFC 9745, RFC 8594). */
export interface Retirement {
  /** RFC 3339 instant from which callers should use something else */
  readonly deprecatedAt: string;
  /** RFC 3339 instant from which the route may be gone; not earlier than six months after the other */
  readonly sunsetAt: string;
  /** where callers read what to use instead */
  readonly link: string;
}

/** What the shell checks about a route before its handler runs; written by decorators, read from the route's config. */
export interface RouteRules {
  /** Who may call: everybody, or callers with one of these roles. */
  readonly access: 'public' | readonly ShopRole[];
  /** Media types of the body that are read here; by method unless told. */
  readonly consumes?: readonly string[];
  /** Media types this route can answer with; JSON unless told. */
  readonly produces?: readonly string[];
  /** Most bytes of the body; the general limit unless told. */
  readonly bodyLimit?: number;
  /** The request must say which version it was made from. */
  readonly needsVersion?: boolean;
  /** The request must carry an Idempotency-Key unless its body brings an id. */
  readonly needsIdempotencyKey?: boolean;
  /** Announced to go: from when on it is discouraged, and when it ends. */
  readonly retirement?: Retirement;
  /** Answered even while the process is overloaded or about to end; not limited. */
  readonly isProbe?: boolean;
}

declare module 'fastify' {
  interface FastifyContextConfig {
    rules?: RouteRules;
  }
}

/** Adds rules to those a handler has already; decorators may stand in any order. */
export function addRules(handler: object, rules: Partial<RouteRules>): void {
  const config = (Reflect.getMetadata(FASTIFY_ROUTE_CONFIG_METADATA, handler) ?? {}) as {
    rules?: Partial<RouteRules>;
  };
  Reflect.defineMetadata(
    FASTIFY_ROUTE_CONFIG_METADATA,
    { ...config, rules: { ...config.rules, ...rules } },
    handler,
  );
}

/** The rules of a handler as its decorators wrote them. */
export function rulesOf(handler: object): Partial<RouteRules> {
  const config = Reflect.getMetadata(FASTIFY_ROUTE_CONFIG_METADATA, handler) as
    { rules?: Partial<RouteRules> } | undefined;
  return config?.rules ?? {};
}

/** A method decorator that adds rules. */
export function withRules(rules: Partial<RouteRules>): MethodDecorator {
  return (_target, _key, descriptor) => addRules(descriptor.value as object, rules);
}
