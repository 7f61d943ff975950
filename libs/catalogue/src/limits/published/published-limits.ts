import { tyreLimits } from './tyre.limits.js';
import { steeringLashFederalLimits } from './steering-lash-federal.limits.js';
import { steeringLashOtherLimits } from './steering-lash-other.limits.js';
import { steeringAndBearingLimits } from './steering-and-bearing.limits.js';
import { liningLimits } from './lining.limits.js';
import { pushrodStrokeLimits } from './pushrod-stroke.limits.js';
import { brakeEfficiencyServiceLimits } from './brake-efficiency-service.limits.js';
import { brakeBalanceAndParkingLimits } from './brake-balance-and-parking.limits.js';
import { exhaustWithoutCatalystLimits } from './exhaust-without-catalyst.limits.js';
import { exhaustWithCatalystLimits } from './exhaust-with-catalyst.limits.js';
import { headlampAndBatteryLimits } from './headlamp-and-battery.limits.js';
import { engineLimits } from './engine.limits.js';
import type { PublishedLimit } from './published-limit.js';

/** All published limits of other wearing items, conflicts between places intact. */
export const publishedLimits: readonly PublishedLimit[] = [
  ...tyreLimits,
  ...steeringLashFederalLimits,
  ...steeringLashOtherLimits,
  ...steeringAndBearingLimits,
  ...liningLimits,
  ...pushrodStrokeLimits,
  ...brakeEfficiencyServiceLimits,
  ...brakeBalanceAndParkingLimits,
  ...exhaustWithoutCatalystLimits,
  ...exhaustWithCatalystLimits,
  ...headlampAndBatteryLimits,
  ...engineLimits,
];
