import { Body, Controller } from '@nestjs/common';
import {
  ConformanceRequest,
  ConformanceResponse,
  FurtherReadingCountRequest,
  FurtherReadingCountResponse,
  GaugeStudyRequest,
  GaugeStudyResponse,
  GlobalRiskRequest,
  GlobalRiskResponse,
  InstrumentUncertaintyRequest,
  InstrumentUncertaintyResponse,
  SampleSummaryRequest,
  SampleSummaryResponse,
  UncertaintyBudgetRequest,
  UncertaintyBudgetResponse,
  UnitConversionRequest,
  UnitConversionResponse,
  VehicleNumberRequest,
  VehicleNumberResponse,
} from '@endfloat/contracts';
import {
  calculateConformance,
  calculateFurtherReadings,
  calculateGaugeStudy,
  calculateGlobalRisk,
  calculateInstrumentUncertainty,
  calculateSampleSummary,
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

  @Calculation('sample-summaries', SampleSummaryResponse, 'Mean, spread and quantiles of values')
  calculateSampleSummary(@Body() request: SampleSummaryRequest): SampleSummaryResponse {
    return calculateSampleSummary(request);
  }

  @Calculation(
    'instrument-uncertainties',
    InstrumentUncertaintyResponse,
    'What the stated error of an instrument comes to at a reading',
  )
  calculateInstrumentUncertainty(
    @Body() request: InstrumentUncertaintyRequest,
  ): InstrumentUncertaintyResponse {
    return calculateInstrumentUncertainty(request);
  }

  @Calculation(
    'further-reading-counts',
    FurtherReadingCountResponse,
    'How many more readings would settle it',
  )
  calculateFurtherReadings(@Body() request: FurtherReadingCountRequest): FurtherReadingCountResponse {
    return calculateFurtherReadings(request);
  }
}
