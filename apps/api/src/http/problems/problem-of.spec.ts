import { DomainError, errorCodes } from '@endfloat/workshop';
import { errorProblems } from './error-problems.js';
import { problemOf, problemOfRead } from './problem-of.js';
import { problemTypes } from './problem-types.js';

const failing = (members: object) => Object.assign(new Error('x'), members);

describe('problemOf', () => {
  it('knows every refusal of the workshop, keeps its code and its faults, and never takes one for our own fault', () => {
    expect(Object.keys(errorProblems).sort()).toEqual([...errorCodes].sort());
    for (const code of errorCodes) {
      const faults = [{ pointer: '/a', rule: 'b', detail: 'c' }];
      const problem = problemOf(new DomainError(code, 'text', faults));
      expect(problem.details).toMatchObject({ code, detail: 'text', faults });
      expect(problemTypes[problem.type].status).toBeLessThan(500);
    }
  });

  it.each([
    ['a refused connection', { code: 'ECONNREFUSED' }],
    ['an unreachable server, as Prisma says it', { code: 'P1001' }],
    ['a cut connection, as Prisma says it', { code: 'P1017' }],
    ['a server that is starting', { code: '57P03' }],
    [
      'the same inside an adapter error',
      { code: 'P2039', meta: { driverAdapterError: { cause: { originalCode: '57P03' } } } },
    ],
    ['a full pool', { message: 'timeout exceeded when trying to connect' }],
    ['a cancelled statement', { code: '57014' }],
    ['a read-only server', { code: '25006' }],
    ['a deadlock that did not go away', { cause: failing({ code: '40P01' }) }],
    ['several addresses, none reached', { errors: [failing({ code: 'ECONNREFUSED' })] }],
  ])('says unavailable with Retry-After for %s', (_what, members) => {
    const problem = problemOf(failing(members));
    expect([problem.type, problem.details.headers]).toEqual(['unavailable', { 'retry-after': '2' }]);
  });

  it.each([
    ['a unique violation that no repository translated', { code: '23505' }],
    ['a missing file', { code: 'ENOENT', syscall: 'open' }],
    ['a type error', {}],
  ])('says internal for %s', (_what, members) => {
    expect(problemOf(failing(members)).type).toBe('internal');
  });

  it('says internal for things that are no errors', () => {
    for (const thrown of [undefined, null, 'text', 7]) expect(problemOf(thrown).type).toBe('internal');
  });

  it('does not follow a cause that is its own cause for ever', () => {
    const circular = failing({});
    circular.cause = circular;
    expect(problemOf(circular).type).toBe('internal');
  });
});

describe('problemOfRead', () => {
  it('tells a reading request 400 where a writing one is told 422, with the same code', () => {
    const problem = problemOfRead(problemOf(new DomainError('input.invalid', 'from is after until')));
    expect([problem.type, problem.details.code, problem.details.detail]).toEqual([
      'invalid-parameter',
      'input.invalid',
      'from is after until',
    ]);
    expect(problemOfRead(problemOf(new DomainError('record.notFound', 'x'))).type).toBe('not-found');
  });
});
