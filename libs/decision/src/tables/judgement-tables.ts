import type { ComebackTable, LearnedTables } from './learned-tables.js';
import type { ComebackCoefficient } from './comeback-coefficients.js';
import { comebackCoefficients } from './comeback-coefficients.js';

/** Mean and standard deviation of each coefficient, log odds; JUDGEMENT throughout. */
const coefficients: Readonly<Record<ComebackCoefficient, readonly [mean: number, sd: number]>> = {
  // A complaint that is left is still there; chance 0.9 well within the criterion.
  leave: [2.3, 0.7],
  // Adjusting: the causes say it (0.10 well within the criterion, 0.60 at 1.25 of it), outcomes correct it; the level makes
  // up for the steps, which can only rise.
  adjust: [-0.2, 0.5],
  reBush: [-2.385, 0.7],
  fitUsed: [-1.344, 0.54],
  fitRemanufactured: [-2.7, 0.8],
  fitNew: [-3.62, 1],
  wearBelowCriterion: [0, 0.3],
  wearAtCriterion: [0, 0.3],
  wearAboveCriterion: [0, 0.3],
  // What the functional criterion says of the wear is in the belief about the wear; here only what goes beyond it.
  functionalPositive: [0, 0.4],
  functionalNegative: [0, 0.4],
  earlierComebacksKept: [0, 0.2],
  earlierComebacksRenewed: [0.4, 0.3],
  arrivalWear: [1.5, 0.7],
  newOldStock: [0, 0.5],
  rebuilt: [0.2, 0.5],
  reconditioned: [0.3, 0.5],
};

const comeback: ComebackTable = {
  mean: comebackCoefficients.map((name) => coefficients[name][0]),
  covariance: comebackCoefficients.map((row) =>
    comebackCoefficients.map((column) => (row === column ? coefficients[row][1] * coefficients[row][1] : 0)),
  ),
  taught: { comebacks: 0, held: 0, running: 0 },
};

/**
 * Numbers to start from before anything has been counted. All of them are JUDGEMENT: comeback chances from the trade's
 * worked example (adjusting 0.10 within and 0.60 over the limit, re-bushed 0.10, used 0.22, remanufactured 0.08, new 0.04),
 * each worth about twenty jobs; wear, complaints and lead times invented. `hash` is empty: whoever stores tables fills it.
 */
export const judgementTables: LearnedTables = {
  version: 'judgement-2',
  hash: '',
  comeback,
  // 0.65 is what makes 0.60 at 1.25 of the criterion with the complaint rates below.
  adjusting: { otherCauses: 0.1, wornPart: 0.65 },
  wear: {
    fittedPart: { start: { median: 0.6, logSd: 0.6 }, rate: { median: 0.4, logSd: 0.6 }, parts: 0 },
    byAction: {
      reBush: { start: { median: 0.12, logSd: 0.5 }, rate: { median: 0.5, logSd: 0.6 }, parts: 0 },
      fitUsed: { start: { median: 0.4, logSd: 0.5 }, rate: { median: 0.4, logSd: 0.6 }, parts: 0 },
      fitRemanufactured: { start: { median: 0.12, logSd: 0.5 }, rate: { median: 0.4, logSd: 0.6 }, parts: 0 },
      fitNew: { start: { median: 0.05, logSd: 0.5 }, rate: { median: 0.4, logSd: 0.6 }, parts: 0 },
    },
    incrementScale: 0.04,
  },
  complaints: { otherCausesRate: 1, wornRate: 10, onsetWidth: 0.1 },
  functionalWidth: 0.08,
  leadTime: { meanLogSlip: 0.2, betweenSuppliersSd: 0.25, withinSupplierSd: 0.35 },
};
