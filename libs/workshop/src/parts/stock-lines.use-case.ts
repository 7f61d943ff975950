import type { Recorded } from '../ports/record-store.port.js';
import type { NoReferences } from '../ports/records/shop.records.js';
import type { Part } from '../ports/records/stock.records.js';
import type { Caller } from '../ports/roles.js';
import type { StockLine } from '../ports/stock-queries.port.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';

/** What lies of a part in a condition. */
export interface StockLineView {
  readonly line: StockLine;
  readonly part: Recorded<NoReferences, Part>;
}

/** Most lines that one answer holds; a shop with more asks kind by kind. */
export const mostStockLines = 5000;

/** What lies on the shelf, by part and condition. */
export class ListStockUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(
    caller: Caller,
    query: {
      readonly componentType?: string | undefined;
      readonly partId?: string | undefined;
      readonly asOf?: string | undefined;
    },
  ): Promise<readonly StockLineView[]> {
    return this.work.read(caller.shopId, (tx) => stockLinesOf(tx, query));
  }
}

export async function stockLinesOf(
  tx: ShopTransaction,
  query: {
    readonly componentType?: string | undefined;
    readonly partId?: string | undefined;
    readonly asOf?: string | undefined;
  },
): Promise<readonly StockLineView[]> {
  const { componentType, partId, asOf } = query;
  const parts = new Map(
    (await tx.parts.all({ componentType, id: partId }, asOf)).map((part) => [part.id, part]),
  );
  if (parts.size === 0) return [];
  const partIds = partId === undefined && componentType === undefined ? undefined : [...parts.keys()];
  const lines = await tx.stock.lines({ partIds, asOf });
  return lines
    .flatMap((line) => {
      const part = parts.get(line.partId);
      return part === undefined ? [] : [{ line, part }];
    })
    .sort(
      (a, b) =>
        byText(a.part.content.componentType, b.part.content.componentType) ||
        byText(a.part.content.partNumber, b.part.content.partNumber) ||
        byText(a.line.condition, b.line.condition),
    )
    .slice(0, mostStockLines);
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
