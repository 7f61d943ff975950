import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  CorrectGaugeStudyRequest,
  GaugeStudyPage,
  GaugeStudyPath,
  GaugeStudyRevisions,
  ListGaugeStudiesQuery,
  RecordGaugeStudyRequest,
  StoredGaugeStudyResponse,
} from '@endfloat/contracts';
import {
  CorrectGaugeStudyUseCase,
  RecordGaugeStudyUseCase,
  ShowGaugeStudyUseCase,
  type Caller,
} from '@endfloat/workshop';
import {
  Allow,
  alreadyThere,
  Answer,
  CurrentCaller,
  IfMatch,
  Pager,
  type ExpectedVersion,
} from '../../http/index.js';
import { presentGaugeStudy, presentGaugeStudyRevision, toGaugeStudy } from './gauge-study.presenter.js';

const readers = ['owner', 'desk', 'technician', 'parts', 'developer', 'auditor'] as const;

@Controller('v1/gauge-studies')
export class GaugeStudiesController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordGaugeStudyUseCase,
    private readonly correct: CorrectGaugeStudyUseCase,
    private readonly show: ShowGaugeStudyUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'technician')
  @Answer(StoredGaugeStudyResponse, {
    created: true,
    summary: 'Record a gauge study of one characteristic with one kind of instrument',
    description:
      'The repeatability of the latest study in use feeds the doubt about readings in place of the default of the kind of part: in verdicts made from now on, in wear trends and in assessments. Verdicts made before keep what they used.',
  })
  async createGaugeStudy(
    @CurrentCaller() caller: Caller,
    @Body() request: RecordGaugeStudyRequest,
  ): Promise<StoredGaugeStudyResponse> {
    const command = { id: request.id, study: toGaugeStudy(request) };
    const { view, created } = await this.record.execute(caller, command);
    return created ? presentGaugeStudy(view) : alreadyThere(presentGaugeStudy(view));
  }

  @Get()
  @Allow(...readers)
  @Answer(GaugeStudyPage, { summary: 'List gauge studies, the latest first' })
  async listGaugeStudies(
    @CurrentCaller() caller: Caller,
    @Query() query: ListGaugeStudiesQuery,
  ): Promise<GaugeStudyPage> {
    const { characteristic, instrumentKind, asOf } = query;
    const asked = { characteristic, instrumentKind, asOf, ...this.pager.read(query) };
    return this.pager.page(await this.show.list(caller, asked), presentGaugeStudy);
  }

  @Get(':gaugeStudyId')
  @Allow(...readers)
  @Answer(StoredGaugeStudyResponse, { summary: 'Show a gauge study, now or as it was known at a moment' })
  async showGaugeStudy(
    @CurrentCaller() caller: Caller,
    @Param() { gaugeStudyId }: GaugeStudyPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<StoredGaugeStudyResponse> {
    return presentGaugeStudy(await this.show.execute(caller, { id: gaugeStudyId, asOf }));
  }

  @Get(':gaugeStudyId/revisions')
  @Allow(...readers)
  @Answer(GaugeStudyRevisions, { summary: 'Every revision of a gauge study, oldest first' })
  async listGaugeStudyRevisions(
    @CurrentCaller() caller: Caller,
    @Param() { gaugeStudyId }: GaugeStudyPath,
  ): Promise<GaugeStudyRevisions> {
    return { items: (await this.show.revisions(caller, gaugeStudyId)).map(presentGaugeStudyRevision) };
  }

  @Post(':gaugeStudyId/corrections')
  @Allow('owner', 'desk', 'technician')
  @Answer(StoredGaugeStudyResponse, {
    created: true,
    location: ({ id }: StoredGaugeStudyResponse) => `/v1/gauge-studies/${id}`,
    summary: 'Correct a gauge study, or take it out of use',
  })
  async correctGaugeStudy(
    @CurrentCaller() caller: Caller,
    @Param() { gaugeStudyId }: GaugeStudyPath,
    @IfMatch() expected: ExpectedVersion,
    @Body() request: CorrectGaugeStudyRequest,
  ): Promise<StoredGaugeStudyResponse> {
    const { reason } = request;
    const command = { id: gaugeStudyId, expected, study: toGaugeStudy(request), reason };
    return presentGaugeStudy(await this.correct.execute(caller, command));
  }
}
