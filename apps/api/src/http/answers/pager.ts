import { pageSizes, type Page } from '@endfloat/contracts';
import { HttpProblem } from '../problems/http-problem.js';
import { requestContext } from '../requests/request-context.js';
import { decodeCursor, encodeCursor, type CursorPosition } from './cursor.js';

/** What a use case that lists things is asked. */
export interface PageRequest {
  readonly limit: number;
  readonly after?: CursorPosition;
}

/** Turns page sizes and cursors into page requests, and lists into pages. Cursors fit one shop, path and filter only. */
export class Pager {
  constructor(private readonly key: string) {}

  /** Reads `pageSize` and `cursor`. */
  read({ pageSize, cursor }: { pageSize?: string | undefined; cursor?: string | undefined }): PageRequest {
    const limit = pageSize === undefined ? pageSizes.usual : Number(pageSize);
    return {
      limit,
      ...(cursor === undefined ? {} : { after: decodeCursor(cursor, currentList(), this.key) }),
    };
  }

  /** A cursor of the running request's list, for answers that are no pages. */
  cursor(position: CursorPosition): string {
    return encodeCursor(position, currentList(), this.key);
  }

  /** The page of a list; `next` is where the list goes on, absent at its end. */
  page<Row, Item>(
    list: { readonly items: readonly Row[]; readonly next?: CursorPosition | undefined },
    present: (row: Row) => Item,
  ): Page<Item> {
    const nextCursor = list.next === undefined ? null : encodeCursor(list.next, currentList(), this.key);
    return { items: list.items.map(present), nextCursor };
  }
}

/** Names the list of the running request: shop, caller's customer, path and filters, in one order. */
function currentList(): string {
  const exchange = requestContext.getStore();
  if (exchange === undefined) throw new HttpProblem('internal');
  const { caller, request } = exchange;
  const [path = '', query = ''] = (request.raw.url ?? '').split('?', 2);
  const filters = [...new URLSearchParams(query)]
    .filter(([name]) => !['cursor', 'pageSize', 'after'].includes(name))
    .sort(([a], [b]) => (a < b ? -1 : 1));
  return JSON.stringify([caller?.shopId ?? '', caller?.customerId ?? '', path, filters]);
}
