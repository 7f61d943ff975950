import { DomainError } from '../errors/domain.errors.js';
import { refusing, requireColumns } from './refusing.js';

function refusalOf(run: () => unknown): DomainError {
  try {
    run();
  } catch (error) {
    if (error instanceof DomainError) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

const failing = (message: string) => () => {
  throw new RangeError(message);
};

describe('refusing', () => {
  it('points at the row that the room names', () => {
    const { code, faults } = refusalOf(() =>
      refusing(['ages', 'weights'], failing('weights[3] must be 0 or more, got -1')),
    );
    expect(code).toBe('input.invalid');
    expect(faults).toEqual([
      { pointer: '/weights/3', rule: 'precondition', detail: 'weights[3] must be 0 or more, got -1.' },
    ]);
  });

  it('points at the first member where the room names none of the request', () => {
    const { faults } = refusalOf(() => refusing(['x', 'y'], failing('interval 2 must end after its start')));
    expect(faults[0]?.pointer).toBe('/x');
  });

  it('points inside a member that holds the columns', () => {
    const { faults } = refusalOf(() => refusing(['ends'], failing('ends[0] must be finite'), '/data'));
    expect(faults[0]?.pointer).toBe('/data/ends/0');
  });

  it('hands on what the computation answers', () => {
    expect(refusing(['x'], () => 7)).toBe(7);
  });

  it('takes a full stack or another mistake of ours for no refusal', () => {
    expect(() => refusing(['x'], failing('Maximum call stack size exceeded'))).toThrow(RangeError);
    const mistake = () => {
      throw new TypeError('x is undefined');
    };
    expect(() => refusing(['x'], mistake)).toThrow(TypeError);
  });
});

describe('requireColumns', () => {
  it('points at the column that differs in length from the first, and skips the absent ones', () => {
    requireColumns({ ages: [1, 2], events: [0, 1], weights: undefined });
    const { faults } = refusalOf(() => requireColumns({ ages: [1, 2], weights: undefined, events: [1] }));
    expect(faults[0]).toMatchObject({ pointer: '/events', rule: 'length' });
  });
});
