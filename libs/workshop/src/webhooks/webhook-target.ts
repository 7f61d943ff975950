import { ipv4Bytes, ipv6Bytes, isLoopbackAddress, isPublicAddress } from './public-address.js';

/** Ports that messages are sent to. */
export const webhookPorts = [443, 8443] as const;

/** Where messages go, taken apart. */
export interface WebhookTarget {
  readonly scheme: 'https' | 'http';
  /** name, or address without brackets */
  readonly host: string;
  readonly isAddress: boolean;
  readonly port: number;
  /** with the query */
  readonly path: string;
}

export type TargetReading =
  | { readonly kind: 'allowed'; readonly target: WebhookTarget }
  | { readonly kind: 'refused'; readonly rule: string; readonly detail: string };

/** What is not printed ASCII, and characters that readers of addresses take differently, are refused, not mended. */
const parts =
  /^(https?):\/\/(\[[0-9A-Fa-f:.]+\]|[A-Za-z0-9.-]+)(?::([1-9][0-9]{0,4}))?(\/[!$-;=?-Z_a-z~%]*)?$/;
const label = /^(?!-)[a-z0-9-]{1,63}(?<!-)$/;
/** Names that never lead to the public internet. */
const insideNames = [
  'localhost',
  'local',
  'internal',
  'intranet',
  'lan',
  'home',
  'corp',
  'arpa',
  'test',
  'invalid',
  'onion',
];

const refused = (rule: string, detail: string): TargetReading => ({ kind: 'refused', rule, detail });

/**
 * Reads the address of a receiver, strictly: https, a name of the public internet or a public address, a usual port,
 * nobody's user name. What it lets through is checked again when a message is sent, once the name has an address.
 *
 * @param allowsLoopback for trials on one machine: http and any port on a loopback address or localhost
 */
export function readWebhookTarget(url: string, allowsLoopback: boolean): TargetReading {
  const [, scheme = '', bracketed = '', portText, path = '/'] = parts.exec(url) ?? [];
  if (bracketed === '')
    return refused(
      'address',
      'must be an address such as https://hooks.example.com/van, without user name or fragment',
    );
  const host = bracketed
    .replace(/^\[|\]$/g, '')
    .toLowerCase()
    .replace(/\.$/, '');
  const isAddress = ipv4Bytes(host) !== undefined || ipv6Bytes(host) !== undefined;
  const port = portText === undefined ? (scheme === 'https' ? 443 : 80) : Number(portText);
  if (port > 65535) return refused('port', 'must have a port of at most 65535');
  const target = { scheme: scheme as WebhookTarget['scheme'], host, isAddress, port, path };
  return allowsLoopback && isThisMachine(target) ? { kind: 'allowed', target } : inPublic(target);
}

function isThisMachine({ host, isAddress }: WebhookTarget): boolean {
  return host === 'localhost' || (isAddress && isLoopbackAddress(host));
}

function inPublic(target: WebhookTarget): TargetReading {
  const { scheme, host, isAddress, port } = target;
  if (scheme !== 'https') return refused('https', 'must begin with https://');
  if (!webhookPorts.some((each) => each === port))
    return refused('port', `must have one of the ports ${webhookPorts.join(', ')}`);
  if (isAddress ? !isPublicAddress(host) : !isPublicName(host))
    return refused('publicAddress', 'must lie in the public internet');
  return { kind: 'allowed', target };
}

/** At least two labels, the last one no number, and no name of a net of one's own. */
function isPublicName(host: string): boolean {
  const labels = host.split('.');
  const last = labels.at(-1) ?? '';
  return (
    host.length <= 253 &&
    labels.length >= 2 &&
    labels.every((each) => label.test(each)) &&
    !/^(?:\d+|0x[0-9a-f]*)$/.test(last) &&
    !insideNames.includes(last)
  );
}
