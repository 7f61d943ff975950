import { optionActions, type OptionAction } from '@endfloat/decision';
import {
  EnumField,
  IntegerField,
  JsonField,
  ListField,
  NestedField,
  NumberField,
  TextField,
} from '../fields/index.js';
import { LearnedTablesHead, LeftOutOfLearningDto } from './learned-tables.dto.js';

/** Released repairs behind the chances of one action. */
export class ActionCountsDto {
  @EnumField({ description: 'What was done.', values: optionActions, enumName: 'OptionAction' })
  action!: OptionAction;

  @IntegerField({ description: 'Came back inside the window, confirmed by a person.' })
  comebacks!: number;

  @IntegerField({ description: 'Window elapsed without comeback, van seen afterwards.' })
  held!: number;

  @IntegerField({ description: 'Window running or van not seen since: counted as far as it was watched.' })
  running!: number;
}

/** One coefficient of the comeback model, log odds. */
export class ComebackCoefficientDto {
  @TextField({ description: 'Stable name.', max: 64, example: 'wearAtCriterion' })
  name!: string;

  @NumberField({ description: 'Mean before anything was counted; judgement.' })
  startingMean!: number;

  @NumberField({ description: 'Its standard deviation.', min: 0 })
  startingDeviation!: number;

  @NumberField({ description: 'Mean now.' })
  mean!: number;

  @NumberField({ description: 'Standard deviation now.', min: 0 })
  deviation!: number;
}

/** Observations behind the tables. */
export class DecisionObservationsDto {
  @IntegerField({ description: 'Fitted parts, the ones recorded last.' })
  parts!: number;

  @IntegerField({ description: 'Inspections of them.' })
  inspections!: number;

  @IntegerField({ description: 'Complaints they may be to blame for, comebacks not among them.' })
  complaints!: number;

  @IntegerField({ description: 'Released repairs.' })
  repairs!: number;

  @IntegerField({ description: 'Deliveries with a promise.' })
  deliveries!: number;

  @NumberField({ description: 'Km watched over all parts.', min: 0 })
  watchedKm!: number;
}

export class LearnedDecisionResponse extends LearnedTablesHead {
  @TextField({
    description: 'How the fit of the comebacks ended: estimated, or notConverged: then judgement stays.',
    max: 64,
  })
  fit!: string;

  @ListField({ description: 'What taught them, by action.', max: 20, type: () => ActionCountsDto })
  byAction!: ActionCountsDto[];

  @ListField({
    description: 'Repairs that teach nothing, by reason.',
    max: 50,
    type: () => LeftOutOfLearningDto,
  })
  leftOut!: LeftOutOfLearningDto[];

  @NestedField({ description: 'Observations behind them.', type: () => DecisionObservationsDto })
  counts!: DecisionObservationsDto;

  @ListField({
    description: 'Coefficients of the comeback model.',
    max: 100,
    type: () => ComebackCoefficientDto,
  })
  coefficients!: ComebackCoefficientDto[];

  @JsonField({ description: 'The tables as an assessment takes them, every number of them.' })
  tables!: Readonly<Record<string, unknown>>;
}
