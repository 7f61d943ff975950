/** One text for equal data: members sorted by name, numbers by the shortest text that reads back to the same value. */
export function canonicalText(value: unknown): string {
  return JSON.stringify(value, (_name, each: unknown) => {
    if (typeof each !== 'object' || each === null || Array.isArray(each)) return each;
    return Object.fromEntries(Object.entries(each).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));
  });
}
