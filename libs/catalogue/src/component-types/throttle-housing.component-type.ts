import { quantity } from '../limits/define-limit.js';
import type { ComponentType } from './component-type.js';
import { doubt, measured, observed } from './define-characteristic.js';

/** Hand load 20 um and set-up 15 um (standard): judgement, budget of the dial indicator on a magnetic base. */
const dialDoubt = doubt(quantity('0.020', 'mm'), quantity('0.015', 'mm'));

const shaftPlay = (id: string, name: string) =>
  measured(id, name, 'length', {
    wears: 'up',
    trend: 'wear',
    lowest: '0',
    highest: '2',
    doubt: dialDoubt,
    readingsAdvised: 3,
  });

/** The throttle housing: shaft, plate stop, purge port, idle switch and linkage. */
export const throttleHousing: ComponentType = {
  id: 'throttle-housing',
  name: 'throttle housing',
  edition: 1,
  positions: ['intake'],
  characteristics: [
    observed('linkage-returns', 'plate returns to the stop every time'),
    observed('linkage-free-play', 'cable has free play at rest'),
    observed('shaft-moves-switch', 'shaft moved by hand works the idle switch'),
    shaftPlay('shaft-radial-play-lower', 'radial play at the lower end, total indicator reading'),
    shaftPlay('shaft-radial-play-upper', 'radial play at the upper end, total indicator reading'),
    shaftPlay('shaft-axial-play', 'axial play, total indicator reading'),
    // needle flicker of 0.3 kPa on a low-range gauge, rectangular: judgement
    measured('purge-port-vacuum-idle', 'vacuum at the purge port, hot idle', 'vacuum', {
      wears: 'none',
      trend: 'state',
      lowest: '0',
      highest: '80',
      doubt: doubt(quantity('0.17', 'kPa'), quantity('0', 'kPa')),
    }),
    observed('purge-port-vacuum-off-idle', 'vacuum appears at the purge port just off idle'),
    observed('stop-screw-grips-paper', 'stop screw just grips a strip of paper'),
    measured('idle-switch-closing-point', 'gap at the stop at which the idle switch changes', 'length', {
      wears: 'none',
      trend: 'drift',
      lowest: '0',
      highest: '1.5',
      doubt: doubt(quantity('0.010', 'mm'), quantity('0', 'mm')),
      resultKind: 'bladePair',
    }),
    measured(
      'idle-switch-resistance-closed',
      'resistance of the closed idle switch, leads subtracted',
      'resistance',
      {
        wears: 'up',
        trend: 'drift',
        lowest: '0',
        highest: '200',
        doubt: doubt(quantity('0.1', 'Ohm'), quantity('0', 'Ohm')),
      },
    ),
    observed('idle-switch-open-over-range', 'open idle switch reads over-range'),
    observed('idle-switch-clicks', 'idle switch clicks open just off idle and closes again'),
    observed('full-load-contact', 'full-load contact closes near full throttle'),
  ],
};
