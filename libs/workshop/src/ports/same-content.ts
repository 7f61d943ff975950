/** Equal as data: member order is no difference, an absent member and null are none either. */
export function sameContent(left: unknown, right: unknown): boolean {
  if (left === right) return true;
  if (left === null || left === undefined || right === null || right === undefined)
    return (left ?? null) === (right ?? null);
  if (typeof left !== 'object' || typeof right !== 'object') return false;
  if (Array.isArray(left) !== Array.isArray(right)) return false;
  const names = new Set([...Object.keys(left), ...Object.keys(right)]);
  return [...names].every((name) =>
    sameContent((left as Record<string, unknown>)[name], (right as Record<string, unknown>)[name]),
  );
}
