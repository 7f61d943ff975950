import fc from 'fast-check';
import { coreStandingOn, coreStepKinds, type CoreStep } from './core-standing.js';

const core = { owedSince: '2026-03-02', returnBy: '2026-04-01' };

describe('where a core stands', () => {
  it('is owed to its last day, and expired the day after', () => {
    expect(coreStandingOn(core, [], '2026-03-27')).toMatchObject({ state: 'owed', daysLeft: 5 });
    expect(coreStandingOn(core, [], '2026-04-01')).toMatchObject({ state: 'owed', daysLeft: 0 });
    expect(coreStandingOn(core, [], '2026-04-02')).toMatchObject({
      state: 'expired',
      since: '2026-04-01',
      daysLeft: -1,
    });
    expect(coreStandingOn({ ...core, returnBy: null }, [], '2030-01-01')).toMatchObject({ state: 'owed' });
  });

  it('does not expire once it was sent back, and ends with the credit', () => {
    const steps: CoreStep[] = [{ kind: 'returned', on: '2026-03-30' }];
    expect(coreStandingOn(core, steps, '2026-06-01')).toMatchObject({ state: 'returned', daysLeft: null });
    steps.push({ kind: 'accepted', on: '2026-04-10' }, { kind: 'credited', on: '2026-04-20' });
    expect(coreStandingOn(core, steps, '2026-06-01')).toMatchObject({ state: 'credited', next: [] });
  });

  it('refuses days that are none, those of its steps too', () => {
    expect(() => coreStandingOn(core, [], '2026-02-30')).toThrow(RangeError);
    expect(() => coreStandingOn(core, [{ kind: 'returned', on: 'soon' }], '2026-04-01')).toThrow(RangeError);
  });

  it('may be sent again after a refusal', () => {
    const steps: CoreStep[] = [
      { kind: 'returned', on: '2026-03-30' },
      { kind: 'refused', on: '2026-04-10' },
    ];
    expect(coreStandingOn(core, steps, '2026-06-01').next).toEqual(['returned']);
  });

  it('a credit is reached only through an acceptance, along any way that may be gone', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(), { maxLength: 12 }), (choices) => {
        const steps: CoreStep[] = [];
        for (const choice of choices) {
          const { next } = coreStandingOn(core, steps, '2026-03-10');
          if (next.length === 0) break;
          steps.push({ kind: next[choice % next.length]!, on: '2026-03-10' });
        }
        const credited = steps.findIndex(({ kind }) => kind === 'credited');
        if (credited >= 0) expect(steps[credited - 1]?.kind).toBe('accepted');
        expect(credited === -1 || credited === steps.length - 1).toBe(true);
        for (const { kind } of steps) expect(coreStepKinds).toContain(kind);
      }),
      { seed: 61, numRuns: 200 },
    );
  });
});
