import type { RouteOptions } from 'fastify';

interface KnownPath {
  readonly url: string;
  readonly matches: RegExp;
  readonly methods: Set<string>;
}

/**
 * Every path with its methods, filled while routes are registered.
 * The router itself tells an unknown method from an unknown path no more than by 404.
 */
export class RouteTable {
  private readonly paths = new Map<string, KnownPath>();

  /** To be called from an `onRoute` hook. Refuses a route that does not say who may call it. */
  add({ method, url, config }: RouteOptions): void {
    if (config?.rules?.access === undefined) {
      throw new Error(
        `${String(method)} ${url} does not say who may call it: give it @Allow(...) or @Public()`,
      );
    }
    const known = this.paths.get(url) ?? { url, matches: patternOf(url), methods: new Set<string>() };
    for (const each of Array.isArray(method) ? method : [method]) known.methods.add(each);
    this.paths.set(url, known);
  }

  /** Methods of a path as it was asked, with OPTIONS; empty for an unknown path. */
  methodsAt(path: string): readonly string[] {
    const methods = new Set<string>();
    for (const { matches, methods: own } of this.paths.values()) {
      if (matches.test(path)) own.forEach((each) => methods.add(each));
    }
    return methods.size === 0 ? [] : [...methods.add('OPTIONS')].sort();
  }
}

function patternOf(url: string): RegExp {
  const parts = url.split(/(:[A-Za-z0-9_]+|\*)/).map((part) => {
    if (part === '*') return '.*';
    return part.startsWith(':') ? '[^/]+' : part.replace(/[.+?^${}()|[\]\\]/g, '\\$&');
  });
  return new RegExp(`^${parts.join('')}$`, 'u');
}
