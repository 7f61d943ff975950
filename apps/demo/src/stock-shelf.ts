import {
  RecordCoreUseCase,
  RecordPartUseCase,
  RecordStockMoveUseCase,
  RecordWarrantyClaimUseCase,
  type ShopTransaction,
} from '@endfloat/workshop';
import { callerOf } from './demo-intake.js';
import { HistoryClock, SeededIds } from './history-clock.js';
import { JoinedUnitOfWork } from './joined-unit-of-work.js';
import { partsPerson } from './people.js';
import { SeededRandom } from './seeded-random.js';

const day = 86_400_000;
const componentType = 'throttle-housing';

/**
 * The shelf of the demo shop at the end of its history: a housing number with its successor, one remanufactured piece that
 * came in with a deposit, an old part that expires this week, and a claim that is open. Made once.
 */
export async function makeStockShelf(tx: ShopTransaction, end: string): Promise<void> {
  if ((await tx.parts.all({ componentType })).length > 0) return;
  const clock = new HistoryClock(new Date(Date.parse(end) - 20 * day).toISOString());
  const ids = new SeededIds(new SeededRandom(8), clock);
  const work = new JoinedUnitOfWork(tx);
  const caller = callerOf(partsPerson);
  const dayAfter = (days: number): string =>
    new Date(Date.parse(end) + days * day).toISOString().slice(0, 10);
  const addPart = async (partNumber: string, supersededById: string | null): Promise<string> => {
    const { record } = await new RecordPartUseCase(work, clock, ids).execute(caller, {
      part: {
        componentType,
        partNumber,
        title: 'throttle housing with switch',
        applications: [],
        supersededById,
        interchangesWith: [],
        alsoOrder: [],
        note: null,
      },
    });
    return record.id;
  };
  const partId = await addPart('TH-32', null);
  await addPart('TH-31', partId);
  const offer = (await tx.offers.all({ componentType })).find(
    ({ content }) => content.condition === 'remanufactured',
  );
  await new RecordStockMoveUseCase(work, clock, ids).execute(caller, {
    move: {
      partId,
      condition: 'remanufactured',
      kind: 'receive',
      quantity: 1,
      happenedAt: clock.now(),
      jobId: null,
      workLineId: null,
      reversesId: null,
      serial: 'RD-5501',
      batch: 'RD-88',
      supplier: offer?.content.supplier ?? null,
      offerId: offer?.id ?? null,
      deliveryId: null,
      unitCost: offer?.content.price ?? null,
      place: 'shelf 4',
      note: null,
    },
  });
  await new RecordCoreUseCase(work, clock, ids).execute(caller, {
    partId,
    jobId: null,
    core: {
      supplier: 'Rill & Daughters',
      componentType,
      owedSince: dayAfter(-26),
      returnBy: dayAfter(4),
      deposit: { amount: '80.00', currency: 'EUR' },
      serial: null,
      note: null,
    },
  });
  await new RecordWarrantyClaimUseCase(work, clock, ids).execute(caller, {
    identity: { partId, fittedPartId: null, jobId: null },
    claim: {
      supplier: 'Harl Breakers',
      giver: 'part',
      claimedOn: dayAfter(-22),
      foundOn: dayAfter(-24),
      months: 3,
      km: null,
      amount: { amount: '120.00', currency: 'EUR' },
      description: 'shaft worn through on arrival, found before fitting',
    },
  });
}
