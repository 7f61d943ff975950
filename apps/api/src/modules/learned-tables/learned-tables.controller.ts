import { Controller, Get, HttpCode, Post, Query } from '@nestjs/common';
import {
  LearnedDecisionResponse,
  LearnedDiagnosisResponse,
  LearnedTablesQuery,
  LearningRoundResponse,
} from '@endfloat/contracts';
import { LearnTablesUseCase, ShowLearnedTablesUseCase, type Caller } from '@endfloat/workshop';
import { Allow, Answer, CurrentCaller } from '../../http/index.js';
import { presentDecisionTables, presentDiagnosisTables } from './learned-tables.presenter.js';

@Controller('v1/learned-tables')
export class LearnedTablesController {
  constructor(
    private readonly learn: LearnTablesUseCase,
    private readonly show: ShowLearnedTablesUseCase,
  ) {}

  @Get('diagnosis')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(LearnedDiagnosisResponse, {
    summary: 'Tables of the diagnosis: starting value, counts and current value of every cell',
  })
  async getDiagnosisTables(
    @CurrentCaller() caller: Caller,
    @Query() { hash }: LearnedTablesQuery,
  ): Promise<LearnedDiagnosisResponse> {
    return presentDiagnosisTables(await this.show.diagnosis(caller, hash));
  }

  @Get('decision')
  @Allow('owner', 'desk', 'technician', 'parts', 'developer', 'auditor')
  @Answer(LearnedDecisionResponse, { summary: 'Tables of repair or replace, and what taught them' })
  async getDecisionTables(
    @CurrentCaller() caller: Caller,
    @Query() { hash }: LearnedTablesQuery,
  ): Promise<LearnedDecisionResponse> {
    return presentDecisionTables(await this.show.decision(caller, hash));
  }

  @Post('rounds')
  @Allow('owner')
  @HttpCode(200)
  @Answer(LearningRoundResponse, {
    summary: 'Learn the tables anew now, from the whole settled history; the worker does it by itself',
  })
  async learnTables(@CurrentCaller() caller: Caller): Promise<LearningRoundResponse> {
    const { changed } = await this.learn.execute(caller.shopId);
    return { changed: [...(changed ?? [])] };
  }
}
