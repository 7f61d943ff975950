import { costCases } from './cost-cases.js';
import { countCases } from './count-cases.js';
import { lifeCases } from './life-cases.js';
import { lineCases } from './line-cases.js';
import { recurrenceCases } from './recurrence-cases.js';
import { summaryCases } from './summary-cases.js';
import { survivalCases } from './survival-cases.js';
import type { StatisticsPublishedCase } from './published-case.js';

/** Every worked example from outside that this room reproduces; read by its tests and by whoever wants to run them again. */
export const statisticsPublishedCases: readonly StatisticsPublishedCase[] = [
  ...survivalCases,
  ...lifeCases,
  ...recurrenceCases,
  ...lineCases,
  ...countCases,
  ...costCases,
  ...summaryCases,
];
