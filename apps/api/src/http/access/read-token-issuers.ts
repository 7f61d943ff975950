import { shopRoles, type ShopRole } from '@endfloat/workshop';
import { idPattern, tokenAlgorithms, type TokenIssuer } from './token-issuer.js';

type Tell = (place: string, what: string) => void;
type Members = Readonly<Record<string, unknown>>;

const members = ['issuer', 'audience', 'jwksUrl', 'algorithms', 'shop', 'person', 'roles'];

/**
 * Reads the document that says which issuers are believed: `{ "issuers": [ … ] }`.
 *
 * @returns the issuers, or every fault of the document, each with its place
 */
export function readTokenIssuers(text: string): {
  readonly issuers: readonly TokenIssuer[];
  readonly faults: readonly string[];
} {
  const faults: string[] = [];
  const tell: Tell = (place, what) => faults.push(`${place}: ${what}`);
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch {
    return { issuers: [], faults: ['it is no JSON.'] };
  }
  const list = isMembers(document) ? document['issuers'] : undefined;
  if (!Array.isArray(list) || list.length === 0)
    return { issuers: [], faults: ['issuers: give a list of at least one issuer.'] };
  list.forEach((each: unknown, index) => checkIssuer(each, `issuers[${String(index)}]`, tell));
  const names = list.map((each: unknown) => (isMembers(each) ? each['issuer'] : undefined));
  if (faults.length === 0 && new Set(names).size < names.length)
    tell('issuers', 'an issuer may stand there once.');
  return faults.length > 0 ? { issuers: [], faults } : { issuers: list as TokenIssuer[], faults };
}

function checkIssuer(issuer: unknown, place: string, tell: Tell): void {
  if (!isMembers(issuer)) {
    tell(place, `give an object with ${members.join(', ')}.`);
    return;
  }
  for (const name of Object.keys(issuer))
    if (!members.includes(name)) tell(`${place}.${name}`, `no such member. There are ${members.join(', ')}.`);
  for (const name of ['issuer', 'audience'])
    if (!isText(issuer[name])) tell(`${place}.${name}`, 'give the text that tokens carry.');
  if (!isSafeAddress(issuer['jwksUrl']))
    tell(
      `${place}.jwksUrl`,
      'give an https address without a name or password in it (http on loopback only).',
    );
  checkAlgorithms(issuer['algorithms'], `${place}.algorithms`, tell);
  const isId = (value: unknown): boolean => typeof value === 'string' && idPattern.test(value);
  checkMeaning(issuer['shop'], `${place}.shop`, tell, 'the id of a shop', isId);
  checkMeaning(issuer['person'], `${place}.person`, tell, 'the id of a person', isId, true);
  checkMeaning(issuer['roles'], `${place}.roles`, tell, `a list of ${shopRoles.join(', ')}`, areRoles);
}

function checkAlgorithms(value: unknown, place: string, tell: Tell): void {
  const allowed: readonly unknown[] = tokenAlgorithms;
  if (!Array.isArray(value) || value.length === 0 || !value.every((each) => allowed.includes(each)))
    tell(place, `give one or more of ${tokenAlgorithms.join(', ')}.`);
}

function checkMeaning(
  meaning: unknown,
  place: string,
  tell: Tell,
  wanted: string,
  isWanted: (value: unknown) => boolean,
  mayLackValues = false,
): void {
  if (!isMembers(meaning)) {
    tell(place, 'give the claim and what its values mean.');
    return;
  }
  if (!isText(meaning['claim'])) tell(`${place}.claim`, 'give the name of the claim.');
  const { values } = meaning;
  if (values === undefined && mayLackValues) return;
  if (!isMembers(values) || Object.keys(values).length === 0) {
    tell(`${place}.values`, `give for each value of the claim ${wanted}.`);
    return;
  }
  for (const [value, means] of Object.entries(values))
    if (!isWanted(means)) tell(`${place}.values.${value}`, `give ${wanted}.`);
}

function areRoles(value: unknown): boolean {
  return (
    Array.isArray(value) && value.length > 0 && value.every((role) => shopRoles.includes(role as ShopRole))
  );
}

function isSafeAddress(value: unknown): boolean {
  if (typeof value !== 'string' || !URL.canParse(value)) return false;
  const { protocol, hostname, username, password } = new URL(value);
  if (username !== '' || password !== '') return false;
  return (
    protocol === 'https:' || (protocol === 'http:' && ['127.0.0.1', '[::1]', 'localhost'].includes(hostname))
  );
}

const isText = (value: unknown): value is string => typeof value === 'string' && value !== '';

function isMembers(value: unknown): value is Members {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
