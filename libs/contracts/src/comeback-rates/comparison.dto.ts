import { funnelFindings, type FunnelFinding } from '@endfloat/reliability';
import { expectationFindings, type ExpectationFinding } from '@endfloat/statistics';
import { rateDimensions, type RateDimension } from '@endfloat/workshop/ports';
import {
  EnumField,
  IntegerField,
  KindField,
  ListField,
  NestedField,
  NumberField,
  TextField,
  UnionField,
} from '../fields/index.js';
import { IntervalDto, RateField, type RateDto } from '../quantity/index.js';
import { ComebackBasisResponse } from './rate.dto.js';

export class BelowMinimumDto {
  @KindField('belowMinimum', 'too few jobs to be compared: no finding and no rank')
  kind!: 'belowMinimum';

  @IntegerField({ description: 'Jobs needed, a setting of the shop.' })
  needed!: number;

  @IntegerField({ description: 'Jobs there are.' })
  got!: number;
}

export class ExpectedRatioDto {
  @NumberField({ description: 'Comebacks over those expected for the same mix.', min: 0 })
  value!: number;

  @NestedField({ description: 'How sure that is.', type: () => IntervalDto })
  interval!: IntervalDto;

  @EnumField({
    description: 'Whether 1 lies inside the interval.',
    values: expectationFindings,
    enumName: 'ExpectationFinding',
  })
  finding!: ExpectationFinding;
}

export class FunnelBandDto {
  @NumberField({ description: 'Share of like groups that lie inside.', min: 0, max: 1 })
  coverage!: number;

  @NumberField({ description: 'Lower limit of the rate.', min: 0, max: 1 })
  lower!: number;

  @NumberField({ description: 'Upper limit of the rate.', min: 0, max: 1 })
  upper!: number;
}

export class ShrunkenRateDto {
  @NumberField({ description: 'Rate drawn towards what the mix leads to expect.', min: 0, max: 1 })
  value!: number;

  @NestedField({ description: 'How sure that is.', type: () => IntervalDto })
  interval!: IntervalDto;
}

export class ComebackComparedResultDto {
  @KindField('compared')
  kind!: 'compared';

  @NestedField({
    description: 'Null where the mix leads to expect no comeback at all.',
    nullable: true,
    type: () => ExpectedRatioDto,
  })
  ratio!: ExpectedRatioDto | null;

  @ListField({
    description: 'Funnel limits around the expected rate, inner and outer.',
    max: 2,
    type: () => FunnelBandDto,
  })
  funnel!: FunnelBandDto[];

  @EnumField({
    description: 'Where the rate lies in the funnel.',
    values: funnelFindings,
    enumName: 'FunnelFinding',
  })
  finding!: FunnelFinding;

  @NestedField({ description: 'What to go by where numbers are small.', type: () => ShrunkenRateDto })
  shrunken!: ShrunkenRateDto;

  @IntegerField({ description: 'Rank by the shrunken rate; 1 is the lowest, equal ones share a rank.' })
  rank!: number;
}

export class ComebackComparedGroupDto {
  @TextField({ description: 'Value of the dimension; null: jobs without one.', nullable: true, max: 200 })
  value!: string | null;

  @TextField({ description: 'What it is called, where there is a name for it.', nullable: true, max: 200 })
  label!: string | null;

  @RateField({ description: 'As counted.' })
  rate!: RateDto;

  @NumberField({ description: 'Comebacks that jobs of the same mix had in the whole shop.', min: 0 })
  expected!: number;

  @NumberField({ description: 'The same as a rate.', min: 0, max: 1, nullable: true })
  expectedRate!: number | null;

  @UnionField({
    description: 'The comparison, or that there are too few jobs for one.',
    types: () => [ComebackComparedResultDto, BelowMinimumDto],
  })
  result!: ComebackComparedResultDto | BelowMinimumDto;

  @TextField({ description: 'Where the jobs behind it are listed.', max: 2000 })
  jobs!: string;
}

export const priorSources = ['fittedToGroups', 'judgement'] as const;

export class ComebackComparisonResponse extends ComebackBasisResponse {
  @EnumField({ description: 'What is compared.', values: rateDimensions, enumName: 'RateDimension' })
  by!: RateDimension;

  @RateField({ description: 'All jobs of the question, each once.' })
  overall!: RateDto;

  @IntegerField({ description: 'Kinds of job in the mix.' })
  strata!: number;

  @IntegerField({ description: 'Jobs under which nothing is compared or ranked: a setting of the shop.' })
  minimumJobs!: number;

  @NumberField({ description: 'Jobs that the expectation is worth in a shrunken rate.', min: 0 })
  priorJobs!: number;

  @EnumField({
    description: 'Where that number comes from.',
    values: priorSources,
    enumName: 'PriorSource',
  })
  priorFrom!: (typeof priorSources)[number];

  @ListField({
    description: 'By value, not by rank; those without a value last.',
    max: 500,
    type: () => ComebackComparedGroupDto,
  })
  groups!: ComebackComparedGroupDto[];

  @IntegerField({ description: 'Groups with the fewest jobs that are not shown.' })
  groupsLeftOut!: number;
}
