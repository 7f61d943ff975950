import {
  AesSealer,
  listShopIds,
  openDatabasePool,
  Sha256Fingerprint,
  SealedWebhookTerms,
  ShopConnections,
  SqlUnitOfWork,
  SystemChance,
  SystemClock,
  UuidSource,
} from '@endfloat/persistence';
import {
  BeginDueDeliveriesUseCase,
  ConcludeDeliveryUseCase,
  EraseExpiredAnswersUseCase,
  LearnTablesUseCase,
  SettleJobsUseCase,
  type Chance,
  ComputingHere,
  type Clock,
  type Computing,
} from '@endfloat/workshop';
import { LearningRounds } from './learning-rounds.js';
import { runRounds, type RunningWorker } from './run-rounds.js';
import { DeliveryPump } from './webhooks/delivery-pump.js';
import { HttpWebhookSender, type SenderSettings } from './webhooks/http-sender.js';

export interface WorkerSettings {
  /** connection of the worker's role, which may list the shops */
  readonly url: string;
  /** opens what the API has sealed */
  readonly sealingSecret: string;
  /** webhooks may go to this machine, for trials */
  readonly webhookLoopback?: boolean;
  /** pause between two rounds; a minute where absent */
  readonly pauseMs?: number;
  /** pause between two looks for what is due to be delivered; a second where absent */
  readonly deliveryPauseMs?: number;
  /** told of a round that failed; the next one goes on */
  readonly onFault?: (error: unknown) => void;
  /** threads for what takes long; on the spot where absent, as in a process of its own */
  readonly computing?: Computing;
  /** what drills and tests replace */
  readonly parts?: {
    readonly clock?: Clock;
    readonly chance?: Chance;
    readonly sending?: Omit<SenderSettings, 'allowsLoopback'>;
  };
}

/**
 * What is done without anybody asking: settles, shop by shop, what is known of released jobs, erases stored answers that
 * have expired, learns from what has run its time, and tells webhooks what happened.
 */
export async function startWorker(settings: WorkerSettings): Promise<RunningWorker> {
  const pool = openDatabasePool({ url: settings.url, size: 4, waitMs: 5000 });
  const connections = new ShopConnections(pool);
  const work = new SqlUnitOfWork(connections, new UuidSource());
  const clock = settings.parts?.clock ?? new SystemClock();
  const onFault = settings.onFault ?? (() => undefined);
  const settleJobs = new SettleJobsUseCase(work);
  const eraseAnswers = new EraseExpiredAnswersUseCase(work, clock);
  const learning = new LearningRounds(
    new LearnTablesUseCase(work, clock, new Sha256Fingerprint(), settings.computing ?? new ComputingHere()),
    clock,
  );
  const shops = () => listShopIds(pool);
  const round = async (): Promise<void> => {
    for (const shopId of await shops()) {
      await settleJobs.execute(shopId);
      await eraseAnswers.execute(shopId);
      await learning.round(shopId);
    }
  };
  const pump = openPump(settings, work, shops);
  const rounds = runRounds(round, settings.pauseMs ?? 60_000, onFault);
  const deliveries = runRounds(
    async () => {
      await pump.round();
    },
    settings.deliveryPauseMs ?? 1000,
    onFault,
  );
  await rounds.first;
  return {
    wake: () => {
      rounds.wake();
      deliveries.wake();
    },
    stop: async () => {
      await Promise.all([rounds.stop(), deliveries.stop()]);
      await pump.rest();
      await connections.close();
    },
  };
}

function openPump(
  settings: WorkerSettings,
  work: SqlUnitOfWork,
  shops: () => Promise<readonly string[]>,
): DeliveryPump {
  const { parts = {}, webhookLoopback = false } = settings;
  const clock = parts.clock ?? new SystemClock();
  const terms = new SealedWebhookTerms(new AesSealer(settings.sealingSecret), webhookLoopback);
  return new DeliveryPump({
    shops,
    begin: new BeginDueDeliveriesUseCase(work, clock, terms),
    conclude: new ConcludeDeliveryUseCase(work, clock, parts.chance ?? new SystemChance()),
    sender: new HttpWebhookSender({ ...parts.sending, allowsLoopback: webhookLoopback }),
    onFault: settings.onFault ?? (() => undefined),
  });
}

/** One pump on its own, whose rounds are begun by hand: for drills that count deliveries. */
export function openDeliveries(settings: Omit<WorkerSettings, 'pauseMs' | 'deliveryPauseMs'>): {
  round(): Promise<number>;
  rest(): Promise<void>;
  close(): Promise<void>;
} {
  const pool = openDatabasePool({ url: settings.url, size: 4, waitMs: 5000 });
  const connections = new ShopConnections(pool);
  const pump = openPump(settings, new SqlUnitOfWork(connections, new UuidSource()), () => listShopIds(pool));
  return {
    round: () => pump.round(),
    rest: () => pump.rest(),
    close: async () => {
      await pump.rest();
      await connections.close();
    },
  };
}
