import { Body, Controller } from '@nestjs/common';
import {
  AgeReplacementRequest,
  AgeReplacementResponse,
  BaseStockRequest,
  BaseStockResponse,
  EconomicLifeRequest,
  EconomicLifeResponse,
  IntermittentForecastRequest,
  IntermittentForecastResponse,
  NewsvendorRequest,
  NewsvendorResponse,
} from '@endfloat/contracts';
import {
  calculateAgeReplacement,
  calculateBaseStock,
  calculateEconomicLife,
  calculateIntermittentForecast,
  calculateNewsvendor,
} from '@endfloat/workshop';
import { Calculation } from './calculation.decorator.js';

@Controller('v1/calculations')
export class CostsCalculationsController {
  @Calculation('age-replacements', AgeReplacementResponse, 'Cheapest age of planned replacement')
  calculateAgeReplacement(@Body() request: AgeReplacementRequest): AgeReplacementResponse {
    return calculateAgeReplacement(request);
  }

  @Calculation('economic-lives', EconomicLifeResponse, 'Economic life, and a challenger')
  calculateEconomicLife(@Body() request: EconomicLifeRequest): EconomicLifeResponse {
    return calculateEconomicLife(request);
  }

  @Calculation('base-stocks', BaseStockResponse, 'Base stock for a named service measure')
  calculateBaseStock(@Body() request: BaseStockRequest): BaseStockResponse {
    return calculateBaseStock(request);
  }

  @Calculation('newsvendors', NewsvendorResponse, 'Stock for one period')
  calculateNewsvendor(@Body() request: NewsvendorRequest): NewsvendorResponse {
    return calculateNewsvendor(request);
  }

  @Calculation('intermittent-forecasts', IntermittentForecastResponse, 'Forecast of intermittent demand')
  calculateIntermittentForecast(@Body() request: IntermittentForecastRequest): IntermittentForecastResponse {
    return calculateIntermittentForecast(request);
  }
}
