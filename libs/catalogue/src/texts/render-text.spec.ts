import { notJudgedReasons } from '@endfloat/metrology';
import { isTextCode, renderText } from './render-text.js';
import { textCodes, textTemplates } from './text-templates.js';

describe('renderText', () => {
  it('fills in what is given', () => {
    expect(renderText('data.insufficient', { needed: 3, got: 1 })).toBe(
      'Not enough data: 3 are needed, 1 is there.',
    );
  });

  it('leaves out a bracketed part whose value is missing or empty', () => {
    expect(renderText('release.pointNotTested', { point: 'Hot restart' })).toBe(
      'Hot restart was not tested.',
    );
    expect(renderText('release.pointNotTested', { point: 'Hot restart', reason: 'rain', date: '' })).toBe(
      'Hot restart was not tested, because rain.',
    );
    expect(
      renderText('release.pointNotTested', { point: 'Hot restart', reason: 'rain', date: '4 May' }),
    ).toBe('Hot restart was not tested, because rain; it will be looked at again on 4 May.');
  });

  it('counts in the singular for one, in the plural for any other number', () => {
    const text = (vans: string) => renderText('order.vansReachLimit', { vans, days: 9, expected: '0.9' });
    expect([text('1'), text('2'), text('0')].map((each) => each.split(' the')[0])).toEqual([
      '1 van reaches',
      '2 vans reach',
      '0 vans reach',
    ]);
  });

  it('joins lists by "and"', () => {
    expect(renderText('release.proofMissing', { points: ['visual'] })).toBe('Proof is missing: visual.');
    expect(renderText('release.proofMissing', { points: ['visual', 'linkage', 'cold start'] })).toBe(
      'Proof is missing: visual, linkage and cold start.',
    );
  });

  it('puts values in as they are, also when they look like a template', () => {
    expect(renderText('finding.advisory', { finding: '{cause} [x]' })).toBe(
      'Not failed, but worth watching: {cause} [x].',
    );
  });

  it('refuses a sentence with a hole in it, and numbers that are none', () => {
    expect(() => renderText('cause.established')).toThrow(/needs cause/);
    expect(() => renderText('cause.established', { cause: '' })).toThrow(RangeError);
    expect(() => renderText('data.insufficient', { needed: Number.NaN, got: 1 })).toThrow(RangeError);
  });

  it('renders every code with all its names filled in, and leaves no brace or bracket behind', () => {
    for (const code of textCodes) {
      const names = [...textTemplates[code].matchAll(/\{([a-zA-Z]+)(?:\?|\|[^{}]*)?\}/g)].map(
        (match) => match[1]!,
      );
      const text = renderText(code, Object.fromEntries(names.map((name) => [name, 'x'])));
      expect(text).toMatch(/^[A-Zx][^{}[\]]*\.$/);
    }
  });

  it('has a sentence for every reason for which nothing is judged', () => {
    for (const reason of notJudgedReasons)
      expect([reason, isTextCode(`notJudged.${reason}`)]).toEqual([reason, true]);
    expect(isTextCode('toString')).toBe(false);
  });
});
