import type { CheckSheet } from './check-sheet.js';
import { throttleHousingSheet } from './throttle-housing/throttle-housing.check-sheet.js';

/** Check sheets that come with the catalogue. */
export const shippedCheckSheets: readonly CheckSheet[] = [throttleHousingSheet];
