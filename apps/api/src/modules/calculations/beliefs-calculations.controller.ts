import { Body, Controller } from '@nestjs/common';
import {
  BayesPosteriorRequest,
  BayesPosteriorResponse,
  NoisyOrRequest,
  NoisyOrResponse,
} from '@endfloat/contracts';
import { calculateBayesPosterior, calculateNoisyOr } from '@endfloat/workshop';
import { Calculation } from './calculation.decorator.js';

@Controller('v1/calculations')
export class BeliefsCalculationsController {
  @Calculation('bayes-posteriors', BayesPosteriorResponse, 'What one test says about one condition')
  calculateBayesPosterior(@Body() request: BayesPosteriorRequest): BayesPosteriorResponse {
    return calculateBayesPosterior(request);
  }

  @Calculation('noisy-or-posteriors', NoisyOrResponse, 'Causes given findings, noisy-OR')
  calculateNoisyOr(@Body() request: NoisyOrRequest): NoisyOrResponse {
    return calculateNoisyOr(request);
  }
}
