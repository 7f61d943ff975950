import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  CorrectWarrantyClaimRequest,
  ListWarrantyClaimsQuery,
  RecordWarrantyClaimRequest,
  RecordWarrantyClaimStepRequest,
  WarrantyClaimPage,
  WarrantyClaimPath,
  WarrantyClaimResponse,
  WarrantyClaimRevisions,
} from '@endfloat/contracts';
import {
  CorrectWarrantyClaimUseCase,
  ListWarrantyClaimsUseCase,
  RecordWarrantyClaimUseCase,
  StepWarrantyClaimUseCase,
  type Caller,
} from '@endfloat/workshop';
import {
  Allow,
  alreadyThere,
  AlsoCsv,
  Answer,
  CurrentCaller,
  IfMatch,
  Pager,
  type ExpectedVersion,
} from '../../http/index.js';
import { presentWarrantyClaim, toClaimStep, toWarrantyClaim } from './warranty-claim.presenter.js';

const location = ({ id }: WarrantyClaimResponse): string => `/v1/warranty-claims/${id}`;

@Controller('v1/warranty-claims')
export class WarrantyClaimsController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordWarrantyClaimUseCase,
    private readonly correct: CorrectWarrantyClaimUseCase,
    private readonly step: StepWarrantyClaimUseCase,
    private readonly list: ListWarrantyClaimsUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'parts')
  @Answer(WarrantyClaimResponse, { created: true, summary: 'Record a claim on a warranty' })
  async createWarrantyClaim(
    @CurrentCaller() caller: Caller,
    @Body() request: RecordWarrantyClaimRequest,
  ): Promise<WarrantyClaimResponse> {
    const { id, partId, fittedPartId, jobId } = request;
    const { created, ...view } = await this.record.execute(caller, {
      id,
      identity: { partId, fittedPartId, jobId },
      claim: toWarrantyClaim(request),
    });
    return created ? presentWarrantyClaim(view) : alreadyThere(presentWarrantyClaim(view));
  }

  @Get()
  @Allow('owner', 'desk', 'parts', 'developer', 'auditor')
  @Answer(WarrantyClaimPage, { summary: 'List claims, the latest first; those still open' })
  @AlsoCsv<WarrantyClaimPage, WarrantyClaimResponse>('warranty-claims', ({ items }) => items, [
    { name: 'warrantyClaimId', value: ({ id }) => id },
    { name: 'supplier', value: ({ supplier }) => supplier },
    { name: 'giver', value: ({ giver }) => giver },
    { name: 'state', value: ({ state }) => state },
    { name: 'claimedOn', value: ({ claimedOn }) => claimedOn },
    { name: 'foundOn', value: ({ foundOn }) => foundOn },
    { name: 'cover', value: ({ cover }) => cover },
    { name: 'amount', value: ({ amount }) => amount?.amount ?? null },
    { name: 'currency', value: ({ amount }) => amount?.currency ?? null },
    { name: 'description', value: ({ description }) => description },
  ])
  async listWarrantyClaims(
    @CurrentCaller() caller: Caller,
    @Query() query: ListWarrantyClaimsQuery,
  ): Promise<WarrantyClaimPage> {
    const { isOpen, supplier, asOf } = query;
    const page = await this.list.execute(caller, {
      isOpen: isOpen === undefined ? undefined : isOpen === 'true',
      supplier,
      asOf,
      ...this.pager.read(query),
    });
    return this.pager.page(page, presentWarrantyClaim);
  }

  @Get(':warrantyClaimId')
  @Allow('owner', 'desk', 'parts', 'developer', 'auditor')
  @Answer(WarrantyClaimResponse, { summary: 'Show a claim, now or as it was known at a moment' })
  async getWarrantyClaim(
    @CurrentCaller() caller: Caller,
    @Param() { warrantyClaimId }: WarrantyClaimPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<WarrantyClaimResponse> {
    return presentWarrantyClaim(await this.list.one(caller, warrantyClaimId, asOf));
  }

  @Get(':warrantyClaimId/revisions')
  @Allow('owner', 'desk', 'parts', 'developer', 'auditor')
  @Answer(WarrantyClaimRevisions, { summary: 'Every revision of a claim, oldest first; each step is one' })
  async listWarrantyClaimRevisions(
    @CurrentCaller() caller: Caller,
    @Param() { warrantyClaimId }: WarrantyClaimPath,
  ): Promise<WarrantyClaimRevisions> {
    return { items: (await this.list.revisions(caller, warrantyClaimId)).map(presentWarrantyClaim) };
  }

  @Post(':warrantyClaimId/corrections')
  @Allow('owner', 'desk', 'parts')
  @Answer(WarrantyClaimResponse, { created: true, location, summary: 'Correct a claim' })
  async correctWarrantyClaim(
    @CurrentCaller() caller: Caller,
    @Param() { warrantyClaimId }: WarrantyClaimPath,
    @Body() request: CorrectWarrantyClaimRequest,
    @IfMatch() expected: ExpectedVersion,
  ): Promise<WarrantyClaimResponse> {
    const command = {
      id: warrantyClaimId,
      expected,
      claim: toWarrantyClaim(request),
      reason: request.reason,
    };
    return presentWarrantyClaim(await this.correct.execute(caller, command));
  }

  @Post(':warrantyClaimId/steps')
  @Allow('owner', 'desk', 'parts')
  @Answer(WarrantyClaimResponse, {
    created: true,
    location,
    summary: 'The next step of a claim: sent, accepted, refused, settled, withdrawn',
  })
  async createWarrantyClaimStep(
    @CurrentCaller() caller: Caller,
    @Param() { warrantyClaimId }: WarrantyClaimPath,
    @Body() request: RecordWarrantyClaimStepRequest,
  ): Promise<WarrantyClaimResponse> {
    const command = { id: warrantyClaimId, step: toClaimStep(request) };
    return presentWarrantyClaim(await this.step.execute(caller, command));
  }
}
