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
import { compute, Computing, calculateStraightLine } from '@endfloat/workshop';
import { Calculation } from './calculation.decorator.js';

@Controller('v1/calculations')
export class LinesCalculationsController {
  constructor(private readonly computing: Computing) {}

  @Calculation(
    'straight-lines',
    StraightLineResponse,
    'Least-squares line with prediction and inverse prediction',
  )
  calculateStraightLine(@Body() request: StraightLineRequest): StraightLineResponse {
    return calculateStraightLine(request);
  }

  @Calculation('theil-sen-slopes', TheilSenResponse, 'Theil-Sen slope')
  calculateTheilSenSlope(@Body() request: TheilSenRequest): Promise<TheilSenResponse> {
    return compute(this.computing, 'calculateTheilSenSlope', request);
  }

  @Calculation('mann-kendall-tests', MannKendallResponse, 'Mann-Kendall test of a trend')
  calculateMannKendallTest(@Body() request: PairedPointsRequest): Promise<MannKendallResponse> {
    return compute(this.computing, 'calculateMannKendallTest', request);
  }

  @Calculation('mixed-lines', MixedLineResponse, 'Lines of several units by restricted maximum likelihood')
  calculateMixedLine(@Body() request: MixedLineRequest): Promise<MixedLineResponse> {
    return compute(this.computing, 'calculateMixedLine', request);
  }
}
