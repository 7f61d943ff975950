import {
  curveQuantile,
  fitLifeDistribution,
  kaplanMeier,
  lifeFamilies,
  lifeQuantile,
  logRankTest,
  meanCumulativeFunction,
  rightCensoredLives,
  turnbullEstimate,
  type CurveLimitForm,
} from '@endfloat/statistics';
import { keptValues } from '../r/kept-values.js';
import { estimated, expectClose, expectColumn } from './close.js';

// Data and expected values by generate.R beside this file, 15 digits. Closed forms are asked for to 1e-10, and what either
// side finds by a search to 1e-7, all relative.

const kept = keptValues('datasets-of-r');
const closed = 1e-10;
const searched = 1e-7;

describe('survfit of R', () => {
  const forms: readonly (readonly [CurveLimitForm, string])[] = [
    ['plain', 'plain'],
    ['log', 'log'],
    ['logLog', 'log-log'],
  ];
  const cases = ['lung', 'ovarian', 'aml', 'heart'].flatMap((title) =>
    forms.map(([form, name]) => [title, form, name] as const),
  );

  it.each(cases)('has the curve of %s with limits of the form %s', (title, limitForm, name) => {
    const of = kept(title);
    const entryAges = title === 'heart' ? of('entry') : undefined;
    const curve = estimated(kaplanMeier({ ages: of('age'), events: of('event'), entryAges }, { limitForm }));
    expectColumn(curve.ages, of('at'), 0);
    expectColumn(curve.atRisk, of('at_risk'), 0);
    expectColumn(curve.survival, of('survival'), closed);
    expectColumn(curve.standardErrors, of('se'), closed);
    expectColumn(curve.lower, of(`lower ${name}`), closed);
    expectColumn(curve.upper, of(`upper ${name}`), closed);
  });

  it.each(['lung', 'ovarian', 'aml', 'heart'])('has the quartile and the median of %s', (title) => {
    const of = kept(title);
    const entryAges = title === 'heart' ? of('entry') : undefined;
    const curve = estimated(kaplanMeier({ ages: of('age'), events: of('event'), entryAges }));
    for (const [share, column] of [
      [0.25, 'quartile'],
      [0.5, 'median'],
    ] as const) {
      const { age, lower, upper } = estimated(curveQuantile(curve, share));
      expectColumn([age, lower, upper], of(column), closed);
    }
  });
});

describe('survdiff of R', () => {
  it.each(['veteran by treatment', 'aml by maintenance'])('has the log-rank test of %s', (title) => {
    const of = kept(title);
    const groups = [0, 1].map((group) => {
      const own = (column: string): readonly number[] =>
        of(column).filter((_, row) => of('group')[row] === group);
      return { ages: own('age'), events: own('event') };
    });
    const test = logRankTest(groups[0]!, groups[1]!);
    if (test.kind !== 'tested') throw new Error(test.kind);
    expectColumn(test.observed, of('observed'), 0);
    expectColumn(test.expected, of('expected'), closed);
    expectClose(test.variance, of('variance')[0]!, closed);
    expectClose(test.chiSquare, of('chi_square')[0]!, closed);
    expectClose(test.pValue, of('p')[0]!, closed);
  });
});

describe('survreg of R', () => {
  const samples = ['lung lives', 'ovarian lives', 'capacitor lives', 'veteran lives', 'turbine', 'cracks'];
  const cases = samples.flatMap((title) => lifeFamilies.map((family) => [title, family] as const));

  it.each(cases)('has the fit of %s as %s', (title, family) => {
    const [data, of] = [kept(title), kept(`${title} ${family}`)];
    const sample = { lower: data('lower'), upper: data('upper'), weights: data('weights') };
    const fit = estimated(fitLifeDistribution(family, sample));
    expectClose(fit.mu, of('mu')[0]!, searched);
    expectClose(fit.sigma, of('sigma')[0]!, searched);
    expectClose(fit.logLikelihood, of('log_likelihood')[0]!, searched);
    const { muMu, muLogSigma, logSigmaLogSigma } = fit.covariance;
    const covariance = family === 'exponential' ? [muMu] : [muMu, muLogSigma, muLogSigma, logSigmaLogSigma];
    expectColumn(covariance, of('covariance'), 1e-6);
    const { estimate, lower, upper } = lifeQuantile(fit, 0.1);
    expectColumn([estimate, lower, upper], of('b10'), searched);
  });

  it('takes no late entry; with the likelihood written out, R has the Weibull fit of heart', () => {
    const of = kept('heart lives');
    const sample = { ages: of('age'), events: of('event'), entryAges: of('entry') };
    const fit = estimated(fitLifeDistribution('weibull', rightCensoredLives(sample)));
    // nlm ends where its own slope, by differences, is lost in rounding: about 1e-7.
    expectClose(fit.mu, of('mu')[0]!, 1e-6);
    expectClose(fit.sigma, of('sigma')[0]!, 1e-6);
    expectClose(fit.logLikelihood, of('log_likelihood')[0]!, 1e-10);
  });
});

describe('parts found cracked at inspections', () => {
  it('have the shares of a multinomial distribution when no distribution of lives is assumed', () => {
    const [data, of] = [kept('cracks'), kept('cracks without a distribution')];
    const sample = { lower: data('lower'), upper: data('upper'), weights: data('weights') };
    const curve = estimated(turnbullEstimate(sample));
    expectColumn(curve.survival.slice(0, -1), of('survival'), searched);
    expectColumn(curve.standardErrors.slice(0, -1), of('se'), searched);
  });
});

describe('cumulative hazard of survfit with id and cluster, in R', () => {
  it.each(['bladder2', 'cgd'])('has the mean cumulative function of %s with its robust errors', (title) => {
    const of = kept(title);
    const rows = of('event').flatMap((event, row) => (event === 1 ? [row] : []));
    const curve = estimated(
      meanCumulativeFunction({
        eventUnits: rows.map((row) => of('unit')[row]!),
        eventAges: rows.map((row) => of('stop')[row]!),
        spanUnits: of('unit'),
        spanStarts: of('start'),
        spanEnds: of('stop'),
      }),
    );
    expectColumn(curve.ages, of('at'), 0);
    expectColumn(curve.atRisk, of('at_risk'), 0);
    expectColumn(curve.mean, of('mean'), closed);
    expectColumn(curve.standardErrors, of('se'), closed);
  });
});
