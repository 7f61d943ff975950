import { judgementTables } from '../fixtures/judgement-tables.js';
import { canonicalTablesText } from './canonical-tables-text.js';
import type { DiagnosisTables } from './diagnosis-tables.js';
import { requireUsableTables } from './require-usable-tables.js';

const changed = (change: Partial<DiagnosisTables>): DiagnosisTables => ({ ...judgementTables, ...change });

describe('requireUsableTables', () => {
  it('accepts the judgement tables', () => {
    expect(() => requireUsableTables(judgementTables)).not.toThrow();
  });

  it('refuses no cause, repeated ids and priors that do not add up', () => {
    expect(() => requireUsableTables(changed({ causes: [] }))).toThrow(/no cause/);
    expect(() =>
      requireUsableTables(changed({ causes: [...judgementTables.causes, judgementTables.causes[0]!] })),
    ).toThrow(/repeat/);
    expect(() =>
      requireUsableTables(changed({ causes: judgementTables.causes.map((c) => ({ ...c, prior: 0.1 })) })),
    ).toThrow(/add up/);
  });

  it('refuses a probability that is missing or outside 0 to 1, and minutes of zero', () => {
    const [first, ...rest] = judgementTables.checks;
    expect(() =>
      requireUsableTables(changed({ checks: [{ ...first!, positiveGivenCause: {} }, ...rest] })),
    ).toThrow(RangeError);
    expect(() => requireUsableTables(changed({ checks: [{ ...first!, minutes: 0 }, ...rest] }))).toThrow(
      /minutes/,
    );
    const symptom = {
      ...judgementTables.symptoms[0]!,
      presentGivenCause: { ...judgementTables.symptoms[0]!.presentGivenCause, 'shaft-worn': 1.1 },
    };
    expect(() => requireUsableTables(changed({ symptoms: [symptom] }))).toThrow(RangeError);
  });

  it('refuses prerequisites that are unknown or run in a circle', () => {
    const [first, second] = judgementTables.checks;
    const row = (id: string, prerequisites: readonly string[]) => ({ ...first!, id, prerequisites });
    expect(() => requireUsableTables(changed({ checks: [row('a', ['gone'])] }))).toThrow(/not among/);
    expect(() =>
      requireUsableTables(
        changed({ checks: [row('a', ['b']), { ...second!, id: 'b', prerequisites: ['a'] }] }),
      ),
    ).toThrow(/circle/);
  });
});

describe('canonicalTablesText', () => {
  it('is the same for the same content whatever the order of members, and differs when a number differs', () => {
    const reordered = JSON.parse(
      JSON.stringify(judgementTables, (_k, v: unknown) =>
        typeof v === 'object' && v !== null && !Array.isArray(v)
          ? Object.fromEntries(Object.entries(v).reverse())
          : v,
      ),
    ) as DiagnosisTables;
    expect(canonicalTablesText(reordered)).toBe(canonicalTablesText(judgementTables));
    const [first, ...rest] = judgementTables.causes;
    const other = changed({ causes: [{ ...first!, prior: 0.1200001 }, ...rest] });
    expect(canonicalTablesText(other)).not.toBe(canonicalTablesText(judgementTables));
  });
});
