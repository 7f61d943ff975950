import type { InstrumentProperties, Quantity } from '@endfloat/metrology';
import { uncertaintyOfMean } from '@endfloat/metrology';
import { shippedComponentTypes } from './shipped-component-types.js';
import { throttleHousing } from './throttle-housing.component-type.js';

/** Dial indicator, 0.01 mm, whole-range error 15 um (JIS B 7503:2011). */
const dial: InstrumentProperties = {
  errorModel: { kind: 'maximumPermissibleError', limit: { value: '0.015', unit: 'mm' } },
  resolution: { value: '0.01', unit: 'mm' },
};

const budgetOf = (readings: readonly Quantity[]) => {
  const { doubt } = throttleHousing.characteristics.find(({ id }) => id === 'shaft-radial-play-lower')!;
  return uncertaintyOfMean({
    readings,
    quantityKind: 'length',
    instrument: dial,
    setUp: { standardUncertainty: doubt!.setUp!, degreesOfFreedom: 'infinite' },
    priorRepeatability: {
      standardUncertainty: doubt!.repeatability!,
      degreesOfFreedom: doubt!.repeatabilityDegreesOfFreedom!,
    },
  });
};

describe('the default doubt of a dial reading of shaft play', () => {
  it('by hand: 15/sqrt(3) = 8.7, 10/sqrt(12) = 2.9, 15 and 20 um combine to 26.6 um for one reading', () => {
    expect(budgetOf([{ value: '0.14', unit: 'mm' }])).toMatchObject({
      kind: 'known',
      standardUncertainty: expect.closeTo(0.0266, 4) as number,
    });
  });

  it('by hand: a mean of three with the same scatter has 20/sqrt(3) in place of 20 um, 21.0 um together', () => {
    // Three readings 0.02 mm apart scatter by exactly 0.02 mm, so pooling leaves the repeatability at 20 um.
    const budget = budgetOf(['0.12', '0.14', '0.16'].map((value) => ({ value, unit: 'mm' })));
    expect(budget).toMatchObject({
      kind: 'known',
      standardUncertainty: expect.closeTo(0.02102, 5) as number,
    });
  });
});

describe('every measured characteristic that states a doubt', () => {
  it('states repeatability and set-up, so that a budget can be made with a known instrument', () => {
    for (const type of shippedComponentTypes) {
      for (const { id, resultKind, doubt } of type.characteristics) {
        if (doubt === null) continue;
        expect([
          type.id,
          id,
          doubt.repeatability !== null,
          doubt.setUp !== null,
          resultKind === 'yesNo',
        ]).toEqual([type.id, id, true, true, false]);
      }
    }
  });

  it('cannot be negative where it is a clearance or a thickness', () => {
    for (const type of shippedComponentTypes) {
      for (const { id, trend, quantityKind, lowestPossible } of type.characteristics) {
        if (trend === 'wear' && quantityKind === 'length')
          expect([id, lowestPossible?.value]).toEqual([id, '0']);
      }
    }
  });
});
