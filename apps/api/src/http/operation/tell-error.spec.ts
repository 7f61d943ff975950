import { tellError } from './tell-error.js';

const canary = 'canary-8d1f';

describe('what the log keeps of an error', () => {
  it('message and places of our own errors, without the message twice', () => {
    const told = tellError(new RangeError('a share lies from 0 to 1'));
    expect(told).toMatchObject({ type: 'RangeError', message: 'a share lies from 0 to 1' });
    expect(told.stack).toMatch(/^\s+at /);
    expect(told.stack).not.toContain('a share');
  });

  it('code, table and constraint of an error of the database, and nothing that may quote a row', () => {
    const error = Object.assign(new Error(`invalid input syntax for type uuid: "${canary}"`), {
      code: '23505',
      severity: 'ERROR',
      table: 'customer',
      constraint: 'customer_pkey',
      detail: `Key (name)=(${canary}) already exists.`,
      where: canary,
    });
    const told = tellError(error);
    expect(told).toMatchObject({ code: '23505', table: 'customer', constraint: 'customer_pkey' });
    expect(JSON.stringify(told)).not.toContain(canary);
  });

  it('the same of a cause, and of what is no error its kind alone', () => {
    const cause = Object.assign(new Error(canary), { code: '22P02', severity: 'ERROR' });
    const told = tellError(new Error('failed', { cause }));
    expect(told.cause?.code).toBe('22P02');
    expect(JSON.stringify(told)).not.toContain(canary);
    expect(JSON.stringify(tellError({ secret: canary }))).not.toContain(canary);
    expect(JSON.stringify(tellError(canary))).not.toContain(canary);
  });
});
