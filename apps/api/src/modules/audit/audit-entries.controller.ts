import { Controller, Get, Query } from '@nestjs/common';
import { AuditEntryPage, ListAuditEntriesQuery } from '@endfloat/contracts';
import { ListAuditEntriesUseCase, type Caller } from '@endfloat/workshop';
import { Allow, Answer, CurrentCaller, Pager } from '../../http/index.js';

@Controller('v1/audit-entries')
export class AuditEntriesController {
  constructor(
    private readonly list: ListAuditEntriesUseCase,
    private readonly pager: Pager,
  ) {}

  @Get()
  @Allow('owner', 'auditor')
  @Answer(AuditEntryPage, {
    summary: 'Who did what to which record, when and why',
    description: 'Read from the records themselves, newest first, 31 days unless told, at most 366.',
  })
  async listAuditEntries(
    @CurrentCaller() caller: Caller,
    @Query() query: ListAuditEntriesQuery,
  ): Promise<AuditEntryPage> {
    const { userId, from, until, kind, recordId } = query;
    const question = { ...this.pager.read(query), from, until, by: userId, kind, recordId };
    return this.pager.page(await this.list.execute(caller, question), (entry) => ({
      kind: entry.kind,
      recordId: entry.recordId,
      version: entry.version,
      action: entry.action,
      at: entry.at,
      by: entry.by,
      reason: entry.reason,
    }));
  }
}
