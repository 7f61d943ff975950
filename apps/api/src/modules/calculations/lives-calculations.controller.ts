import { Body, Controller } from '@nestjs/common';
import {
  LifeFitRequest,
  LifeFitResponse,
  SurvivalCurveRequest,
  SurvivalCurveResponse,
  TurnbullEstimateRequest,
  TurnbullEstimateResponse,
  WeibayesRequest,
  WeibayesResponse,
} from '@endfloat/contracts';
import {
  calculateLifeFit,
  calculateSurvivalCurve,
  calculateTurnbullEstimate,
  calculateWeibayes,
} from '@endfloat/workshop';
import { Calculation } from './calculation.decorator.js';

@Controller('v1/calculations')
export class LivesCalculationsController {
  @Calculation('kaplan-meier-curves', SurvivalCurveResponse, 'Kaplan-Meier curve of right-censored lives')
  calculateSurvivalCurve(@Body() request: SurvivalCurveRequest): SurvivalCurveResponse {
    return calculateSurvivalCurve(request);
  }

  @Calculation(
    'turnbull-estimates',
    TurnbullEstimateResponse,
    'Survival without a distribution from inspection data',
  )
  calculateTurnbullEstimate(@Body() request: TurnbullEstimateRequest): TurnbullEstimateResponse {
    return calculateTurnbullEstimate(request);
  }

  @Calculation('life-fits', LifeFitResponse, 'Weibull, lognormal or exponential distribution of lives')
  calculateLifeFit(@Body() request: LifeFitRequest): LifeFitResponse {
    return calculateLifeFit(request);
  }

  @Calculation('weibayes-estimates', WeibayesResponse, 'Characteristic life for a known Weibull shape')
  calculateWeibayes(@Body() request: WeibayesRequest): WeibayesResponse {
    return calculateWeibayes(request);
  }
}
