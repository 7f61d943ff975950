import { Body, Controller } from '@nestjs/common';
import {
  MeanCumulativeFunctionRequest,
  MeanCumulativeFunctionResponse,
  PowerLawProcessRequest,
  PowerLawProcessResponse,
  TrendTestRequest,
  TrendTestResponse,
} from '@endfloat/contracts';
import {
  calculateMeanCumulativeFunction,
  calculatePowerLawProcess,
  calculateTrendTests,
} from '@endfloat/workshop';
import { Calculation } from './calculation.decorator.js';

@Controller('v1/calculations')
export class RecurrencesCalculationsController {
  @Calculation(
    'mean-cumulative-functions',
    MeanCumulativeFunctionResponse,
    'Mean cumulative function of recurring events',
  )
  calculateMeanCumulativeFunction(
    @Body() request: MeanCumulativeFunctionRequest,
  ): MeanCumulativeFunctionResponse {
    return calculateMeanCumulativeFunction(request);
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
