import { shippedComponentTypes, throttleHousingSheet, type Check } from '@endfloat/catalogue';
import { DomainError } from '../errors/domain.errors.js';
import { positionOf, resultContent, type EnteredResult } from './entered-reading.js';

const checkNamed = (id: string): Check => {
  const check = throttleHousingSheet.checks.find((each) => each.id === id);
  if (check === undefined) throw new Error(`no check ${id}`);
  return check;
};
const read = (checkId: string, result: EnteredResult) =>
  resultContent(shippedComponentTypes, checkNamed(checkId), result, '');

function refusal(checkId: string, result: EnteredResult): DomainError {
  try {
    read(checkId, result);
  } catch (error) {
    if (error instanceof DomainError) return error;
    throw error;
  }
  throw new Error('was taken');
}

describe('resultContent', () => {
  it('keeps what was written and compares in the canonical unit, exactly', () => {
    // 1 conventional inch of mercury is 3.38638864 kPa... of vacuum, counted down from the air around.
    expect(read('purge-port-vacuum-idle', { kind: 'number', shown: '1.0', unit: "[in_i'Hg]" })).toMatchObject(
      {
        shown: '1.0',
        unit: "[in_i'Hg]",
        canonicalUnit: 'kPa',
        implausible: null,
      },
    );
    expect(
      read('shaft-radial-play-lower', { kind: 'number', shown: '7', unit: '[mil_i]' }).canonicalValue,
    ).toBe('0.1778');
  });

  it('keeps a negative vacuum out: it counts down from the air around and has no values below zero', () => {
    const error = refusal('purge-port-vacuum-idle', { kind: 'number', shown: '-3', unit: 'kPa' });
    expect(error.faults[0]).toMatchObject({ pointer: '/result/shown', rule: 'outsidePhysicalRange' });
  });

  it('refuses a unit of another kind by name of both', () => {
    const error = refusal('purge-port-vacuum-idle', { kind: 'number', shown: '3', unit: 'mm' });
    expect([error.code, error.faults[0]?.pointer]).toEqual(['unit.mismatch', '/result/unit']);
    expect(error.message).toContain('vacuum');
  });

  it('takes a pair with one blade known and none without', () => {
    const pair = { kind: 'bladePair', largestClosed: '0.10', smallestOpen: null, unit: 'mm' } as const;
    expect(read('idle-switch-closing-point', pair).pair).toEqual({
      largestClosed: '0.10',
      smallestOpen: null,
    });
    const none = refusal('idle-switch-closing-point', { ...pair, largestClosed: null });
    expect(none.faults[0]?.pointer).toBe('/result/largestClosed');
  });

  it('notes a value outside what is plausible without refusing it, the edges themselves being plausible', () => {
    const play = (shown: string) =>
      read('shaft-radial-play-lower', { kind: 'number', shown, unit: 'mm' }).implausible;
    expect(play('2')).toBeNull();
    expect(play('0')).toBeNull();
    expect(play('2.01')).toMatchObject({
      code: 'valueToConfirm',
      values: { lowest: '0', highest: '2', unit: 'mm' },
    });
    expect(play('-0.01')).toMatchObject({ code: 'valueToConfirm' });
  });

  it('refuses an answer of another shape than the check asks for', () => {
    expect(refusal('linkage-return', { kind: 'grade', grade: 'good' }).faults[0]).toMatchObject({
      pointer: '/result/kind',
      detail: 'yesNo',
    });
  });
});

describe('positionOf', () => {
  it('fills in the only place there is and refuses one that is not there', () => {
    const check = checkNamed('linkage-return');
    expect(positionOf(shippedComponentTypes, check, null, '')).toBe('intake');
    expect(() => positionOf(shippedComponentTypes, check, 'roof', '')).toThrow(DomainError);
  });
});
