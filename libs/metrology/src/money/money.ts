/** An amount of one currency: decimal text with at most the currency's decimals, ISO 4217 code. Never a float. */
export interface Money {
  readonly amount: string;
  readonly currency: string;
}

/** An amount, or why there is none. Amounts of different currencies are never summed or compared. */
export type MoneyResult =
  | { readonly kind: 'money'; readonly money: Money }
  | { readonly kind: 'currenciesDiffer'; readonly currencies: readonly string[] }
  | MoneyRefusal;

/** Why a text and a code are no money. */
export type MoneyRefusal =
  | { readonly kind: 'unknownCurrency'; readonly currency: string }
  | { readonly kind: 'notDecimal'; readonly text: string }
  | { readonly kind: 'tooManyDigits'; readonly digits: number; readonly allowed: number }
  | { readonly kind: 'tooManyDecimals'; readonly currency: string; readonly allowed: number };
