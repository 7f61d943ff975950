import type { LeadTimes, NeedSource, OrderProposalOutcome, OrderReasonCode } from '@endfloat/stock';
import type { VanChance } from './gather-needs.js';
import type { Supply } from './gather-supply.js';

export interface OrderReason {
  readonly code: OrderReasonCode;
  readonly values: Readonly<Record<string, string>>;
}

/** A van is said to reach its limit within a time when that is likelier than not. */
const likely = 0.5;

/** Pieces expected from a source below which it is no reason to order; JUDGEMENT. */
const worthTelling = 0.05;

const figure = (value: number): string => String(Number(value.toPrecision(3)));

export function orderReasons({
  proposal,
  leadTimes,
  vans,
  supply,
  perDay,
}: {
  readonly proposal: OrderProposalOutcome;
  readonly leadTimes: Extract<LeadTimes, { kind: 'known' }>;
  readonly vans: readonly VanChance[];
  readonly supply: Supply;
  /** null: the vans themselves are asked */
  readonly perDay: number | null;
}): readonly OrderReason[] {
  const days = String(leadTimes.ninetiethDays);
  const of = (source: NeedSource) =>
    vans.flatMap(({ reasons }) => {
      const own = reasons.filter((reason) => reason.source === source).map(({ chance }) => chance);
      return own.length === 0 ? [] : [Math.max(...own)];
    });
  const reasons: OrderReason[] = [];
  for (const [source, code] of [
    ['wear', 'vansReachLimit'],
    ['life', 'vansEndLife'],
  ] as const) {
    const chances = of(source);
    const expected = chances.reduce((sum, chance) => sum + chance, 0);
    const count = chances.filter((chance) => chance >= likely).length;
    if (count > 0 || expected >= worthTelling)
      reasons.push({ code, values: { vans: String(count), days, expected: figure(expected) } });
  }
  const planned = of('openJob');
  if (planned.length > 0) reasons.push({ code: 'jobsPlanned', values: { jobs: String(planned.length) } });
  const comebacks = of('comeback').reduce((sum, chance) => sum + chance, 0);
  if (comebacks >= worthTelling)
    reasons.push({ code: 'comebacksExpected', values: { expected: figure(comebacks), days } });
  if (perDay !== null)
    reasons.push({ code: 'pastUse', values: { perMonth: figure((perDay * 365.25) / 12) } });
  reasons.push({
    code: 'stockAndOrders',
    values: { onHand: String(supply.onHand), onOrder: String(supply.onOrder) },
  });
  if (proposal.kind === 'proposed')
    reasons.push({
      code: 'levelForService',
      values: {
        level: String(proposal.level.level),
        target: figure(100 * proposal.level.target),
        without: figure(100 * proposal.serviceWithout),
      },
    });
  if (supply.overdue > 0) reasons.push({ code: 'orderOverdue', values: { pieces: String(supply.overdue) } });
  if (leadTimes.source === 'promisedOnly') reasons.push({ code: 'leadTimePromisedOnly', values: { days } });
  return reasons;
}
