/** Ranges of IPv4 that are not the public internet, as first number and length of the prefix (IANA registry, RFC 6890). */
const closedIpv4: readonly (readonly [string, number])[] = [
  ['0.0.0.0', 8],
  ['10.0.0.0', 8],
  ['100.64.0.0', 10],
  ['127.0.0.0', 8],
  ['169.254.0.0', 16],
  ['172.16.0.0', 12],
  ['192.0.0.0', 24],
  ['192.0.2.0', 24],
  ['192.31.196.0', 24],
  ['192.52.193.0', 24],
  ['192.88.99.0', 24],
  ['192.168.0.0', 16],
  ['192.175.48.0', 24],
  ['198.18.0.0', 15],
  ['198.51.100.0', 24],
  ['203.0.113.0', 24],
  ['224.0.0.0', 4],
  ['240.0.0.0', 4],
];

/** Within 2000::/3, which alone is given out: protocol assignments, documentation, 6to4 and others that lead elsewhere. */
const closedIpv6: readonly (readonly [string, number])[] = [
  ['2001::', 23],
  ['2001:db8::', 32],
  ['2002::', 16],
  ['2620:4f:8000::', 48],
  ['3fff::', 20],
];

/** Bytes of an IPv4 address in its one usual form; undefined for everything else, octal and short forms too. */
export function ipv4Bytes(text: string): readonly number[] | undefined {
  const parts = /^(\d{1,3})\.(\d{1,3})\.(\d{1,3})\.(\d{1,3})$/.exec(text)?.slice(1);
  if (parts === undefined || parts.some((part) => part.length > 1 && part.startsWith('0'))) return undefined;
  const bytes = parts.map(Number);
  return bytes.every((byte) => byte <= 255) ? bytes : undefined;
}

/** An IPv4 address as the last two groups of one of IPv6. */
function groupsOf([a = 0, b = 0, c = 0, d = 0]: readonly number[]): string {
  return `${(a * 256 + b).toString(16)}:${(c * 256 + d).toString(16)}`;
}

/** Bytes of an IPv6 address (RFC 4291 section 2.2), without brackets or zone; undefined for everything else. */
export function ipv6Bytes(text: string): readonly number[] | undefined {
  const [, head = '', tail] = /^(.*:)(\d+\.\d+\.\d+\.\d+)$/.exec(text) ?? [];
  if (tail !== undefined) {
    const ipv4 = ipv4Bytes(tail);
    return ipv4 === undefined ? undefined : ipv6Bytes(head + groupsOf(ipv4));
  }
  const halves = text.split('::');
  if (halves.length > 2) return undefined;
  const [before = [], after = []] = halves.map((half) => (half === '' ? [] : half.split(':')));
  const groups = [...before, ...after];
  if (!groups.every((group) => /^[0-9a-f]{1,4}$/i.test(group))) return undefined;
  const missing = 8 - groups.length;
  if (halves.length === 1 ? missing !== 0 : missing < 1) return undefined;
  const all = [...before, ...Array<string>(halves.length === 1 ? 0 : missing).fill('0'), ...after];
  return all.flatMap((group) => {
    const value = Number.parseInt(group, 16);
    return [value >> 8, value & 255];
  });
}

function isWithin(bytes: readonly number[], range: readonly number[], prefix: number): boolean {
  for (let bit = 0; bit < prefix; bit += 8) {
    const at = bit / 8;
    const mask = 256 - 2 ** (8 - Math.min(8, prefix - bit));
    if (((bytes[at] ?? 0) & mask) !== ((range[at] ?? 0) & mask)) return false;
  }
  return true;
}

/**
 * Whether an address lies in the public internet, so that a message may be sent to it. Addresses that wrap another one
 * (mapped, translated, tunnelled) are refused as a whole.
 *
 * @param text an IPv4 or IPv6 address as a resolver gives it
 * @returns false also for what is no address
 * @source IANA IPv4 and IPv6 Special-Purpose Address Registries (RFC 6890), IPv6 global unicast 2000::/3; from memory
 * @example isPublicAddress('169.254.169.254') // => false
 */
export function isPublicAddress(text: string): boolean {
  const ipv4 = ipv4Bytes(text);
  if (ipv4 !== undefined)
    return !closedIpv4.some(([from, prefix]) => isWithin(ipv4, ipv4Bytes(from) ?? [], prefix));
  const ipv6 = ipv6Bytes(text);
  if (ipv6 === undefined || !isWithin(ipv6, [0x20], 3)) return false;
  return !closedIpv6.some(([from, prefix]) => isWithin(ipv6, ipv6Bytes(from) ?? [], prefix));
}

/** Whether an address is this machine itself: 127.0.0.0/8 or ::1. */
export function isLoopbackAddress(text: string): boolean {
  const ipv4 = ipv4Bytes(text);
  if (ipv4 !== undefined) return ipv4[0] === 127;
  const ipv6 = ipv6Bytes(text);
  return ipv6 !== undefined && ipv6.every((byte, at) => byte === (at === 15 ? 1 : 0));
}
