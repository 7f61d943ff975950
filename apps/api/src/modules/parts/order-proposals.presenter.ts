import type {
  GroupProposalDto,
  OfferProposalDto,
  OrderProposalList,
  OrderReasonDto,
  StockLevelDto,
  UnattainableLevelDto,
} from '@endfloat/contracts';
import {
  renderText,
  type GroupProposal,
  type OfferProposal,
  type OrderProposals,
  type OrderProposalsQuery,
  type OrderReason,
} from '@endfloat/workshop';
import { moneyOrNull } from './core.presenter.js';
import { presentPartStock } from './part.presenter.js';
import { presentSummary, presentVan } from './part-needs.presenter.js';

type Level =
  | Extract<OfferProposal['proposal'], { kind: 'proposed' }>['level']
  | { readonly kind: 'unattainable'; readonly target: number };

export function presentLevel(level: Level): StockLevelDto | UnattainableLevelDto {
  if (level.kind === 'unattainable') return { kind: level.kind, target: level.target };
  const { kind, measure, target, service, serviceBelow, expectedShort } = level;
  return { kind, level: level.level, measure, target, service, serviceBelow, expectedShort };
}

function presentReason({ code, values }: OrderReason): OrderReasonDto {
  return { code, values: { ...values }, text: renderText(`order.${code}`, values) };
}

/** A sentence as part of another one. */
const clause = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1).replace(/\.$/, '');

/** The first reason that is about demand says why; the others stand beside it. */
function sentence({ proposal, reasons }: OfferProposal): string {
  if (proposal.kind === 'unattainable') return renderText('order.unattainable');
  const stock = reasons.find(({ code }) => code === 'stockAndOrders')?.values ?? {};
  if (proposal.quantity === 0) return renderText('order.none', stock);
  const [why] = reasons;
  return renderText('order.some', {
    quantity: proposal.quantity,
    why: why === undefined ? '' : clause(renderText(`order.${why.code}`, why.values)),
  });
}

function presentOffer(found: OfferProposal): OfferProposalDto {
  const { offer, leadTimes, summary, method, proposal, price, reasons, vans } = found;
  const isProposed = proposal.kind === 'proposed';
  const { source, meanDays, ninetiethDays, deliveries, cases } = leadTimes;
  return {
    offerId: offer?.id ?? null,
    supplier: offer?.content.supplier ?? null,
    condition: offer?.content.condition ?? null,
    quantity: isProposed ? proposal.quantity : 0,
    text: sentence(found),
    level: presentLevel(isProposed ? proposal.level : proposal),
    serviceWithout: isProposed ? proposal.serviceWithout : null,
    shortWithout: isProposed ? proposal.shortWithout : null,
    leadTimes: {
      source,
      meanDays,
      ninetiethDays,
      deliveries,
      cases: cases.map(({ days, weight }) => ({ days, share: Math.min(1, weight) })),
    },
    demand: presentSummary(summary),
    method,
    price: presentPrice(price),
    reasons: reasons.map(presentReason),
    vans: vans.map(presentVan),
  };
}

function presentPrice(price: OfferProposal['price']): OfferProposalDto['price'] {
  if (price === null) return null;
  const { unitPrice, total, noDearer } = price;
  return {
    unitPrice: moneyOrNull(unitPrice)!,
    total: moneyOrNull(total)!,
    noDearer:
      noDearer === null
        ? null
        : {
            quantity: noDearer.quantity,
            unitPrice: moneyOrNull(noDearer.unitPrice)!,
            total: moneyOrNull(noDearer.total)!,
          },
  };
}

function presentGroup(group: GroupProposal): GroupProposalDto {
  const { componentType, part, parts, supply, vans, vansWithoutAnswer, outcome } = group;
  return {
    componentType,
    partId: part.id,
    partNumber: part.content.partNumber,
    partIds: parts.map(({ id }) => id),
    alsoOrder: [...part.content.alsoOrder],
    onHand: supply.onHand,
    reserved: supply.reserved,
    onOrder: supply.onOrder,
    overdue: supply.overdue,
    stock: supply.lines.map(presentPartStock),
    vans,
    vansWithoutAnswer,
    outcome:
      outcome.kind === 'proposed'
        ? { kind: outcome.kind, best: presentOffer(outcome.best), others: outcome.others.map(presentOffer) }
        : { ...outcome },
  };
}

export function presentProposals(
  { today, items, unfitted }: OrderProposals,
  { measure, target }: Pick<OrderProposalsQuery, 'measure' | 'target'>,
): OrderProposalList {
  return {
    today,
    measure,
    target,
    items: items.map(presentGroup),
    unfitted: unfitted.map(({ componentType, vehicleIds }) => ({
      componentType,
      vehicleIds: [...vehicleIds],
    })),
  };
}
