/**
 * A value as canonical JSON (RFC 8785): members in the order of their UTF-16 code units, no space, numbers as
 * ECMAScript writes them. Two bodies that say the same have the same text, however they were written.
 *
 * @param value what `JSON.parse` gives; undefined, which stands for no body, is the empty text
 * @returns the text
 * @source RFC 8785, sections 3.2.2 and 3.2.3
 * @example canonicalJson({ b: 1, a: [true, null] }) // => '{"a":[true,null],"b":1}'
 */
export function canonicalJson(value: unknown): string {
  if (value === undefined) return '';
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const members = Object.entries(value)
    .filter(([, member]) => member !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, member]) => `${JSON.stringify(name)}:${canonicalJson(member)}`);
  return `{${members.join(',')}}`;
}
