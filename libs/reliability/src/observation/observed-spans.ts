import { instantOf, millisecondsPerDay } from '../time/instant-of.js';

/** A stretch of time, in milliseconds since 1970. */
export interface Stretch {
  readonly from: number;
  readonly until: number;
}

/** What is known of when a vehicle was watched. Instants are ISO 8601 with offset. */
export interface WatchFacts {
  /** stretches the shop stated; none: it is watched while it keeps coming */
  readonly stated: readonly { readonly from: string; readonly until: string | null }[];
  /** when the shop first knew the vehicle; counts where nothing was stated */
  readonly knownSince: string;
  /** whenever somebody of the shop met it: visits, odometer entries, complaints */
  readonly contacts: readonly string[];
  /** first day it was used, at its midnight; nothing is watched before */
  readonly firstUsedAt: string | null;
  /** when it was taken out of use */
  readonly retiredAt: string | null;
  /** owners by the moment from which they owned it, in order */
  readonly owners: readonly { readonly customerId: string; readonly fromAt: string }[];
}

export interface WatchQuestion {
  /** end of the observation */
  readonly until: string;
  /** only while this customer owned it */
  readonly customerId?: string | undefined;
  /** days after a contact during which a vehicle that needs something would have come */
  readonly watchedAfterContactDays: number;
}

/** What looked odd about how a vehicle was watched; nothing is refused for it. */
export const watchWarnings = ['spansOverlap', 'spanBeforeFirstUse', 'spanAfterRetirement'] as const;
export type WatchWarning = (typeof watchWarnings)[number];

export interface Watch {
  /** in order, neither overlapping nor touching */
  readonly spans: readonly Stretch[];
  readonly warnings: readonly WatchWarning[];
}

/** Stretches in order, those that overlap or touch made one. */
function joined(stretches: readonly Stretch[]): Stretch[] {
  const found: Stretch[] = [];
  for (const next of [...stretches].sort((a, b) => a.from - b.from)) {
    const last = found.at(-1);
    if (last === undefined || next.from > last.until) found.push(next);
    else found[found.length - 1] = { from: last.from, until: Math.max(last.until, next.until) };
  }
  return found;
}

const within = (stretches: readonly Stretch[], { from, until }: Stretch): Stretch[] =>
  stretches
    .map((each) => ({ from: Math.max(each.from, from), until: Math.min(each.until, until) }))
    .filter((each) => each.until >= each.from);

function requireStretch({ from, until }: Stretch): void {
  if (until < from) throw new RangeError(`a stretch must not end before it begins, got ${from} to ${until}`);
}

/** Watched from each contact on for a while; a longer silence is time in which nobody would have known. */
function watchedByContact(facts: WatchFacts, reach: number): Stretch[] {
  const met = [facts.knownSince, ...facts.contacts].map(instantOf);
  return joined(met.map((at) => ({ from: at, until: at + reach })));
}

function ownedBy({ owners }: WatchFacts, customerId: string): Stretch[] {
  const inOrder = [...owners].sort((a, b) => instantOf(a.fromAt) - instantOf(b.fromAt));
  const owned = inOrder.flatMap((owner, place) =>
    owner.customerId === customerId
      ? [
          {
            from: instantOf(owner.fromAt),
            until: inOrder[place + 1] === undefined ? Infinity : instantOf(inOrder[place + 1]!.fromAt),
          },
        ]
      : [],
  );
  return joined(owned);
}

/**
 * When a vehicle was watched: stretches in which what happened to it would have come to the shop's notice.
 *
 * Stated stretches are taken as they are, an open end reaching to the end of the question. Where none is stated the
 * vehicle is watched since the shop knew it, and goes unseen when it has stayed away longer than the given days after the
 * last contact. Nothing is watched before first use, after retirement, or, asked for one customer, while another owned it.
 *
 * @param facts     stated stretches, contacts, owners; any order
 * @param question  end of the observation, customer, days watched after a contact (judgement of the caller)
 * @returns stretches in order and what looked odd; none where the vehicle was never watched
 * @throws RangeError on a text that is no instant, a stated stretch that ends before it begins, days that are not positive
 * @source definition of left truncation and of gaps in observation: Nelson (2003), Recurrent Events Data Analysis, ch. 5;
 *   the rule for silence is judgement
 * @oracle timelines worked by hand in the spec
 * @example observedSpans({ stated: [], knownSince: '2030-01-01T00:00:00Z', contacts: [], firstUsedAt: null, retiredAt: null, owners: [] }, { until: '2030-01-11T00:00:00Z', watchedAfterContactDays: 365 }).spans.length // => 1
 */
export function observedSpans(facts: WatchFacts, question: WatchQuestion): Watch {
  const { watchedAfterContactDays: days, customerId } = question;
  if (!(days > 0 && Number.isFinite(days)))
    throw new RangeError(`days watched after a contact must be positive and finite, got ${days}`);
  const end = instantOf(question.until);
  const stated = facts.stated.map(({ from, until }) => {
    const stretch = { from: instantOf(from), until: until === null ? Infinity : instantOf(until) };
    requireStretch(stretch);
    return stretch;
  });
  const seen = stated.length > 0 ? joined(stated) : watchedByContact(facts, days * millisecondsPerDay);
  const firstUse = facts.firstUsedAt === null ? -Infinity : instantOf(facts.firstUsedAt);
  const retired = facts.retiredAt === null ? Infinity : instantOf(facts.retiredAt);
  const used = within(seen, { from: firstUse, until: Math.min(retired, end) });
  const spans =
    customerId === undefined ? used : ownedBy(facts, customerId).flatMap((own) => within(used, own));
  return { spans: joined(spans), warnings: warningsOf(stated, firstUse, retired) };
}

function warningsOf(stated: readonly Stretch[], firstUse: number, retired: number): WatchWarning[] {
  const inOrder = [...stated].sort((a, b) => a.from - b.from);
  const overlaps = inOrder.some((each, place) => place > 0 && each.from < inOrder[place - 1]!.until);
  return [
    ...(overlaps ? (['spansOverlap'] as const) : []),
    ...(stated.some(({ from }) => from < firstUse) ? (['spanBeforeFirstUse'] as const) : []),
    ...(stated.some(({ until }) => until !== Infinity && until > retired)
      ? (['spanAfterRetirement'] as const)
      : []),
  ];
}
