import type {
  CostSumsDto,
  CostTermsDto,
  DowntimeDto,
  KeepingPreviewResponse,
  MoneyDto,
  PreviewKeepingRequest,
  VehicleCostsDto,
} from '@endfloat/contracts';
import type { Downtime } from '@endfloat/reliability';
import type { FleetCosts, KeepingCommand, KeepingView, VehicleCosts } from '@endfloat/workshop';
import { presentFleetVehicle } from './outlook.presenter.js';

const presentMoney = ({ amount, currency }: MoneyDto): MoneyDto => ({ amount, currency });

const presentDowntime = ({ days, visits, byReason }: Downtime): DowntimeDto => ({
  days,
  visits,
  inWork: byReason.inWork,
  waitingForConsent: byReason.waitingForConsent,
  waitingForPart: byReason.waitingForPart,
  waitingForBay: byReason.waitingForBay,
  waitingForRelease: byReason.waitingForRelease,
});

export function presentVehicleCosts(costs: VehicleCosts): VehicleCostsDto {
  const { distance } = costs;
  return {
    vehicle: presentFleetVehicle(costs.vehicle),
    labour: presentMoney(costs.labour),
    parts: presentMoney(costs.parts),
    downtimeCost: presentMoney(costs.downtimeCost),
    total: presentMoney(costs.total),
    downtime: presentDowntime(costs.downtime),
    perKm:
      distance.kind === 'known'
        ? {
            kind: 'known',
            amountPerKm: Number(costs.total.amount) / distance.km,
            km: distance.km,
            coveredDays: distance.coveredDays,
          }
        : {
            kind: 'insufficientData',
            of: 'reliable odometer entries, apart in time and distance',
            needed: 2,
            got: Math.min(distance.readings, 1),
          },
    lines: costs.lines,
    hours: costs.hours,
    linesWithoutMinutes: costs.linesWithoutMinutes,
    partsWithoutPrice: costs.partsWithoutPrice,
    otherCurrencies: costs.otherCurrencies.map(presentMoney),
    years: costs.years.map(({ year, labour, parts, lines }) => ({
      year,
      labour: presentMoney(labour),
      parts: presentMoney(parts),
      lines,
    })),
  };
}

export function presentTogether(found: FleetCosts): CostSumsDto {
  const { withDistance, from, until } = found;
  return {
    labour: presentMoney(found.labour),
    parts: presentMoney(found.parts),
    downtimeCost: presentMoney(found.downtimeCost),
    total: presentMoney(found.total),
    downtime: presentDowntime(found.downtime),
    perKm:
      withDistance.km > 0
        ? {
            kind: 'known',
            amountPerKm: Number(withDistance.total.amount) / withDistance.km,
            km: withDistance.km,
            coveredDays: (Date.parse(until) - Date.parse(from)) / 86_400_000,
          }
        : { kind: 'insufficientData', of: 'vehicles with a known distance', needed: 1, got: 0 },
  };
}

export function presentCostTerms({ from, until, labourRatePerHour }: FleetCosts): CostTermsDto {
  return {
    from,
    until,
    labourRatePerHour: presentMoney(labourRatePerHour),
    method:
      'Work lines done in the time: minutes at the present labour rate, parts at their recorded price; days in the workshop at what a day off the road costs the owner, else the shop setting. Sums are exact; the cost of a km is the sum over the distance between the readings at the ends of the time, or the first and last within it, on a straight line between readings. A sum of what was recorded has no interval.',
  };
}

export function toKeepingCommand(vehicleId: string, request: PreviewKeepingRequest): KeepingCommand {
  const { resaleNow, resaleFallPerYear, furtherYears, expectedRunning, challenger, discountRate } = request;
  return {
    vehicleId,
    resaleNow: presentMoney(resaleNow),
    resaleFall: Number(resaleFallPerYear),
    furtherYears,
    expectedRunning: expectedRunning?.map(({ running }) => Number(running)) ?? null,
    challenger: {
      price: presentMoney(challenger.price),
      years: challenger.years.map(({ running, resale }) => ({
        running: Number(running),
        resale: Number(resale),
      })),
    },
    discountRate: discountRate === null ? null : Number(discountRate),
  };
}

export function presentKeeping({ currency, ownYears, outcome }: KeepingView): KeepingPreviewResponse {
  return {
    currency,
    ownYears: ownYears.map(({ year, running }) => ({ year, running })),
    outcome: presentOutcome(outcome),
    method: {
      name: 'challengerRule',
      variant:
        'the vehicle is priced at what selling it now would bring and kept while its next year costs no more than the cheapest average year of the other; its running costs from its full calendar years by a straight line, never below 0, limits for one year at 0.95; amounts at present rates',
      source:
        'Terborgh (1949), Dynamic Equipment Policy; Jardine & Tsang, Maintenance, Replacement and Reliability, ch. 2; Park, Contemporary Engineering Economics, ch. 14 (from memory)',
    },
  };
}

function presentOutcome(outcome: KeepingView['outcome']): KeepingPreviewResponse['outcome'] {
  if (outcome.kind === 'insufficientData')
    return {
      kind: 'insufficientData',
      of: 'full calendar years of this vehicle with the shop',
      needed: outcome.needed,
      got: outcome.got,
    };
  const { basis, decision, ifLower, ifUpper, running, challenger } = outcome;
  return {
    kind: 'decided',
    basis,
    decision: decision.kind,
    keepYears: decision.periods,
    ifLower: ifLower?.kind ?? null,
    ifUpper: ifUpper?.kind ?? null,
    isSettled: ifLower !== null && ifLower.kind === ifUpper?.kind && ifLower.kind === decision.kind,
    running: running.map(({ expected, lower, upper }) => ({ expected, lower, upper })),
    costs: decision.costs.map((cost, place) => ({
      years: place + 1,
      cost,
      marginalCost: decision.marginalCosts[place] ?? cost,
    })),
    challengerYears: challenger.periods,
    challengerCost: challenger.cost,
    isChallengerOpen: challenger.kind === 'lowestAtLastPeriod',
  };
}
