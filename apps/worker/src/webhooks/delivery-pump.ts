import type {
  BeginDueDeliveriesUseCase,
  BegunAttempt,
  ConcludeDeliveryUseCase,
  WebhookSender,
} from '@endfloat/workshop';

/** Most attempts of one endpoint, and of this process, that are under way at once. */
const perEndpoint = 4;
const mostAtOnce = 64;

export interface PumpParts {
  readonly shops: () => Promise<readonly string[]>;
  readonly begin: BeginDueDeliveriesUseCase;
  readonly conclude: ConcludeDeliveryUseCase;
  readonly sender: WebhookSender;
  readonly onFault: (error: unknown) => void;
}

/**
 * Sends what is due. An endpoint that is slow holds up nobody but itself: while attempts of it are under way here, it
 * is passed over, and those of the others go on. Many of these may run at once, in as many processes.
 */
export class DeliveryPump {
  private readonly underWay = new Map<string, number>();
  private readonly running = new Set<Promise<void>>();

  constructor(private readonly parts: PumpParts) {}

  /** Begins everything that is due now; does not wait for answers. Answers how many attempts it began. */
  async round(): Promise<number> {
    let begun = 0;
    for (const shopId of await this.parts.shops()) {
      const limit = mostAtOnce - this.running.size;
      if (limit <= 0) break;
      const exceptEndpoints = [...this.underWay.keys()];
      const attempts = await this.parts.begin.execute(shopId, { perEndpoint, limit, exceptEndpoints });
      for (const attempt of attempts) this.start(shopId, attempt);
      begun += attempts.length;
    }
    return begun;
  }

  /** Resolves when nothing is under way here any more. */
  async rest(): Promise<void> {
    while (this.running.size > 0) await Promise.all(this.running);
  }

  private start(shopId: string, attempt: BegunAttempt): void {
    const { endpointId } = attempt.delivery;
    this.underWay.set(endpointId, (this.underWay.get(endpointId) ?? 0) + 1);
    const work = this.send(shopId, attempt)
      .catch(this.parts.onFault)
      .finally(() => {
        const left = (this.underWay.get(endpointId) ?? 1) - 1;
        if (left === 0) this.underWay.delete(endpointId);
        else this.underWay.set(endpointId, left);
        this.running.delete(work);
      });
    this.running.add(work);
  }

  private async send(shopId: string, attempt: BegunAttempt): Promise<void> {
    const result = await this.parts.sender.send(attempt.message);
    await this.parts.conclude.execute(shopId, attempt, result);
  }
}
