import { quantity } from '../limits/define-limit.js';
import type { ComponentType } from './component-type.js';
import { doubt, measured, observed } from './define-characteristic.js';

/** Battery and charging. The voltage gives a class of charge, never a percentage. */
export const battery: ComponentType = {
  id: 'battery',
  name: 'battery and charging',
  edition: 1,
  positions: ['starter'],
  characteristics: [
    observed('battery-case-sound', 'case, terminals and clamps sound'),
    measured('battery-voltage-rested', 'open-circuit voltage, rested, loads off', 'voltage', {
      wears: 'none',
      trend: 'state',
      lowest: '6',
      highest: '15',
      doubt: doubt(quantity('0.01', 'V'), quantity('0', 'V')),
    }),
    measured('charging-voltage', 'charging voltage with loads on', 'voltage', {
      wears: 'none',
      trend: 'state',
      lowest: '8',
      highest: '18',
      doubt: doubt(quantity('0.03', 'V'), quantity('0', 'V')),
    }),
    measured(
      'ground-voltage-drop',
      'voltage drop from engine block to battery negative, loads on',
      'voltage',
      {
        wears: 'up',
        trend: 'drift',
        lowest: '-0.5',
        highest: '12',
        doubt: doubt(quantity('0.005', 'V'), quantity('0', 'V')),
      },
    ),
  ],
};
