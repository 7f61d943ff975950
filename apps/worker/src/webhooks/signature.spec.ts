import { signedHeaders } from './signature.js';

describe('signatures of messages', () => {
  /** The vector that the test suites of the reference libraries of Standard Webhooks share. */
  const message = {
    id: 'msg_p5jXN8AQM9LWM0D4loKWxJek',
    url: 'https://hooks.example.com/',
    timestamp: 1614265330,
    body: '{"test": 2432232314}',
    secrets: ['whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw'],
  };

  it('Standard Webhooks: the vector of the reference libraries', () => {
    expect(signedHeaders(message)).toEqual({
      'webhook-id': 'msg_p5jXN8AQM9LWM0D4loKWxJek',
      'webhook-timestamp': '1614265330',
      'webhook-signature': 'v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=',
    });
  });

  it('API row 52: while a secret takes the place of another, both sign, the newer first', () => {
    const other = 'whsec_C2FVsBQIhrscChlQIMV+b5sSYspob7oD';
    const both = signedHeaders({ ...message, secrets: [other, ...message.secrets] });
    const [first, second] = both['webhook-signature']!.split(' ');
    expect(second).toBe('v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=');
    expect(first).toMatch(/^v1,[A-Za-z0-9+/]{43}=$/);
    expect(first).not.toBe(second);
  });
});
