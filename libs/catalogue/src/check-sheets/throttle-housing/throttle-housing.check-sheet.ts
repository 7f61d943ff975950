import { proofPoints } from '../../proof/proof-points.js';
import type { CheckSheet } from '../check-sheet.js';
import { shippedPrecedence } from '../define-check.js';
import { finalChecks } from './final.checks.js';
import { housingChecks } from './housing.checks.js';
import { openingChecks } from './opening.checks.js';
import { searchChecks } from './search.checks.js';
import { switchChecks } from './switch.checks.js';

/**
 * The throttle-housing job in order of work: complaint, look-over, battery, vacuum, leaks and neighbours, linkage, shaft,
 * plate stop, idle switch, base idle, proof. Order and limits are common practice or judgement, each limit says which.
 */
export const throttleHousingSheet: CheckSheet = {
  id: 'throttle-housing',
  edition: 1,
  title: 'throttle housing: idle, stalling and light-throttle complaints',
  componentTypeIds: ['throttle-housing', 'engine', 'battery'],
  checks: [...openingChecks, ...searchChecks, ...housingChecks, ...switchChecks, ...finalChecks],
  proofPointIds: proofPoints.map((point) => point.id),
  precedence: shippedPrecedence,
};
