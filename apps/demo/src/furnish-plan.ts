import {
  RecordGaugeStudyUseCase,
  RecordServicePlanItemUseCase,
  type ServicePlanItem,
  type UnitOfWork,
} from '@endfloat/workshop';
import { callerOf } from './demo-intake.js';
import type { HistoryClock, SeededIds } from './history-clock.js';
import { demoPlanItems, desk, technicians } from './people.js';

const everyVan = { actions: [], vehicleId: null, application: null, inUse: true } as const;
const items: readonly (ServicePlanItem & { readonly id: string })[] = [
  {
    ...everyVan,
    id: demoPlanItems.oil,
    name: 'engine oil and its filter',
    componentType: null,
    everyDays: 365,
    everyKm: '12000',
  },
  {
    ...everyVan,
    id: demoPlanItems.fuelFilter,
    name: 'renew the fuel filter',
    componentType: 'fuel-filter',
    actions: ['replace'],
    everyDays: 730,
    everyKm: '30000',
  },
  {
    ...everyVan,
    id: demoPlanItems.beltCheck,
    name: 'look at the timing belt',
    componentType: null,
    everyDays: null,
    everyKm: '60000',
  },
];

/** What each of two people read on three housings, twice; invented, in mm. */
const readings: readonly (readonly [string, string, string, string])[] = [
  ['0.06', '0.07', '0.06', '0.08'],
  ['0.14', '0.13', '0.15', '0.14'],
  ['0.22', '0.23', '0.22', '0.24'],
];

/** What the shop does to every van from time to time, and how well two people repeat each other with the dial. */
export async function furnishPlan(work: UnitOfWork, clock: HistoryClock, ids: SeededIds): Promise<void> {
  for (const { id, ...item } of items)
    await new RecordServicePlanItemUseCase(work, clock, ids).execute(callerOf(desk), { id, item });
  await new RecordGaugeStudyUseCase(work, clock, ids).execute(callerOf(technicians[0]), {
    study: {
      characteristic: 'shaft-radial-play-lower',
      instrumentKind: 'dialIndicator',
      studiedOn: clock.now().slice(0, 10),
      design: 'crossed',
      poolingLevel: null,
      unit: 'mm',
      measurements: readings.flatMap((row, housing) =>
        row.map((value, at) => ({
          object: `housing ${String(housing + 1)}`,
          appraiser: technicians[at < 2 ? 0 : 1].displayName,
          value: Number(value),
        })),
      ),
      inUse: true,
      note: null,
    },
  });
}
