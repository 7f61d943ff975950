import type { ConformanceInput } from '../verdicts/conformance-probability.js';
import { conformanceProbability } from '../verdicts/conformance-probability.js';
import { globalRisk, upperAcceptanceLimit } from '../verdicts/global-risk.js';
import { furtherReadings } from '../verdicts/further-readings.js';
import { guardBandZone, guardBandZones } from '../verdicts/guard-band.js';
import type { PublishedCase } from './published-case.js';
import { caseFigures } from './published-case.js';

function insideProbability(
  value: number,
  standardUncertainty: number,
  permitted: ConformanceInput['permitted'],
): number {
  const result = conformanceProbability({
    value,
    standardUncertainty,
    degreesOfFreedom: 'infinite',
    permitted,
    possible: { lower: null, upper: null },
    prior: null,
  });
  if (result.kind !== 'probability') throw new RangeError('no physical bound was given');
  return result.inside;
}

const closedForm = { kind: 'relative', value: 1e-9 } as const;
const integrated = { kind: 'relative', value: 1e-6 } as const;
const zoneValues = [0.25, 0.26, 0.27, 0.3, 0.31, 0.34, 0.35] as const;

/** Conformity assessment with measurement uncertainty. */
export const conformityCases: readonly PublishedCase[] = [
  {
    id: 'jcgm-106-zener-voltage',
    title: 'Breakdown voltage below an upper limit',
    source: 'JCGM 106:2012, 7.3 and 7.4, example; printed 0.92',
    provenance: ['memory', 'computed'],
    input: 'upper limit -5.40 V, reading -5.47 V, u = 0.05 V',
    figures: caseFigures({ inside: 0.919243340766 }, closedForm),
    compute: () => ({ inside: insideProbability(-5.47, 0.05, { lower: null, upper: -5.4 }) }),
  },
  {
    id: 'jcgm-106-burst-strength',
    title: 'Burst strength above a lower limit',
    source: 'JCGM 106:2012, 7.3 and 7.4, example; printed 0.99',
    provenance: ['memory', 'computed'],
    input: 'lower limit 490 kN/m2, reading 509.7, u = 8.6',
    figures: caseFigures({ inside: 0.989009547385 }, closedForm),
    compute: () => ({ inside: insideProbability(509.7, 8.6, { lower: 490, upper: null }) }),
  },
  {
    id: 'jcgm-106-global-risk',
    title: 'Global risks of accepting ball bearings by their radial error motion',
    source: 'JCGM 106:2012, 9.5.4, example',
    provenance: ['published', 'computed'],
    input:
      'true values Gamma(shape 4, rate 4 per um), upper limit 2 um, u = 0.25 um; wanted consumer risk 0.001',
    figures: caseFigures(
      {
        nonconforming: 0.0423801119917,
        consumerRisk: 0.00801911188429,
        producerRisk: 0.0174445692298,
        acceptanceLimit: 1.67182877156,
        producerRiskThere: 0.0754938761026,
      },
      integrated,
    ),
    compute: () => {
      const prior = { kind: 'gamma', shape: 4, rate: 4 } as const;
      const simple = globalRisk(prior, 0.25, { lower: null, upper: 2 }, { lower: null, upper: 2 });
      const guarded = upperAcceptanceLimit(prior, 0.25, 2, 0.001);
      if (guarded.kind !== 'estimated') throw new RangeError('the wanted risk was not reached');
      return {
        ...simple,
        acceptanceLimit: guarded.acceptanceLimit,
        producerRiskThere: guarded.risk.producerRisk,
      };
    },
  },
  {
    id: 'ilac-g8-guard-band',
    title: 'Zones of a guard band of the expanded uncertainty about an upper limit',
    source: 'ILAC-G8:09/2019, 4.2.3; values on a zone edge belong to the clear side here',
    provenance: ['published', 'computed'],
    input:
      'upper limit 0.30, u = 0.02, guard band 0.04; zones 0 pass, 1 conditional pass, 2 conditional fail, 3 fail',
    figures: [
      ...caseFigures(
        { zone0: 0, zone1: 0, zone2: 1, zone3: 1, zone4: 2, zone5: 3, zone6: 3 },
        { kind: 'absolute', value: 0 },
      ),
      ...caseFigures(
        {
          inside0: 0.993790334674,
          inside1: 0.977249868052,
          inside2: 0.933192798731,
          inside3: 0.5,
          inside4: 0.308537538726,
          inside5: 0.0227501319482,
          inside6: 0.00620966532578,
        },
        closedForm,
      ),
    ],
    compute: () => {
      const computed: Record<string, number> = {};
      zoneValues.forEach((value, index) => {
        computed[`zone${index}`] = guardBandZones.indexOf(guardBandZone(value, 0.3, 0.04, 'upper'));
        computed[`inside${index}`] = insideProbability(value, 0.02, { lower: null, upper: 0.3 });
      });
      return computed;
    },
  },
  {
    id: 'further-readings-by-hand',
    title: 'Readings still needed until a mean is inside a limit',
    source: 'JCGM 106:2012, 7.2; worked by hand',
    provenance: ['computed'],
    input:
      'upper limit 0.30, one reading 0.29, known standard deviation 0.02: 1.645 x 0.02 / sqrt(n) below 0.01 from n = 11',
    figures: caseFigures({ further: 10 }, { kind: 'absolute', value: 0 }),
    compute: () => {
      const found = furtherReadings(
        {
          value: 0.29,
          standardUncertainty: 0.02,
          degreesOfFreedom: 'infinite',
          permitted: { lower: null, upper: 0.3 },
          possible: { lower: null, upper: null },
          prior: null,
        },
        {
          kind: 'known',
          unit: '1',
          standardUncertainty: 0.02,
          effectiveDegreesOfFreedom: 'infinite',
          contributions: [],
          repeatability: { standardDeviation: 0.02, degreesOfFreedom: 'infinite', count: 1 },
          method: 'known standard deviation',
        },
        { inside: 0.95, outside: 0.05 },
      );
      if (found.kind !== 'needed') throw new RangeError('no number of readings was found');
      return { further: found.count };
    },
  },
];
