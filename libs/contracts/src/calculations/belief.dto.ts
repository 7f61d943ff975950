import { FlagField, KindField, ListField, NestedField, NumberField, UnionField } from '../fields/index.js';
import { CalculationResponse } from './calculation.dto.js';
import { NumbersField } from './numbers.field.js';

export class BayesPosteriorRequest {
  @NumberField({ description: 'Probability of the condition before.', min: 0, max: 1 })
  prior!: number;

  @NumberField({ description: 'P(positive) where it is there.', min: 0, max: 1 })
  sensitivity!: number;

  @NumberField({ description: 'P(positive) where it is not.', min: 0, max: 1 })
  falsePositiveRate!: number;

  @FlagField({ description: 'Whether the result was positive.' })
  isPositive!: boolean;
}

export class EstimatedPosteriorDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NumberField({ description: 'Probability of the condition after the result.', min: 0, max: 1 })
  probability!: number;

  @NumberField({ description: 'Probability of the result beforehand.', min: 0, max: 1 })
  evidence!: number;
}

export class ImpossibleResultDto {
  @KindField('impossibleResult', 'such a result cannot be under these numbers')
  kind!: 'impossibleResult';
}

export class BayesPosteriorResponse extends CalculationResponse {
  @UnionField({
    description: 'The posterior, or why there is none.',
    types: () => [EstimatedPosteriorDto, ImpossibleResultDto],
  })
  result!: EstimatedPosteriorDto | ImpossibleResultDto;
}

/** The sum runs over all combinations of causes. */
const mostCauses = 16;

export class NoisyOrFindingDto {
  @FlagField({ description: 'Whether the finding is there.' })
  present!: boolean;

  @NumbersField({
    description: 'P(finding) by each cause alone, in the order of the priors.',
    max: mostCauses,
    from: 0,
    to: 1,
  })
  strengths!: number[];

  @NumberField({ description: 'P(finding) without any of them.', min: 0, max: 1 })
  leak!: number;
}

export class NoisyOrRequest {
  @NumbersField({
    description: 'Probability of each cause beforehand.',
    min: 1,
    max: mostCauses,
    from: 0,
    to: 1,
  })
  priors!: number[];

  @ListField({
    description: 'Findings, present or absent; those not looked for are left out.',
    max: 50,
    type: () => NoisyOrFindingDto,
  })
  findings!: NoisyOrFindingDto[];
}

export class MostProbableCausesDto {
  @ListField({ description: '1 for each cause that holds.', max: mostCauses, integers: { min: 0, max: 1 } })
  holds!: readonly number[];

  @NumberField({ description: 'Probability of that combination.', min: 0, max: 1 })
  probability!: number;
}

export class EstimatedCausesDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NumbersField({ description: 'Probability of each cause after the findings.', max: mostCauses })
  marginals!: readonly number[];

  @NumberField({ description: 'Logarithm of the probability of the findings.' })
  logEvidence!: number;

  @NestedField({ description: 'The likeliest combination.', type: () => MostProbableCausesDto })
  mostProbable!: MostProbableCausesDto;

  @NumberField({ description: 'Probability that none of the causes holds.', min: 0, max: 1 })
  noneProbability!: number;
}

export class ImpossibleFindingsDto {
  @KindField('impossibleFindings', 'such findings cannot be under these numbers')
  kind!: 'impossibleFindings';
}

export class NoisyOrResponse extends CalculationResponse {
  @UnionField({
    description: 'The causes, or why nothing is said.',
    types: () => [EstimatedCausesDto, ImpossibleFindingsDto],
  })
  result!: EstimatedCausesDto | ImpossibleFindingsDto;

  @NumbersField({ description: 'P(finding) where all causes hold, one a finding.', max: 50 })
  whenAllHold!: readonly number[];
}
