/** Why a body cannot be read as JSON. */
export type JsonFaultCode =
  'utf8' | 'bom' | 'syntax' | 'depth' | 'duplicate-name' | 'forbidden-name' | 'not-object';

export class JsonFault extends Error {
  readonly statusCode = 400;

  constructor(readonly code: JsonFaultCode) {
    super(code);
  }
}

/** Names that reach the prototype of an object. */
export const forbiddenNames: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

const utf8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
const mostDepth = 16;

/**
 * Reads a JSON object (RFC 8259 within RFC 7493): UTF-8 without byte order mark, no name twice in one object however
 * it is escaped, no name that reaches a prototype, at most 16 levels. It scans before it parses and does not recurse.
 *
 * @throws JsonFault with the reason
 */
export function strictJson(body: Uint8Array): object {
  const text = decoded(body);
  scan(text);
  const value = parsed(text);
  if (value === null || typeof value !== 'object' || Array.isArray(value)) throw new JsonFault('not-object');
  return value;
}

function decoded(body: Uint8Array): string {
  let text: string;
  try {
    text = utf8.decode(body);
  } catch {
    throw new JsonFault('utf8');
  }
  if (text.charCodeAt(0) === 0xfeff) throw new JsonFault('bom');
  return text;
}

/** Names seen in each open object, `null` for an open array. */
type Open = (Set<string> | null)[];

function scan(text: string): void {
  const open: Open = [];
  let nameIsNext = false;
  for (let at = 0; at < text.length; at++) {
    const char = text[at];
    if (char === '{' || char === '[') {
      if (open.length >= mostDepth) throw new JsonFault('depth');
      open.push(char === '{' ? new Set() : null);
      nameIsNext = char === '{';
    } else if (char === '}' || char === ']') {
      open.pop();
      nameIsNext = false;
    } else if (char === ',') {
      nameIsNext = open.at(-1) instanceof Set;
    } else if (char === '"') {
      const from = at;
      at = endOfString(text, from);
      if (nameIsNext) note(open, text.slice(from, at + 1));
      nameIsNext = false;
    }
  }
}

function endOfString(text: string, from: number): number {
  let at = from + 1;
  for (; at < text.length && text[at] !== '"'; at++) {
    if (text[at] === '\\') at++;
  }
  return at;
}

function note(open: Open, quoted: string): void {
  const name = String(parsed(quoted));
  const seen = open.at(-1);
  if (seen?.has(name) === true) throw new JsonFault('duplicate-name');
  if (forbiddenNames.has(name)) throw new JsonFault('forbidden-name');
  seen?.add(name);
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new JsonFault('syntax');
  }
}
