import { Controller, Get, Query } from '@nestjs/common';
import { EventStretchResponse, ListEventsQuery } from '@endfloat/contracts';
import { cloudEventOf, ReadEventsUseCase, type Caller } from '@endfloat/workshop';
import { Allow, Answer, CurrentCaller, Pager } from '../../http/index.js';

@Controller('v1/events')
export class EventsController {
  constructor(
    private readonly read: ReadEventsUseCase,
    private readonly pager: Pager,
  ) {}

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(EventStretchResponse, {
    summary: 'Read what happened since a place in the feed',
    description:
      'Nothing is missed by who goes on from `after`, and events of one record come in the order in which they ' +
      'happened to it. Events of different records come in the order in which their transactions ended.',
  })
  async listEvents(
    @CurrentCaller() caller: Caller,
    @Query() query: ListEventsQuery,
  ): Promise<EventStretchResponse> {
    const { limit, after } = this.pager.read({ pageSize: query.pageSize, cursor: query.after });
    const { events, next, hasMore } = await this.read.execute(caller, { after: after?.sortValue, limit });
    return {
      events: events.map((event) => cloudEventOf(caller.shopId, event)),
      after: this.pager.cursor({ sortValue: next, id: '' }),
      hasMore,
    };
  }
}
