import { Body, Controller } from '@nestjs/common';
import {
  MannKendallResponse,
  MixedLineRequest,
  MixedLineResponse,
  PairedPointsRequest,
  StraightLineRequest,
  StraightLineResponse,
  TheilSenRequest,
  TheilSenResponse,
} from '@endfloat/contracts';
import {
  calculateMannKendallTest,
  calculateMixedLine,
  calculateStraightLine,
  calculateTheilSenSlope,
} from '@endfloat/workshop';
import { Calculation } from './calculation.decorator.js';

@Controller('v1/calculations')
export class LinesCalculationsController {
  @Calculation(
    'straight-lines',
    StraightLineResponse,
    'Least-squares line with prediction and inverse prediction',
  )
  calculateStraightLine(@Body() request: StraightLineRequest): StraightLineResponse {
    return calculateStraightLine(request);
  }

  @Calculation('theil-sen-slopes', TheilSenResponse, 'Theil-Sen slope')
  calculateTheilSenSlope(@Body() request: TheilSenRequest): TheilSenResponse {
    return calculateTheilSenSlope(request);
  }

  @Calculation('mann-kendall-tests', MannKendallResponse, 'Mann-Kendall test of a trend')
  calculateMannKendallTest(@Body() request: PairedPointsRequest): MannKendallResponse {
    return calculateMannKendallTest(request);
  }

  @Calculation('mixed-lines', MixedLineResponse, 'Lines of several units by restricted maximum likelihood')
  calculateMixedLine(@Body() request: MixedLineRequest): MixedLineResponse {
    return calculateMixedLine(request);
  }
}
