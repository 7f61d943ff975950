import { invalidInput, type WearUntil } from '@endfloat/workshop';

/** The distance or the day that is asked about; never both. */
export function toWearUntil(query: {
  readonly withinKm?: string | undefined;
  readonly until?: string | undefined;
}): WearUntil | undefined {
  const { withinKm, until } = query;
  if (withinKm !== undefined && until !== undefined)
    throw invalidInput('/until', 'either', 'Ask about a distance or about a day, not about both.');
  if (withinKm !== undefined) return { kind: 'distance', km: Number(withinKm) };
  return until === undefined ? undefined : { kind: 'day', day: until };
}

/** The same where one of them must be given. */
export function toRequiredWearUntil(query: Parameters<typeof toWearUntil>[0]): WearUntil {
  const until = toWearUntil(query);
  if (until === undefined)
    throw invalidInput('/withinKm', 'required', 'Say how far ahead: withinKm, or until a day.');
  return until;
}
