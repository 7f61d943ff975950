import type { FieldClass } from '../fields/json-schema.js';
import { ListField } from '../fields/list.field.js';
import { CursorField, PageSizeField } from '../fields/query.fields.js';
import { TextField } from '../fields/text.field.js';

/** Most items on a page, and how many there are where the caller does not say. */
export const pageSizes = { most: 200, usual: 50 } as const;

/** Query parameters of every list; a list with filters extends this class. */
export class PageQuery {
  @PageSizeField()
  pageSize?: string;

  @CursorField()
  cursor?: string;
}

/** One page of a list. */
export interface Page<T> {
  items: T[];
  nextCursor: string | null;
}

/** Class of a page of the given items: `export class VehiclePage extends pageOf(() => VehicleResponse) {}`. */
export function pageOf<T extends object>(type: () => FieldClass<T>): FieldClass<Page<T>> {
  class PageOfItems implements Page<T> {
    @ListField({ description: 'The items, in the order of the list.', type, max: pageSizes.most })
    items!: T[];

    @TextField({
      description: 'Where the next page begins; null on the last page.',
      nullable: true,
      max: 2048,
      pattern: '^[A-Za-z0-9_-]+\\.[A-Za-z0-9_-]+$',
    })
    nextCursor!: string | null;
  }
  return PageOfItems;
}
