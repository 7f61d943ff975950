import { HttpProblem } from '../problems/http-problem.js';
import { readIdempotencyKey } from './idempotency-key.js';

describe('the header field Idempotency-Key', () => {
  it('is read as it is, and as a string of structured fields (RFC 9651 section 3.3.3)', () => {
    expect(readIdempotencyKey('8e03978e-40d5-43dd-bc93-6894a57f9324')).toBe(
      '8e03978e-40d5-43dd-bc93-6894a57f9324',
    );
    expect(readIdempotencyKey('"8e03978e"')).toBe('8e03978e');
    expect(readIdempotencyKey('"a\\"b\\\\c"')).toBe('a"b\\c');
  });

  it('takes 255 characters and no more', () => {
    expect(readIdempotencyKey('k'.repeat(255))).toHaveLength(255);
    expect(() => readIdempotencyKey('k'.repeat(256))).toThrow(HttpProblem);
  });

  it.each(['', '""', ' a', 'a b', 'schlüssel', '"open', 'a\tb', '"a\\b"'])('refuses %j', (header) => {
    expect(() => readIdempotencyKey(header)).toThrow(HttpProblem);
  });

  it('refuses two of them', () => {
    expect(() => readIdempotencyKey(['a', 'b'])).toThrow(HttpProblem);
  });
});
