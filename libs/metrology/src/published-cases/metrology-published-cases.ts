import { conformityCases } from './conformity-cases.js';
import { gaugeCases } from './gauge-cases.js';
import type { PublishedCase } from './published-case.js';
import { uncertaintyCases } from './uncertainty-cases.js';
import { unitCases } from './unit-cases.js';

/** Every worked example from outside that this room reproduces; read by its tests and by whoever wants to run them again. */
export const metrologyPublishedCases: readonly PublishedCase[] = [
  ...conformityCases,
  ...uncertaintyCases,
  ...unitCases,
  ...gaugeCases,
];
