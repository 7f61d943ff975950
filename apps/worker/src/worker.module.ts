import {
  listShopIds,
  openDatabasePool,
  ShopConnections,
  SqlUnitOfWork,
  SystemClock,
  UuidSource,
} from '@endfloat/persistence';
import { CloseWatchWindowsUseCase } from '@endfloat/workshop';
import { runRounds, type RunningWorker } from './run-rounds.js';

export interface WorkerSettings {
  /** connection of the worker's role, which may list the shops */
  readonly url: string;
  /** pause between two rounds; a minute where absent */
  readonly pauseMs?: number;
  /** told of a round that failed; the next one goes on */
  readonly onFault?: (error: unknown) => void;
}

/** What is done without anybody asking: looks, shop by shop, which watch windows have ended. */
export async function startWorker(settings: WorkerSettings): Promise<RunningWorker> {
  const pool = openDatabasePool({ url: settings.url, size: 2, waitMs: 5000 });
  const connections = new ShopConnections(pool);
  const closeWindows = new CloseWatchWindowsUseCase(
    new SqlUnitOfWork(connections, new UuidSource()),
    new SystemClock(),
  );
  const round = async (): Promise<void> => {
    for (const shopId of await listShopIds(pool)) await closeWindows.execute(shopId);
  };
  const rounds = runRounds(round, settings.pauseMs ?? 60_000, settings.onFault ?? (() => undefined));
  await rounds.first;
  return {
    wake: () => rounds.wake(),
    stop: async () => {
      await rounds.stop();
      await connections.close();
    },
  };
}
