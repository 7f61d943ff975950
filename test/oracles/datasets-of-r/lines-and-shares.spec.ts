import { crossedGaugeStudy } from '@endfloat/metrology';
import {
  betaBinomialFit,
  clopperPearsonInterval,
  countChart,
  leastSquaresThroughOrigin,
  mannKendall,
  observedToExpected,
  predictOnLine,
  sampleQuantile,
  sampleVariance,
  slopeInterval,
  theilSenSlope,
  weightedLeastSquares,
  wilsonInterval,
} from '@endfloat/statistics';
import { keptValues } from '../r/kept-values.js';
import { estimated, expectClose, expectColumn } from './close.js';

// Data and expected values by generate.R beside this file, 15 digits; all tolerances are relative.

const kept = keptValues('datasets-of-r');
const closed = 1e-10;

describe('lm of R', () => {
  it.each(['cars', 'faithful', 'women', 'mtcars weighted'])('has the line of %s', (title) => {
    const of = kept(title);
    const observations = of('x').map((x, row) => ({
      point: [x, of('y')[row]!] as const,
      weight: of('weights')[row]!,
    }));
    const fit = estimated(weightedLeastSquares(observations));
    expectColumn([fit.intercept, fit.slope], of('coefficients'), closed);
    expectColumn([fit.interceptStandardError, fit.slopeStandardError], of('errors'), closed);
    expectClose(fit.residualStandardDeviation, of('s')[0]!, closed);
    expectClose(fit.rSquared!, of('r_squared')[0]!, closed);
    const { lower, upper, pValue } = slopeInterval(fit);
    expectColumn([lower, upper], of('slope_limits'), closed);
    expectClose(pValue, of('slope_p')[0]!, 1e-8);
    const at = of('at').map((x) => predictOnLine(fit, x));
    const line = at.map((each) => each.confidenceInterval);
    const columns = [
      at.map((each) => each.fitted),
      line.map((each) => each.lower),
      line.map((each) => each.upper),
    ];
    expectColumn(columns.flat(), of('confidence'), closed);
    const next = of('at').map((x) => predictOnLine(fit, x, { confidence: 0.9 }));
    const one = next.map((each) => each.predictionInterval);
    const bands = [
      next.map((each) => each.fitted),
      one.map((each) => each.lower),
      one.map((each) => each.upper),
    ];
    expectColumn(bands.flat(), of('prediction'), closed);
    const through = estimated(leastSquaresThroughOrigin(observations));
    const { slope, slopeStandardError, residualStandardDeviation, rSquared } = through;
    expectColumn([slope, slopeStandardError, residualStandardDeviation, rSquared], of('origin'), closed);
  });
});

describe('cor.test of R, method kendall', () => {
  const cases = ['Nile', 'cars ranks', 'airquality', 'LakeHuron', 'first rivers'];

  it.each(cases)('has the Mann-Kendall test and the median slope of %s', (title) => {
    const of = kept(title);
    const points = of('x').map((x, row) => [x, of('y')[row]!] as const);
    const test = estimated(mannKendall(points));
    expect(test.score).toBe(of('score')[0]);
    expectClose(test.tauB, of('tau_b')[0]!, closed);
    expectClose(test.z, of('z')[0]!, closed);
    const isExact = !Number.isNaN(of('exact_p')[0]!);
    expect(test.method).toBe(isExact ? 'exact' : 'normalWithContinuityCorrection');
    expectClose(test.pTwoSided, of(isExact ? 'exact_p' : 'p')[0]!, 1e-8);
    const slope = estimated(theilSenSlope(points));
    expect(slope.pairs).toBe(of('pairs')[0]);
    expectClose(slope.slope, of('slope')[0]!, closed);
    expectClose(slope.intercept, of('intercept')[0]!, closed);
  });
});

describe('tests of shares and counts in R', () => {
  it('have the intervals of the admissions to six departments', () => {
    const of = kept('UCBAdmissions');
    const counts = of('successes').map((successes, row) => ({ successes, trials: of('trials')[row]! }));
    const wilson = counts.map((count) => estimated(wilsonInterval(count)));
    expectColumn(
      [...wilson.map((each) => each.lower), ...wilson.map((each) => each.upper)],
      of('wilson'),
      closed,
    );
    const exact = counts.map((count) => estimated(clopperPearsonInterval(count, 0.9)));
    expectColumn(
      [...exact.map((each) => each.lower), ...exact.map((each) => each.upper)],
      of('exact'),
      closed,
    );
    const shrunk = estimated(betaBinomialFit(counts));
    // nlm ends where its own slope, by differences, is lost in rounding.
    expectColumn([shrunk.alpha, shrunk.beta], kept('UCBAdmissions shrunk')('prior'), 1e-5);
    expectClose(shrunk.logLikelihood, kept('UCBAdmissions shrunk')('log_likelihood')[0]!, closed);
  });

  it('have the chart of great discoveries a year and the limits of observed to expected counts', () => {
    const of = kept('discoveries');
    const chart = estimated(countChart(of('counts')));
    expectClose(chart.centre, of('centre')[0]!, closed);
    expectClose(chart.places[0]!.upper, of('limits')[1]!, closed);
    expect(chart.places[0]!.lower).toBe(0);
    const poisson = kept('poisson');
    const ratios = poisson('observed').map((observed, row) =>
      estimated(observedToExpected(observed, poisson('expected')[row]!)),
    );
    const columns = [
      ratios.map((each) => each.ratio),
      ratios.map((each) => each.interval.lower),
      ratios.map((each) => each.interval.upper),
    ];
    expectColumn(columns.flat(), poisson('ratio'), closed);
  });

  it('have the quantiles and the variance of the waiting times', () => {
    const of = kept('faithful quantiles');
    const quantiles = of('probability').map((p) => estimated(sampleQuantile(of('values'), p)).quantile);
    expectColumn(quantiles, of('quantile'), closed);
    const variance = estimated(sampleVariance(of('values')));
    expectClose(variance.variance, of('variance')[0]!, closed);
  });
});

describe('aov of R', () => {
  it('has the two-way table of the breaks of warps', () => {
    const of = kept('warpbreaks');
    const study = estimated(
      crossedGaugeStudy(
        of('value').map((value, row) => ({
          object: String(of('object')[row]),
          appraiser: String(of('appraiser')[row]),
          value,
        })),
      ),
    );
    const { objects, appraisers, interaction, error } = study.sources;
    const table = [objects, appraisers, interaction, error];
    expectColumn(
      table.map((each) => each.sumOfSquares),
      of('squares'),
      closed,
    );
    expectColumn(
      table.map((each) => each.degreesOfFreedom),
      of('freedom'),
      0,
    );
    expectColumn([study.interactionTest!.f, study.interactionTest!.pValue], of('interaction'), 1e-9);
    expect(study.isInteractionPooled).toBe(false);
  });
});
