import { withRules, type Retirement, type RouteRules } from './route-rules.js';

/** Least time between the announcement and the end of an operation, in months of 30 days. */
const leastMonths = 6;

/**
 * Announces that an operation goes: it is marked in the document, and every answer says so (RFC 9745, RFC 8594).
 *
 * @throws RangeError when it would end earlier than six months after it was discouraged
 */
export const Retiring = (retirement: Retirement): MethodDecorator => {
  const [from, until] = [Date.parse(retirement.deprecatedAt), Date.parse(retirement.sunsetAt)];
  if (!(until - from >= leastMonths * 30 * 86_400_000))
    throw new RangeError('an operation ends six months after it was discouraged, or later');
  return withRules({ retirement });
};

/** Header fields of every answer of an operation that goes; none for the others. */
export function retirementHeaders(rules: Partial<RouteRules> | undefined): Readonly<Record<string, string>> {
  const retirement = rules?.retirement;
  if (retirement === undefined) return {};
  return {
    deprecation: `@${String(Math.floor(Date.parse(retirement.deprecatedAt) / 1000))}`,
    sunset: new Date(retirement.sunsetAt).toUTCString(),
    link: `<${retirement.link}>; rel="deprecation"`,
  };
}
