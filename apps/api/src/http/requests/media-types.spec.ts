import { accepts, prefersCsv } from './media-types.js';

describe('accepts', () => {
  it.each([
    ['*/*', true],
    ['application/*', true],
    ['application/json', true],
    ['APPLICATION/JSON', true],
    ['text/html, application/json;q=0.1', true],
    ['text/html', false],
    ['application/json;q=0', false],
    ['application/json;q=0.0, */*', false],
    ['*/*;q=0, application/json', true],
    ['application/*;q=0, */*', false],
    ['application/xml, text/*', false],
    ['nonsense', false],
  ])('%s admits application/json: %s', (accept, expected) => {
    expect(accepts(accept, 'application/json')).toBe(expected);
  });
});

describe('prefersCsv', () => {
  it.each([
    [undefined, false],
    ['*/*', false],
    ['application/json', false],
    ['text/csv', true],
    ['text/csv, */*;q=0.5', true],
    ['text/csv;q=0.5, application/json', false],
    ['text/*, application/json;q=0.9', true],
    ['text/csv, application/json', false],
  ])('%s: %s', (accept, expected) => {
    expect(prefersCsv(accept)).toBe(expected);
  });
});
