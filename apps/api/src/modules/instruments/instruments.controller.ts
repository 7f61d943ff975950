import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import {
  AsOfQuery,
  CalibrationList,
  CalibrationResponse,
  CorrectInstrumentRequest,
  InstrumentPage,
  InstrumentPath,
  InstrumentResponse,
  InstrumentRevisions,
  InstrumentConsequences,
  InstrumentVerdictList,
  ListInstrumentsQuery,
  RecordCalibrationRequest,
  RecordInstrumentRequest,
} from '@endfloat/contracts';
import {
  CorrectInstrumentUseCase,
  InstrumentVerdictsUseCase,
  RecordCalibrationUseCase,
  RecordInstrumentUseCase,
  ShowInstrumentUseCase,
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
import { presentConsequences, presentInstrumentVerdict } from './consequences.presenter.js';
import { toInstrument } from './instrument.command-mapper.js';
import {
  presentCalibration,
  presentCalibrations,
  presentInstrument,
  presentInstrumentView,
} from './instrument.presenter.js';

const mostVerdicts = 200;

@Controller('v1/instruments')
export class InstrumentsController {
  constructor(
    private readonly pager: Pager,
    private readonly record: RecordInstrumentUseCase,
    private readonly correct: CorrectInstrumentUseCase,
    private readonly show: ShowInstrumentUseCase,
  ) {}

  @Post()
  @Allow('owner', 'desk', 'technician')
  @Answer(InstrumentResponse, { created: true, summary: 'Record an instrument' })
  async createInstrument(
    @CurrentCaller() caller: Caller,
    @Body() request: RecordInstrumentRequest,
  ): Promise<InstrumentResponse> {
    const command = { id: request.id, instrument: toInstrument(request) };
    const { record, created } = await this.record.execute(caller, command);
    return created ? presentInstrument(record) : alreadyThere(presentInstrument(record));
  }

  @Get()
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(InstrumentPage, { summary: 'List instruments with the state of their calibration' })
  async listInstruments(
    @CurrentCaller() caller: Caller,
    @Query() query: ListInstrumentsQuery,
  ): Promise<InstrumentPage> {
    const { kind, asOf } = query;
    const page = await this.show.list(caller, { kind, asOf, ...this.pager.read(query) });
    return this.pager.page(page, presentInstrumentView);
  }

  @Get(':instrumentId')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(InstrumentResponse, { summary: 'Show an instrument, now or as it was known at a moment' })
  async showInstrument(
    @CurrentCaller() caller: Caller,
    @Param() { instrumentId }: InstrumentPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<InstrumentResponse> {
    return presentInstrument(await this.show.execute(caller, { id: instrumentId, asOf }));
  }

  @Get(':instrumentId/revisions')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(InstrumentRevisions, { summary: 'Every revision of an instrument, oldest first' })
  async listInstrumentRevisions(
    @CurrentCaller() caller: Caller,
    @Param() { instrumentId }: InstrumentPath,
  ): Promise<InstrumentRevisions> {
    return { items: (await this.show.revisions(caller, instrumentId)).map(presentInstrument) };
  }

  @Post(':instrumentId/corrections')
  @Allow('owner', 'desk', 'technician')
  @Answer(InstrumentResponse, {
    created: true,
    location: ({ id }: InstrumentResponse) => `/v1/instruments/${id}`,
    summary: 'Correct what is recorded about an instrument, its retirement included',
  })
  async correctInstrument(
    @CurrentCaller() caller: Caller,
    @Param() { instrumentId }: InstrumentPath,
    @IfMatch() expected: ExpectedVersion,
    @Body() request: CorrectInstrumentRequest,
  ): Promise<InstrumentResponse> {
    const { reason } = request;
    const command = { id: instrumentId, expected, instrument: toInstrument(request), reason };
    return presentInstrument(await this.correct.execute(caller, command));
  }
}

@Controller('v1/instruments/:instrumentId')
export class InstrumentStandingController {
  constructor(
    private readonly calibrations: RecordCalibrationUseCase,
    private readonly verdicts: InstrumentVerdictsUseCase,
  ) {}

  @Post('calibrations')
  @Allow('owner', 'desk', 'technician')
  @Answer(CalibrationResponse, {
    created: true,
    location: ({ instrumentId }: CalibrationResponse) => `/v1/instruments/${instrumentId}/calibrations`,
    summary: 'Record that an instrument was calibrated',
  })
  async createCalibration(
    @CurrentCaller() caller: Caller,
    @Param() { instrumentId }: InstrumentPath,
    @Body() { id, calibratedOn, dueOn, passed, certificate, note }: RecordCalibrationRequest,
  ): Promise<CalibrationResponse> {
    const calibration = { calibratedOn, dueOn, passed, certificate, note };
    const { record, created } = await this.calibrations.execute(caller, { id, instrumentId, calibration });
    return created ? presentCalibration(record) : alreadyThere(presentCalibration(record));
  }

  @Get('calibrations')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(CalibrationList, { summary: 'Calibrations of an instrument, and whether they hold' })
  async listCalibrations(
    @CurrentCaller() caller: Caller,
    @Param() { instrumentId }: InstrumentPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<CalibrationList> {
    return presentCalibrations(await this.calibrations.list(caller, instrumentId, asOf));
  }

  @Get('verdicts')
  @Allow('owner', 'desk', 'technician', 'developer', 'auditor')
  @Answer(InstrumentVerdictList, {
    summary: 'Verdicts that rested on an instrument since its last passed calibration',
  })
  async listInstrumentVerdicts(
    @CurrentCaller() caller: Caller,
    @Param() { instrumentId }: InstrumentPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<InstrumentVerdictList> {
    const found = await this.verdicts.execute(caller, { instrumentId, asOf, limit: mostVerdicts });
    return {
      lastGoodCalibrationOn: found.lastGoodCalibrationOn,
      items: found.verdicts.map(presentInstrumentVerdict),
    };
  }

  @Get('consequences')
  @Allow('owner', 'desk', 'technician', 'developer', 'auditor')
  @Answer(InstrumentConsequences, {
    summary:
      'Verdicts, assessments and decisions that rested on an instrument since its last passed calibration',
    description:
      'What to look at again where an instrument proves wrong. An assessment rests on it where its input names one of the readings; the 200 latest of each are listed.',
  })
  async listInstrumentConsequences(
    @CurrentCaller() caller: Caller,
    @Param() { instrumentId }: InstrumentPath,
    @Query() { asOf }: AsOfQuery,
  ): Promise<InstrumentConsequences> {
    const found = await this.verdicts.consequences(caller, { instrumentId, asOf, limit: mostVerdicts });
    return presentConsequences(found);
  }
}
