import type { RenewingAction } from '../terms/option-actions.js';

/** Median, and standard deviation of the logarithm. */
export interface Spread {
  readonly median: number;
  readonly logSd: number;
}

/**
 * How wear grows over a distance. `gamma` is the law the decision model contains too. The other two it does not: wear that
 * speeds itself up as the clearance grows, and wear that comes mostly in single blows.
 */
export type WearLaw =
  | { readonly kind: 'gamma'; readonly incrementScale: number }
  | {
      readonly kind: 'accelerating';
      readonly incrementScale: number;
      /** rate = the part's rate x (atStart + gain x wear ^ exponent) */
      readonly atStart: number;
      readonly gain: number;
      readonly exponent: number;
    }
  | {
      readonly kind: 'shocks';
      readonly incrementScale: number;
      /** blows per 100,000 km, exponential sizes */
      readonly blows: number;
      /** share of the part's rate that comes in blows */
      readonly share: number;
    };

/** What an action costs and how it turns out. */
export interface ActionTerms {
  readonly price: number;
  readonly labourHours: number;
  readonly workshopDays: number;
  /** promised days to arrival; 0 is on the shelf */
  readonly promisedDays: number;
  readonly coversPart: boolean;
  /** chance that the repair comes back, whatever the cause of the complaint was */
  readonly comeback: number;
  /** wear of the part on arrival (share of the criterion) and its rate (share per 100,000 km) */
  readonly start: Spread;
  readonly rate: Spread;
}

/** A fleet whose truth is known. Wear in shares of the play that operates the switch, rates per 100,000 km, one currency. */
export interface SimulatedFleet {
  readonly id: string;
  readonly title: string;
  readonly law: WearLaw;
  readonly start: Spread;
  readonly rate: Spread;
  /** complaints per 100,000 km: what adjusting cures, and a shaft worn far beyond the criterion */
  readonly otherCauses: number;
  readonly worn: number;
  /** share of the criterion over which the worn shaft's complaints set in */
  readonly onsetWidth: number;
  /** chance that adjusting comes back, by the cause of the complaint */
  readonly adjustComeback: { readonly other: number; readonly worn: number; readonly fitting: number };
  /** standard uncertainties in mm; repeats average out, set-up is common to one inspection, bias to one instrument */
  readonly readings: { readonly repeat: number; readonly setUp: number; readonly bias: number };
  readonly functionalWidth: number;
  readonly labourPerHour: number;
  readonly downtimePerDay: number;
  readonly comebackHandling: number;
  readonly adjustHours: number;
  readonly renewals: Readonly<Record<RenewingAction, ActionTerms>>;
  /** log((actual + 1) / (promised + 1)) of a delivery, normal */
  readonly slip: { readonly mean: number; readonly sd: number };
}

/** What all fleets have in common. All of it is invented. */
export const simulatedWorld = {
  criterionMm: 0.2,
  planningDistanceKm: 120_000,
  stepKm: 2_500,
  watchWindowKm: 5_000,
  yearlyDistance: { median: 18_000, logSd: 0.3 },
  /** a van is serviced once a year, but not outside these distances */
  serviceIntervalKm: { shortest: 10_000, longest: 20_000 },
  readingsInSet: 3,
  furtherSetHours: 0.2,
  laterComplaint: { labourHours: 1, downtimeDays: 1 },
  /** deliveries of each supplier that the workshop has on record when a van comes in */
  deliveriesOnRecord: 6,
} as const;

/** TRADE figures for a dial on a magnetic base: repeats 20 um, set-up 15 um and graduation 2.9 um, instrument 8.7 um. */
const dial = (noise: number) => ({ repeat: 0.02 * noise, setUp: 0.0153 * noise, bias: 0.0087 * noise });

interface RenewalChoice {
  readonly price: readonly [reBush: number, used: number, remanufactured: number, fresh: number];
  readonly promisedDays: readonly [number, number, number, number];
  readonly comeback: readonly [number, number, number, number];
  readonly rate: Spread;
}

const renewals = ({ price, promisedDays, comeback, rate }: RenewalChoice): SimulatedFleet['renewals'] => {
  const terms = (
    place: 0 | 1 | 2 | 3,
    labourHours: number,
    workshopDays: number,
    coversPart: boolean,
    start: Spread,
    pace: number,
  ): ActionTerms => ({
    price: price[place],
    promisedDays: promisedDays[place],
    comeback: comeback[place],
    labourHours,
    workshopDays,
    coversPart,
    start,
    rate: { median: rate.median * pace, logSd: rate.logSd },
  });
  return {
    reBush: terms(0, 4, 2, false, { median: 0.15, logSd: 0.4 }, 1.3),
    fitUsed: terms(1, 1.8, 0.5, false, { median: 0.45, logSd: 0.4 }, 1),
    fitRemanufactured: terms(2, 1.8, 0.5, true, { median: 0.12, logSd: 0.4 }, 1),
    fitNew: terms(3, 1.8, 0.5, true, { median: 0.05, logSd: 0.4 }, 1),
  };
};

const usual = {
  otherCauses: 0.8,
  worn: 12,
  onsetWidth: 0.08,
  adjustComeback: { other: 0.08, worn: 0.85, fitting: 0.45 },
  functionalWidth: 0.06,
  labourPerHour: 80,
  downtimePerDay: 60,
  comebackHandling: 250,
  adjustHours: 1.2,
  slip: { mean: 0.2, sd: 0.35 },
};

/** The six fleets of the yardstick. */
export const simulatedFleets: readonly SimulatedFleet[] = [
  {
    ...usual,
    id: 'cheap-parts',
    title: 'cheap parts, short lead times, mild wear',
    law: { kind: 'gamma', incrementScale: 0.03 },
    start: { median: 0.45, logSd: 0.5 },
    rate: { median: 0.25, logSd: 0.5 },
    readings: dial(1),
    renewals: renewals({
      price: [30, 60, 160, 240],
      promisedDays: [0, 2, 1, 3],
      comeback: [0.12, 0.2, 0.07, 0.03],
      rate: { median: 0.25, logSd: 0.5 },
    }),
  },
  {
    ...usual,
    id: 'dear-parts',
    title: 'dear parts, long lead times, mild wear',
    law: { kind: 'gamma', incrementScale: 0.03 },
    start: { median: 0.5, logSd: 0.5 },
    rate: { median: 0.3, logSd: 0.6 },
    readings: dial(1),
    downtimePerDay: 75,
    renewals: renewals({
      price: [60, 260, 640, 980],
      promisedDays: [3, 8, 10, 21],
      comeback: [0.15, 0.22, 0.08, 0.04],
      rate: { median: 0.3, logSd: 0.6 },
    }),
  },
  {
    ...usual,
    id: 'noisy-readings',
    title: 'noisy readings, fast wear',
    law: { kind: 'gamma', incrementScale: 0.05 },
    start: { median: 0.5, logSd: 0.5 },
    rate: { median: 0.8, logSd: 0.5 },
    readings: dial(2),
    worn: 20,
    renewals: renewals({
      price: [35, 120, 310, 520],
      promisedDays: [1, 4, 3, 14],
      comeback: [0.1, 0.25, 0.08, 0.04],
      rate: { median: 0.8, logSd: 0.5 },
    }),
  },
  {
    ...usual,
    id: 'sharp-readings',
    title: 'sharp readings, mild wear, dear standing time',
    law: { kind: 'gamma', incrementScale: 0.02 },
    start: { median: 0.6, logSd: 0.6 },
    rate: { median: 0.2, logSd: 0.7 },
    readings: dial(0.5),
    otherCauses: 1.5,
    downtimePerDay: 110,
    renewals: renewals({
      price: [35, 140, 380, 560],
      promisedDays: [2, 4, 5, 10],
      comeback: [0.2, 0.3, 0.1, 0.05],
      rate: { median: 0.2, logSd: 0.7 },
    }),
  },
  {
    ...usual,
    id: 'accelerating-wear',
    title: 'wear that speeds itself up, long lead times',
    law: { kind: 'accelerating', incrementScale: 0.03, atStart: 0.25, gain: 1.5, exponent: 1.5 },
    start: { median: 0.4, logSd: 0.4 },
    rate: { median: 0.7, logSd: 0.5 },
    readings: dial(1),
    worn: 15,
    renewals: renewals({
      price: [50, 150, 350, 600],
      promisedDays: [2, 6, 8, 18],
      comeback: [0.12, 0.2, 0.07, 0.03],
      rate: { median: 0.7, logSd: 0.5 },
    }),
  },
  {
    ...usual,
    id: 'wear-by-blows',
    title: 'wear that comes in blows, short lead times',
    law: { kind: 'shocks', incrementScale: 0.03, blows: 1.5, share: 0.75 },
    start: { median: 0.4, logSd: 0.4 },
    rate: { median: 0.5, logSd: 0.5 },
    readings: dial(1),
    otherCauses: 0.5,
    renewals: renewals({
      price: [35, 100, 250, 420],
      promisedDays: [0, 2, 2, 7],
      comeback: [0.14, 0.22, 0.08, 0.04],
      rate: { median: 0.5, logSd: 0.5 },
    }),
  },
];
