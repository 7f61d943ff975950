import type { CheckSheet } from './check-sheet.js';
import {
  batterySheet,
  compressionSheet,
  exhaustSheet,
  headlampSheet,
} from './electrics-and-engine.check-sheets.js';
import { bearingAndLinkageSheet, steeringSheet } from './steering-and-bearings.check-sheets.js';
import { throttleHousingSheet } from './throttle-housing/throttle-housing.check-sheet.js';
import { brakeSheet, tyreSheet } from './wheels-and-brakes.check-sheets.js';

/** Check sheets that come with the catalogue. */
export const shippedCheckSheets: readonly CheckSheet[] = [
  throttleHousingSheet,
  tyreSheet,
  brakeSheet,
  steeringSheet,
  bearingAndLinkageSheet,
  batterySheet,
  compressionSheet,
  exhaustSheet,
  headlampSheet,
];
