import { compareMoney, multiplyMoney, type Money } from '@endfloat/metrology';

/** Price of one piece from a number of pieces on. */
export interface PriceBreak {
  readonly fromQuantity: number;
  readonly price: Money;
}

/** What a quantity costs, and a larger quantity that costs no more in all. */
export interface QuantityPrice {
  readonly unitPrice: Money;
  readonly total: Money;
  readonly noDearer: { readonly quantity: number; readonly unitPrice: Money; readonly total: Money } | null;
}

/**
 * Price of a quantity with price breaks: the break with the highest number that the quantity reaches applies to all pieces.
 *
 * @param price     of one piece without a break
 * @param breaks    in the currency of the price, in any order, may be none; of two for one number the later counts
 * @param quantity  whole, 1 or more
 * @returns price of a piece, of all, and the largest break quantity beyond that costs no more in all, if there is one
 * @throws RangeError on a quantity that is not whole or below 1, or a break in another currency
 * @source common practice, no source
 * @example priceOfQuantity({ amount: '10.00', currency: 'EUR' }, [{ fromQuantity: 3, price: { amount: '6.00', currency: 'EUR' } }], 2).noDearer.quantity // => 3
 */
export function priceOfQuantity(
  price: Money,
  breaks: readonly PriceBreak[],
  quantity: number,
): QuantityPrice {
  if (!Number.isInteger(quantity) || quantity < 1)
    throw new RangeError(`quantity must be whole, 1 or more, got ${quantity}`);
  if (breaks.some((each) => each.price.currency !== price.currency))
    throw new RangeError('price breaks stand in the currency of the price');
  const sorted = [...breaks].sort((a, b) => a.fromQuantity - b.fromQuantity);
  const unitAt = (pieces: number): Money =>
    sorted.findLast(({ fromQuantity }) => fromQuantity <= pieces)?.price ?? price;
  const unitPrice = unitAt(quantity);
  const total = multiplyMoney(unitPrice, String(quantity));
  const better = sorted
    .filter(({ fromQuantity }) => fromQuantity > quantity)
    .map(({ fromQuantity, price: each }) => ({
      quantity: fromQuantity,
      unitPrice: each,
      total: multiplyMoney(each, String(fromQuantity)),
    }))
    .findLast(({ total: sum }) => isNoDearer(sum, total));
  return { unitPrice, total, noDearer: better ?? null };
}

function isNoDearer(sum: Money, than: Money): boolean {
  const compared = compareMoney(sum, than);
  return compared.kind === 'compared' && compared.order !== 'greater';
}
