import type { QuantityKind } from '@endfloat/metrology';
import { quantity } from '../limits/define-limit.js';
import type { Characteristic, ComponentType } from './component-type.js';
import { doubt, measured, observed } from './define-characteristic.js';

const share = (id: string, name: string, highest: string): Characteristic =>
  measured(id, name, 'ratio', { wears: 'none', trend: 'state', lowest: '0', highest });

const play = (
  id: string,
  name: string,
  highest: string,
  repeatability: string,
  kind: QuantityKind = 'length',
): Characteristic =>
  measured(id, name, kind, {
    wears: 'up',
    trend: 'wear',
    lowest: '0',
    highest,
    doubt: doubt(quantity(repeatability, 'mm'), quantity('0', 'mm')),
    readingsAdvised: 2,
  });

const thickness = (id: string, name: string, highest: string): Characteristic =>
  measured(id, name, 'length', {
    wears: 'down',
    trend: 'wear',
    lowest: '0',
    highest,
    doubt: doubt(quantity('0.2', 'mm'), quantity('0', 'mm')),
    readingsAdvised: 2,
  });

const WHEELS = ['frontLeft', 'frontRight', 'rearLeft', 'rearRight'];

export const tyre: ComponentType = {
  id: 'tyre',
  name: 'tyre',
  edition: 1,
  positions: [...WHEELS, 'rearLeftInner', 'rearRightInner', 'spare'],
  characteristics: [
    measured('tread-depth', 'tread depth at the most worn point of a main groove', 'length', {
      wears: 'down',
      trend: 'wear',
      lowest: '0',
      highest: '25',
      doubt: doubt(quantity('0.1', 'mm'), quantity('0.1', 'mm')),
      readingsAdvised: 3,
    }),
    observed('tyre-structure-sound', 'no cut, bulge, exposed cord or ageing cracks'),
  ],
};

export const wheelBrake: ComponentType = {
  id: 'wheel-brake',
  name: 'wheel brake',
  edition: 1,
  positions: WHEELS,
  characteristics: [
    thickness('lining-thickness', 'thickness of lining or pad', '40'),
    thickness('lining-over-fastener', 'thickness of lining over the fastener head', '30'),
    thickness('disc-thickness', 'disc thickness at its thinnest', '60'),
    play('pushrod-stroke', 'pushrod stroke', '120', '0.8'),
    observed('brake-fluid-tight', 'no fluid leak at the wheel'),
  ],
};

export const brakeAxle: ComponentType = {
  id: 'brake-axle',
  name: 'brakes of one axle',
  edition: 1,
  positions: ['front', 'rear'],
  characteristics: [
    measured('brake-effort', 'brake effort of one wheel', 'force', {
      wears: 'none',
      trend: 'state',
      lowest: '0',
      highest: '60000',
    }),
  ],
};

export const brakeSystem: ComponentType = {
  id: 'brake-system',
  name: 'brake system',
  edition: 1,
  positions: ['vehicle'],
  characteristics: [
    share('service-brake-efficiency', 'service brake efficiency', '1.5'),
    share('parking-brake-efficiency', 'parking brake efficiency', '1.5'),
    share('secondary-brake-efficiency', 'secondary brake efficiency', '1.5'),
  ],
};

export const steering: ComponentType = {
  id: 'steering',
  name: 'steering',
  edition: 1,
  positions: ['front'],
  characteristics: [
    play('steering-wheel-lash', 'lash at the steering wheel rim', '600', '2'),
    play('steering-linkage-play', 'free movement at the tyre from the linkage', '100', '0.5'),
    measured('toe', 'total toe', 'length', {
      wears: 'none',
      trend: 'drift',
      lowest: '-50',
      highest: '50',
      doubt: doubt(quantity('0.3', 'mm'), quantity('0', 'mm')),
    }),
    observed('kingpin-grade', 'kingpin or swivel pin', 'grade'),
  ],
};

export const wheelBearing: ComponentType = {
  id: 'wheel-bearing',
  name: 'wheel bearing',
  edition: 1,
  positions: WHEELS,
  characteristics: [
    play('wheel-bearing-play', 'movement at the tyre sidewall', '60', '0.3'),
    observed('wheel-bearing-grade', 'play or noise of the bearing', 'grade'),
  ],
};

export const headlamp: ComponentType = {
  id: 'headlamp',
  name: 'headlamp',
  edition: 1,
  positions: ['left', 'right'],
  characteristics: [
    measured('headlamp-dip', 'cut-off below horizontal', 'ratio', {
      wears: 'none',
      trend: 'state',
      lowest: '-0.1',
      highest: '0.2',
      doubt: doubt(quantity('0.1', '%'), quantity('0', '%')),
    }),
  ],
};
