import { fleetRecurrence, type FleetRecurrence } from '@endfloat/reliability';
import { notFound } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';

export interface FleetRecurrenceQuery {
  readonly componentType: string;
  /** vehicles this customer owns at `until`; all vehicles of the shop where absent */
  readonly customerId?: string | undefined;
  /** end of the observation; now where absent */
  readonly until?: string | undefined;
  readonly asOf?: string | undefined;
}

/** How often parts of one kind are replaced per vehicle by age, over a fleet that joins, leaves and goes unseen. */
export class ShowFleetRecurrenceUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async execute(caller: Caller, query: FleetRecurrenceQuery): Promise<FleetRecurrence> {
    if (
      caller.customerId !== undefined &&
      query.customerId !== undefined &&
      query.customerId !== caller.customerId
    ) {
      throw notFound('customer');
    }
    const customerId = caller.customerId ?? query.customerId;
    const until = query.until ?? this.clock.now();
    const histories = await this.work.read(caller.shopId, (tx) =>
      tx.fleetHistory.replacements({
        componentType: query.componentType,
        customerId,
        until,
        asOf: query.asOf,
      }),
    );
    return fleetRecurrence(histories);
  }
}
