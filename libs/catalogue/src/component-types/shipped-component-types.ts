import { battery } from './battery.component-type.js';
import type { ComponentType } from './component-type.js';
import { engine } from './engine.component-type.js';
import {
  brakeAxle,
  brakeSystem,
  headlamp,
  steering,
  tyre,
  wheelBearing,
  wheelBrake,
} from './running-gear.component-types.js';
import { throttleHousing } from './throttle-housing.component-type.js';

/** Kinds of part that come with the catalogue; a shop adds its own as data. */
export const shippedComponentTypes: readonly ComponentType[] = [
  throttleHousing,
  engine,
  battery,
  tyre,
  wheelBrake,
  brakeAxle,
  brakeSystem,
  steering,
  wheelBearing,
  headlamp,
];
