import type { ShopRole } from '@endfloat/workshop';
import { idPattern, type TokenIssuer } from './token-issuer.js';

/** What the claims of a believed token say in words of the house. */
export interface ClaimedCaller {
  readonly shopId: string;
  readonly userId: string;
  readonly roles: readonly ShopRole[];
}

/** Undefined where shop or person are not said, or not in words that the issuer's document lists. */
export function readClaims(
  { shop, person, roles }: Pick<TokenIssuer, 'shop' | 'person' | 'roles'>,
  claims: Readonly<Record<string, unknown>>,
): ClaimedCaller | undefined {
  const shopId = meaningOf(shop.values, claims[shop.claim]);
  const named = claims[person.claim];
  const userId = person.values === undefined ? idOf(named) : meaningOf(person.values, named);
  if (shopId === undefined || userId === undefined) return undefined;
  const given = wordsOf(claims[roles.claim]).flatMap((word) => meaningOf(roles.values, word) ?? []);
  return { shopId, userId, roles: [...new Set(given)] };
}

function meaningOf<T>(values: Readonly<Record<string, T>>, value: unknown): T | undefined {
  return typeof value === 'string' && Object.hasOwn(values, value) ? values[value] : undefined;
}

function idOf(value: unknown): string | undefined {
  return typeof value === 'string' && idPattern.test(value) ? value : undefined;
}

/** A list of texts, or one text with spaces between words, as `scope` has it. */
function wordsOf(value: unknown): readonly string[] {
  if (typeof value === 'string') return value.split(' ');
  return Array.isArray(value) ? value.filter((each) => typeof each === 'string') : [];
}
