import { Body, Controller } from '@nestjs/common';
import {
  ControlChartRequest,
  ControlChartResponse,
  FunnelLimitsRequest,
  FunnelLimitsResponse,
  ObservedToExpectedRequest,
  ObservedToExpectedResponse,
  ProportionDifferenceRequest,
  ProportionDifferenceResponse,
  ProportionRequest,
  ProportionResponse,
  ShrinkageRequest,
  ShrinkageResponse,
} from '@endfloat/contracts';
import {
  calculateControlChart,
  calculateFunnelLimits,
  calculateObservedToExpected,
  calculateProportion,
  calculateProportionDifference,
  calculateShrinkage,
} from '@endfloat/workshop';
import { Calculation } from './calculation.decorator.js';

@Controller('v1/calculations')
export class SharesCalculationsController {
  @Calculation('proportions', ProportionResponse, 'A share with its interval')
  calculateProportion(@Body() request: ProportionRequest): ProportionResponse {
    return calculateProportion(request);
  }

  @Calculation('proportion-differences', ProportionDifferenceResponse, 'Difference of two shares')
  calculateProportionDifference(@Body() request: ProportionDifferenceRequest): ProportionDifferenceResponse {
    return calculateProportionDifference(request);
  }

  @Calculation('shrinkages', ShrinkageResponse, 'Shares of like groups drawn together')
  calculateShrinkage(@Body() request: ShrinkageRequest): ShrinkageResponse {
    return calculateShrinkage(request);
  }

  @Calculation('control-charts', ControlChartResponse, 'Control chart of counts, shares, rates or gaps')
  calculateControlChart(@Body() request: ControlChartRequest): ControlChartResponse {
    return calculateControlChart(request);
  }

  @Calculation('funnel-limits', FunnelLimitsResponse, 'Funnel limits about a target')
  calculateFunnelLimits(@Body() request: FunnelLimitsRequest): FunnelLimitsResponse {
    return calculateFunnelLimits(request);
  }

  @Calculation('observed-to-expected-ratios', ObservedToExpectedResponse, 'Events against what was expected')
  calculateObservedToExpected(@Body() request: ObservedToExpectedRequest): ObservedToExpectedResponse {
    return calculateObservedToExpected(request);
  }
}
