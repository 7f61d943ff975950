import { accepts } from './media-types.js';

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
