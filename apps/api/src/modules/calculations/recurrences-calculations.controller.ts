import { Body, Controller } from '@nestjs/common';
import {
  MeanCumulativeFunctionRequest,
  MeanCumulativeFunctionResponse,
  PowerLawProcessRequest,
  PowerLawProcessResponse,
  TrendTestRequest,
  TrendTestResponse,
} from '@endfloat/contracts';
import { compute, Computing, calculatePowerLawProcess, calculateTrendTests } from '@endfloat/workshop';
import { Calculation } from './calculation.decorator.js';

@Controller('v1/calculations')
export class RecurrencesCalculationsController {
  constructor(private readonly computing: Computing) {}

  @Calculation(
    'mean-cumulative-functions',
    MeanCumulativeFunctionResponse,
    'Mean cumulative function of recurring events',
  )
  calculateMeanCumulativeFunction(
    @Body() request: MeanCumulativeFunctionRequest,
  ): Promise<MeanCumulativeFunctionResponse> {
    return compute(this.computing, 'calculateMeanCumulativeFunction', request);
  }

  @Calculation('power-law-processes', PowerLawProcessResponse, 'Power-law process of a repaired system')
  calculatePowerLawProcess(@Body() request: PowerLawProcessRequest): PowerLawProcessResponse {
    return calculatePowerLawProcess(request);
  }

  @Calculation('trend-tests', TrendTestResponse, 'Trend tests of repaired systems')
  calculateTrendTests(@Body() request: TrendTestRequest): TrendTestResponse {
    return calculateTrendTests(request);
  }
}
