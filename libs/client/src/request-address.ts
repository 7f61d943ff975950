type Value = string | number | boolean | undefined;

/**
 * The address of a request: base, path with its parameters filled in, query without what is undefined.
 * @throws RangeError where a parameter of the path is missing or empty
 */
export function requestAddress(
  base: string,
  template: string,
  path: Readonly<Record<string, Value>> = {},
  query: Readonly<Record<string, Value>> = {},
): string {
  const filled = template.replace(/\{([^}]+)\}/g, (_, name: string) => {
    const value = path[name];
    if (value === undefined || value === '')
      throw new RangeError(`the parameter ${name} of ${template} is missing`);
    return encodeURIComponent(value);
  });
  const search = Object.entries(query)
    .filter(([, value]) => value !== undefined)
    .map(([name, value]) => `${encodeURIComponent(name)}=${encodeURIComponent(String(value))}`)
    .join('&');
  return `${base.replace(/\/+$/, '')}${filled}${search === '' ? '' : `?${search}`}`;
}
