import { quantity } from '../limits/define-limit.js';
import type { ComponentType } from './component-type.js';
import { doubt, measured, observed } from './define-characteristic.js';

const gas = (id: string, name: string, highest: string, repeatability: string | null) =>
  measured(id, name, 'volumeFraction', {
    wears: 'none',
    trend: 'state',
    lowest: '0',
    highest,
    ...(repeatability === null ? {} : { doubt: doubt(quantity(repeatability, '%'), quantity('0', '%')) }),
  });
const carbonMonoxide = (id: string, name: string) => gas(id, name, '15', '0.05');
const hydrocarbons = (id: string, name: string) => gas(id, name, '2', null);

/** What is measured on the engine as a whole. */
export const engine: ComponentType = {
  id: 'engine',
  name: 'engine',
  edition: 1,
  positions: ['engine'],
  characteristics: [
    observed('complaint-shown', 'complaint could be shown'),
    observed('hoses-and-codes-in-order', 'hoses, wiring and stored codes in order'),
    observed('fuel-leak', 'fuel leak seen or smelt'),
    observed('brake-servo-hose-leak', 'brake servo hose leaks'),
    observed('intake-leak', 'leak found in the intake'),
    observed('purge-pinch-changes-idle', 'idle changes when the purge hose is pinched'),
    observed('idle-air-valve-reacts', 'idle air valve reacts'),
    // needle flicker of 0.5 kPa on a full-range gauge, rectangular: judgement
    measured('manifold-vacuum', 'manifold vacuum at hot idle', 'vacuum', {
      wears: 'down',
      trend: 'drift',
      lowest: '0',
      highest: '95',
      doubt: doubt(quantity('0.29', 'kPa'), quantity('0', 'kPa')),
    }),
    measured(
      'coolant-sensor-difference',
      'indicated less measured coolant temperature',
      'temperatureDifference',
      {
        wears: 'none',
        trend: 'state',
        lowest: '-120',
        highest: '120',
        doubt: doubt(quantity('1', 'K'), quantity('0', 'K')),
      },
    ),
    measured('base-timing', 'base ignition timing before top dead centre', 'angle', {
      wears: 'none',
      trend: 'state',
      lowest: '-30',
      highest: '60',
      doubt: doubt(quantity('0.5', 'deg'), quantity('0', 'deg')),
    }),
    measured('base-idle', 'base idle speed', 'rotationalSpeed', {
      wears: 'none',
      trend: 'state',
      lowest: '200',
      highest: '4000',
      doubt: doubt(quantity('10', '{rev}/min'), quantity('0', '{rev}/min')),
    }),
    carbonMonoxide('exhaust-co-idle', 'carbon monoxide at idle'),
    carbonMonoxide('exhaust-co-raised-idle', 'carbon monoxide at raised idle'),
    hydrocarbons('exhaust-hc-idle', 'hydrocarbons at idle'),
    hydrocarbons('exhaust-hc-raised-idle', 'hydrocarbons at raised idle'),
    measured('exhaust-lambda', 'lambda at raised idle', 'ratio', {
      wears: 'none',
      trend: 'state',
      lowest: '0.5',
      highest: '2',
      doubt: doubt(quantity('0.005', '1'), quantity('0', '1')),
    }),
    measured('cylinder-compression', 'compression pressure of one cylinder', 'gaugePressure', {
      wears: 'down',
      trend: 'drift',
      lowest: '0',
      highest: '3500',
      doubt: doubt(quantity('20', 'kPa'), quantity('0', 'kPa')),
      readingsAdvised: 2,
    }),
    measured('coolant-freezing-point', 'freezing point of the coolant', 'temperature', {
      wears: 'none',
      trend: 'state',
      lowest: '-70',
      highest: '10',
      doubt: doubt(quantity('0.5', 'K'), quantity('0', 'K')),
    }),
  ],
};
