import { Body, Controller } from '@nestjs/common';
import {
  LifeFitRequest,
  LifeFitResponse,
  LogRankTestRequest,
  LogRankTestResponse,
  SurvivalCurveRequest,
  SurvivalCurveResponse,
  TurnbullEstimateRequest,
  TurnbullEstimateResponse,
  WeibayesRequest,
  WeibayesResponse,
} from '@endfloat/contracts';
import { compute, Computing, calculateLogRankTest, calculateWeibayes } from '@endfloat/workshop';
import { Calculation } from './calculation.decorator.js';

@Controller('v1/calculations')
export class LivesCalculationsController {
  constructor(private readonly computing: Computing) {}

  @Calculation('kaplan-meier-curves', SurvivalCurveResponse, 'Kaplan-Meier curve of right-censored lives')
  calculateSurvivalCurve(@Body() request: SurvivalCurveRequest): Promise<SurvivalCurveResponse> {
    return compute(this.computing, 'calculateSurvivalCurve', request);
  }

  @Calculation(
    'turnbull-estimates',
    TurnbullEstimateResponse,
    'Survival without a distribution from inspection data',
  )
  calculateTurnbullEstimate(@Body() request: TurnbullEstimateRequest): Promise<TurnbullEstimateResponse> {
    return compute(this.computing, 'calculateTurnbullEstimate', request);
  }

  @Calculation('life-fits', LifeFitResponse, 'Weibull, lognormal or exponential distribution of lives')
  calculateLifeFit(@Body() request: LifeFitRequest): Promise<LifeFitResponse> {
    return compute(this.computing, 'calculateLifeFit', request);
  }

  @Calculation('weibayes-estimates', WeibayesResponse, 'Characteristic life for a known Weibull shape')
  calculateWeibayes(@Body() request: WeibayesRequest): WeibayesResponse {
    return calculateWeibayes(request);
  }

  @Calculation('log-rank-tests', LogRankTestResponse, 'Log-rank test of two groups of lives')
  calculateLogRankTest(@Body() request: LogRankTestRequest): LogRankTestResponse {
    return calculateLogRankTest(request);
  }
}
