import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  CorrectReadingRequest,
  EvaluateReadingRequest,
  EvaluationResponse,
  InspectionPath,
  ListReadingsQuery,
  ReadingPage,
  ReadingPath,
  ReadingResponse,
  ReadingRevisions,
  ReadingSetResponse,
  ReadingVerdicts,
  RecordReadingRequest,
  RecordReadingSetRequest,
  WithdrawReadingRequest,
} from '@endfloat/contracts';
import {
  CorrectReadingUseCase,
  EvaluateReadingUseCase,
  ListReadingsUseCase,
  notFound,
  RecordReadingsUseCase,
  ShowReadingUseCase,
  WithdrawReadingUseCase,
  type Caller,
} from '@endfloat/workshop';
import {
  Allow,
  alreadyThere,
  Answer,
  BodyLimit,
  bulkBodyLimit,
  CurrentCaller,
  IfMatch,
  Pager,
  type ExpectedVersion,
} from '../../http/index.js';
import { presentLimit } from '../limits/limit.presenter.js';
import { toEvaluationCommand, toNewReading, toReadingEntry } from './reading.command-mapper.js';
import {
  presentReading,
  presentReadingJudgement,
  presentReadingSet,
  presentReadingView,
} from './reading.presenter.js';
import { presentEvaluation } from './verdict.presenter.js';

/** Readings are entered under their inspection, one by one or as a set. */
@Controller('v1/inspections/:inspectionId')
export class InspectionReadingsController {
  constructor(private readonly record: RecordReadingsUseCase) {}

  @Post('readings')
  @Allow('owner', 'desk', 'technician')
  @Answer(ReadingResponse, {
    created: true,
    location: ({ id }: ReadingResponse) => `/v1/readings/${id}`,
    summary: 'Record a reading and judge it',
  })
  async createReading(
    @CurrentCaller() caller: Caller,
    @Param() { inspectionId }: InspectionPath,
    @Body() request: RecordReadingRequest,
  ): Promise<ReadingResponse> {
    const command = { inspectionId, readings: [toNewReading(request, caller)] };
    const { readings, created } = await this.record.execute(caller, command, () => '');
    const [view] = readings;
    if (view === undefined) throw notFound('reading');
    const answer = presentReadingView(view);
    return created ? answer : alreadyThere(answer);
  }

  @Post('reading-sets')
  @Allow('owner', 'desk', 'technician')
  @BodyLimit(bulkBodyLimit)
  @Answer(ReadingSetResponse, {
    created: true,
    location: () => '/v1/readings',
    summary: 'Record up to a thousand readings, all or none',
  })
  async createReadingSet(
    @CurrentCaller() caller: Caller,
    @Param() { inspectionId }: InspectionPath,
    @Body() request: RecordReadingSetRequest,
  ): Promise<ReadingSetResponse> {
    const command = {
      inspectionId,
      readings: request.readings.map((reading) => toNewReading(reading, caller)),
    };
    const { readings, created } = await this.record.execute(
      caller,
      command,
      (index) => `/readings/${String(index)}`,
    );
    const answer = presentReadingSet(readings);
    return created ? answer : alreadyThere(answer);
  }
}

@Controller('v1/readings')
export class ReadingsController {
  constructor(
    private readonly pager: Pager,
    private readonly list: ListReadingsUseCase,
    private readonly show: ShowReadingUseCase,
    private readonly correct: CorrectReadingUseCase,
    private readonly evaluate: EvaluateReadingUseCase,
  ) {}

  @Post('evaluations')
  @Allow('owner', 'desk', 'technician', 'developer')
  @Answer(EvaluationResponse, { summary: 'Judge readings against a limit without storing anything' })
  async evaluateReadings(
    @CurrentCaller() caller: Caller,
    @Body() request: EvaluateReadingRequest,
  ): Promise<EvaluationResponse> {
    const evaluation = await this.evaluate.execute(caller, toEvaluationCommand(request));
    return { limit: presentLimit(evaluation.limit), judgement: presentEvaluation(evaluation) };
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(ReadingPage, { summary: 'List readings, by the time they were taken' })
  async listReadings(
    @CurrentCaller() caller: Caller,
    @Query() query: ListReadingsQuery,
  ): Promise<ReadingPage> {
    const { inspectionId, fittedPartId, vehicleId, characteristic, instrumentId, asOf } = query;
    const page = await this.list.execute(caller, {
      inspectionId,
      fittedPartId,
      vehicleId,
      characteristic,
      instrumentId,
      asOf,
      ...this.pager.read(query),
    });
    return this.pager.page(page, presentReading);
  }

  @Get(':readingId')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(ReadingResponse, { summary: 'Show a reading, now or as it was known at a moment' })
  async showReading(
    @CurrentCaller() caller: Caller,
    @Param() { readingId }: ReadingPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<ReadingResponse> {
    return presentReading((await this.show.execute(caller, { id: readingId, asOf })).record);
  }

  @Get(':readingId/verdicts')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(ReadingVerdicts, { summary: 'What the readings of its check say, now or as known at a moment' })
  async listReadingVerdicts(
    @CurrentCaller() caller: Caller,
    @Param() { readingId }: ReadingPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<ReadingVerdicts> {
    return presentReadingJudgement(await this.show.execute(caller, { id: readingId, asOf }));
  }

  @Get(':readingId/revisions')
  @Allow('owner', 'desk', 'technician', 'parts', 'fleetManager', 'developer', 'auditor')
  @Answer(ReadingRevisions, { summary: 'Every revision of a reading, oldest first' })
  async listReadingRevisions(
    @CurrentCaller() caller: Caller,
    @Param() { readingId }: ReadingPath,
  ): Promise<ReadingRevisions> {
    return { items: (await this.show.revisions(caller, readingId)).map(presentReading) };
  }

  @Post(':readingId/corrections')
  @Allow('owner', 'desk', 'technician')
  @Answer(ReadingResponse, {
    created: true,
    location: ({ id }: ReadingResponse) => `/v1/readings/${id}`,
    summary: 'Correct a reading, confirm a value that looked unlikely, or bring back one that was withdrawn',
  })
  async correctReading(
    @CurrentCaller() caller: Caller,
    @Param() { readingId }: ReadingPath,
    @IfMatch() expected: ExpectedVersion,
    @Body() request: CorrectReadingRequest,
  ): Promise<ReadingResponse> {
    const { valueConfirmed, reason } = request;
    const entry = toReadingEntry(request, caller);
    const view = await this.correct.execute(caller, {
      id: readingId,
      expected,
      entry,
      valueConfirmed,
      reason,
    });
    return presentReadingView(view);
  }
}

/** A reading taken on the wrong van or part is taken back, never deleted. */
@Controller('v1/readings/:readingId')
export class ReadingWithdrawalsController {
  constructor(private readonly withdraw: WithdrawReadingUseCase) {}

  @Post('withdrawals')
  @Allow('owner', 'desk', 'technician')
  @Answer(ReadingResponse, {
    created: true,
    location: ({ id }: ReadingResponse) => `/v1/readings/${id}`,
    summary: 'Withdraw a reading that was taken on the wrong van or part',
    description:
      'Adds a revision that says so, with the reason. The history still shows the reading; verdicts are made anew without it, and no trend, assessment or next check uses it. A correction brings it back.',
  })
  async withdrawReading(
    @CurrentCaller() caller: Caller,
    @Param() { readingId }: ReadingPath,
    @IfMatch() expected: ExpectedVersion,
    @Body() { reason }: WithdrawReadingRequest,
  ): Promise<ReadingResponse> {
    return presentReadingView(await this.withdraw.execute(caller, { id: readingId, expected, reason }));
  }
}
