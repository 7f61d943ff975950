import { causes, type Check, type PartsCostClass } from '@endfloat/catalogue';
import {
  rankChecksByMoney,
  type ChainWorth,
  type DiagnosisCosts,
  type DiagnosisTables,
} from '@endfloat/diagnosis';
import { moneyFromNumber, type Money } from '@endfloat/metrology';
import type { MoneyUnknownReason } from '../ports/records/decide.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { ownerOf } from '../recording/vehicle-visibility.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { openChecksOf, type DiagnosticEvidence } from './next-check-ranking.js';

/** What a check, with whatever has to be done before it, saves on average and costs. */
export interface CheckWorth {
  /** what to do now: the first of the chain */
  readonly diagnosticCheckId: string;
  readonly checks: readonly Check[];
  readonly isOpeningMove: boolean;
  /** in the order to do them; the last is the one that is worth it */
  readonly chain: readonly string[];
  readonly minutes: number;
  readonly expectedSaving: Money;
  readonly cost: Money;
  /** saving less cost; negative: not worth doing for the money alone */
  readonly net: Money;
  readonly isWorthIt: boolean;
}

/** Checks by the money they save. */
export type ChecksByMoney =
  | {
      readonly kind: 'ranked';
      /** cause whose cure costs least on average if nothing more is checked */
      readonly bestCureNow: { readonly causeId: string; readonly expectedCost: Money };
      readonly checks: readonly CheckWorth[];
    }
  | { readonly kind: 'cannotBeSaid'; readonly why: MoneyUnknownReason };

/** Hours to cure each cause; JUDGEMENT. */
const hoursToCure: Readonly<Record<string, number>> = {
  'shaft-worn': 1.8,
  'plate-stop-too-far-open': 0.5,
  'idle-switch-misset-or-faulty': 0.6,
  'linkage-binding': 0.5,
  'unmetered-air-leak': 0.8,
  'idle-air-valve-faulty': 0.8,
  'coolant-sensor-wrong': 0.4,
  'base-timing-wrong': 0.5,
  'purge-faulty-or-misrouted': 0.5,
  'low-voltage-or-bad-ground': 0.8,
  'deposits-in-bore': 0.8,
  'other-cause': 2,
};

/** What a part of a class costs, in hours of labour, so that it holds in any currency; JUDGEMENT. */
const partInLabourHours: Readonly<Record<PartsCostClass, number>> = {
  noPart: 0,
  smallPart: 0.5,
  mediumPart: 2,
  majorPart: 5,
};

/** A wrong cure brings the van back: an hour to find that out and a day off the road; JUDGEMENT. */
const wrongCure = { labourHours: 1, downtimeDays: 1 } as const;

/** How many are named. */
const named = 3;

/** Prices of the shop and of the owner of the van. */
export interface CheckingRates {
  readonly currency: string;
  readonly labourPerHour: number;
  readonly downtimePerDay: number;
  readonly comebackHandling: number;
}

export async function checkingRates(
  tx: ShopTransaction,
  vehicleId: string,
  now: string,
): Promise<CheckingRates> {
  const settings = await settingsOf(tx);
  const owner = await ownerOf(tx, vehicleId, now);
  const customer = owner === undefined ? undefined : await tx.customers.find(owner.customerId);
  return {
    currency: settings.currency,
    labourPerHour: Number(settings.labourRatePerHour),
    downtimePerDay: Number(customer?.content.downtimeCostPerDay ?? settings.downtimeCostPerDay),
    comebackHandling: Number(settings.comebackHandling),
  };
}

/**
 * Cost of curing each cause when it is, and when it is not, the cause: a wrong cure is paid for, the van comes back, and
 * the right cure follows.
 */
export function costsOfCures(tables: DiagnosisTables, rates: CheckingRates): DiagnosisCosts {
  const { labourPerHour, downtimePerDay, comebackHandling } = rates;
  const cureOf = (causeId: string): number => {
    const { partsCostClass = 'majorPart' } = causes.find(({ id }) => id === causeId) ?? {};
    return (
      labourPerHour *
      ((hoursToCure[causeId] ?? hoursToCure['other-cause']!) + partInLabourHours[partsCostClass])
    );
  };
  const wrong =
    comebackHandling + wrongCure.labourHours * labourPerHour + wrongCure.downtimeDays * downtimePerDay;
  return {
    labourPerMinute: labourPerHour / 60,
    actions: tables.causes.map(({ id }) => ({
      id,
      costGivenCause: Object.fromEntries(
        tables.causes.map(({ id: causeId }) => [
          causeId,
          causeId === id ? cureOf(id) : cureOf(id) + wrong + cureOf(causeId),
        ]),
      ),
    })),
  };
}

/** The two or three checks that save most per minute before something is repaired; safe opening moves come first. */
export function rankByMoney(
  tables: DiagnosisTables,
  known: DiagnosticEvidence | null,
  rates: CheckingRates,
): ChecksByMoney {
  if (known === null) return { kind: 'cannotBeSaid', why: 'sheetFeedsNoTables' };
  const ranking = rankChecksByMoney(tables, known.evidence, costsOfCures(tables, rates));
  if (ranking.kind === 'impossibleEvidence') return { kind: 'cannotBeSaid', why: 'contradictoryEvidence' };
  const feeds = new Set(known.feeding.map(({ check }) => check.diagnosticCheckId));
  const can = ranking.chains.filter(({ chain }) => chain.every((id) => feeds.has(id)));
  if (can.length === 0) return { kind: 'cannotBeSaid', why: 'allChecksDone' };
  const opening = new Set(tables.checks.filter(({ openingMove }) => openingMove).map(({ id }) => id));
  const bestByFirst = new Map<string, ChainWorth>();
  for (const each of can) if (!bestByFirst.has(each.firstAction)) bestByFirst.set(each.firstAction, each);
  const inOrder = [...bestByFirst.values()];
  const money = (amount: number): Money => moneyFromNumber(amount, rates.currency);
  const checks = [
    ...inOrder.filter(({ firstAction }) => opening.has(firstAction)),
    ...inOrder.filter(({ firstAction }) => !opening.has(firstAction)),
  ]
    .slice(0, named)
    .map((each): CheckWorth => ({
      diagnosticCheckId: each.firstAction,
      checks: openChecksOf(known.feeding, each.firstAction),
      isOpeningMove: opening.has(each.firstAction),
      chain: each.chain,
      minutes: each.minutes,
      expectedSaving: money(each.expectedCostSaved),
      cost: money(each.costOfChecking),
      net: money(each.expectedNetSaved),
      isWorthIt: each.expectedNetSaved > 0,
    }));
  const { actionId, expectedCost } = ranking.bestActionNow;
  return { kind: 'ranked', bestCureNow: { causeId: actionId, expectedCost: money(expectedCost) }, checks };
}
