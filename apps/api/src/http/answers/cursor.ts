import { createHmac, timingSafeEqual } from 'node:crypto';
import { HttpProblem } from '../problems/http-problem.js';

/** Where a sorted list goes on: the sort value and the id of the last item seen. */
export interface CursorPosition {
  readonly sortValue: string;
  readonly id: string;
}

/** An opaque cursor: the position, signed together with the list it belongs to. */
export function encodeCursor(position: CursorPosition, list: string, key: string): string {
  const payload = Buffer.from(JSON.stringify([position.sortValue, position.id])).toString('base64url');
  return `${payload}.${signature(payload, list, key).toString('base64url')}`;
}

/**
 * @param cursor  as given by the caller
 * @param list  what the cursor must belong to: shop, route, filter
 * @throws HttpProblem `invalid-cursor` when it was made for another list, by another key, or not by us at all
 */
export function decodeCursor(cursor: string, list: string, key: string): CursorPosition {
  const [payload = '', signed = ''] = cursor.split('.', 2);
  const given = Buffer.from(signed, 'base64url');
  const expected = signature(payload, list, key);
  if (given.length !== expected.length || !timingSafeEqual(given, expected))
    throw new HttpProblem('invalid-cursor');
  const [sortValue, id] = JSON.parse(Buffer.from(payload, 'base64url').toString('utf8')) as [string, string];
  return { sortValue, id };
}

function signature(payload: string, list: string, key: string): Buffer {
  return createHmac('sha256', key).update(`${payload}\n${list}`).digest().subarray(0, 16);
}
