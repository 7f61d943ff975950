import type { ComebackBasisResponse, MoneyDto, RateDto } from '@endfloat/contracts';
import type { RateOutcome } from '@endfloat/reliability';
import { shopAmount, type RateBasis } from '@endfloat/workshop';

const windows =
  'A job counts once its window has elapsed (at its days, or at the sighting that showed its distance where distance can be relied on, whichever is first) and its vehicle was seen again or it came back; the repeat belongs to the first job of its chain and is not counted by itself.';

export const methods = {
  rates: {
    name: 'comebackRates',
    variant: `${windows} Interval: Wilson without continuity correction, 95 %. Cost: minutes of done lines at the full hourly rate in force when the complaint was taken, parts at their price, handling; shared among the complaints of the repeat job and among its first jobs.`,
    source: 'Wilson (1927), JASA 22:209-212; rules of counting are common practice and judgement',
  },
  comparison: {
    name: 'indirectStandardisation',
    variant: `${windows} Expected: rate of the same family of complaint and component in all jobs of the question, own jobs included. Funnel: exact binomial quantiles with interpolation around the expected rate, 95 % and 99.8 %. Ratio: exact Poisson. Shrunken: beta prior at the expected rate. Where nothing differs, one group in twenty lies outside the inner limits.`,
    source:
      'Breslow & Day (1987), vol. II, sec. 2.3; Spiegelhalter (2005), Stat. Med. 24:1185-1202; Garwood (1936), Biometrika 28:437-442; Gelman et al. (2013), sec. 5.1',
  },
  curve: {
    name: 'kaplanMeier',
    variant:
      'Days from release to the first confirmed comeback, inside its window or not, counted up to whole days; censored when the vehicle was last seen; jobs never seen again left out. Greenwood variance, limits on log(-log), 95 %.',
    source: 'Kaplan & Meier (1958), JASA 53:457-481; Kalbfleisch & Prentice (2002), 1.4',
  },
  chart: {
    name: 'controlChart',
    variant: `${windows} p and u charts by period of release with 3 sigma limits, g chart of jobs between comebacks, t chart of days between complaints with probability limits; runs of 8 on one side. The p chart is taken where a usual period expects five comebacks or more, else the g chart.`,
    source:
      'NIST/SEMATECH e-Handbook 6.3.3.2; Benneyan (2001), Health Care Manag. Sci. 4:305-318; Montgomery (2013), 7th ed., 7.3; Western Electric (1956)',
  },
  costs: {
    name: 'comebackCosts',
    variant:
      'Comebacks inside their windows, by when the complaint was received. Minutes of done lines of the repeat at the full hourly rate in force then, parts at their price, handling; shared among the complaints of the repeat job and among its first jobs, so that nothing is counted twice.',
    source: 'common practice: cost a repeat at the full door rate; shares are judgement',
  },
} as const;

export function presentBasis(
  { at, asOf, against, currency, unsettledVehicles, methodVersion }: RateBasis,
  method: keyof typeof methods,
): ComebackBasisResponse {
  const { name, variant, source } = methods[method];
  return {
    at,
    asOf,
    against: against ?? 'anybody',
    currency,
    unsettledVehicles,
    method: { name: `${name}.${String(methodVersion)}`, variant, source },
  };
}

export function presentRate(
  counts: { readonly events: number; readonly atRisk: number },
  rate: RateOutcome,
): RateDto {
  const { events, atRisk } = counts;
  if (rate.kind === 'insufficientData')
    return { kind: 'insufficientData', events, atRisk, needed: rate.needed };
  const { value, interval, confidence, intervalMethod } = rate;
  return {
    kind: 'estimated',
    value,
    events,
    atRisk,
    interval: { low: interval.lower, high: interval.upper, level: confidence, method: intervalMethod },
  };
}

/** An amount of the shop, with the decimals of its currency. */
export function presentAmount(amount: string, currency: string): MoneyDto {
  return { ...shopAmount(amount, currency) };
}
