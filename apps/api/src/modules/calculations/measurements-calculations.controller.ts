import { Body, Controller } from '@nestjs/common';
import {
  ConformanceRequest,
  ConformanceResponse,
  GaugeStudyRequest,
  GaugeStudyResponse,
  GlobalRiskRequest,
  GlobalRiskResponse,
  UncertaintyBudgetRequest,
  UncertaintyBudgetResponse,
  UnitConversionRequest,
  UnitConversionResponse,
  VehicleNumberRequest,
  VehicleNumberResponse,
} from '@endfloat/contracts';
import {
  calculateConformance,
  calculateGaugeStudy,
  calculateGlobalRisk,
  calculateUncertaintyBudget,
  calculateUnitConversion,
  calculateVehicleNumber,
} from '@endfloat/workshop';
import { Calculation } from './calculation.decorator.js';

@Controller('v1/calculations')
export class MeasurementsCalculationsController {
  @Calculation('uncertainty-budgets', UncertaintyBudgetResponse, 'Combined and expanded uncertainty')
  calculateUncertaintyBudget(@Body() request: UncertaintyBudgetRequest): UncertaintyBudgetResponse {
    return calculateUncertaintyBudget(request);
  }

  @Calculation('conformances', ConformanceResponse, 'Probability and verdict that a limit is met')
  calculateConformance(@Body() request: ConformanceRequest): ConformanceResponse {
    return calculateConformance(request);
  }

  @Calculation('global-risks', GlobalRiskResponse, 'Consumer and producer risk over a population')
  calculateGlobalRisk(@Body() request: GlobalRiskRequest): GlobalRiskResponse {
    return calculateGlobalRisk(request);
  }

  @Calculation('gauge-studies', GaugeStudyResponse, 'Gauge repeatability and reproducibility')
  calculateGaugeStudy(@Body() request: GaugeStudyRequest): GaugeStudyResponse {
    return calculateGaugeStudy(request);
  }

  @Calculation('unit-conversions', UnitConversionResponse, 'The same quantity in another unit')
  calculateUnitConversion(@Body() request: UnitConversionRequest): UnitConversionResponse {
    return calculateUnitConversion(request);
  }

  @Calculation('vehicle-numbers', VehicleNumberResponse, 'Check digit and model year of a vehicle number')
  calculateVehicleNumber(@Body() request: VehicleNumberRequest): VehicleNumberResponse {
    return calculateVehicleNumber(request);
  }
}
