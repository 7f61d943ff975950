import { comebackCountsAgainst, type ComebackCountsAgainst } from '@endfloat/catalogue';
import { comebackChartKinds, type ComebackChartKind } from '@endfloat/reliability';
import {
  costDimensions,
  jobOutcomeFilters,
  rateDimensions,
  workActions,
  type CostDimension,
  type JobOutcomeFilter,
  type RateDimension,
  type WorkAction,
} from '@endfloat/workshop/ports';
import { EnumField, IdField, InstantField, TextField, textPatterns } from '../fields/index.js';
import { PageQuery } from '../paging/index.js';

/** Whose process a comeback must be attributed to; `anybody`: every confirmed one, as the customer sees it. */
export const comebacksAgainst = ['anybody', ...comebackCountsAgainst] as const;
export type ComebacksAgainst = 'anybody' | ComebackCountsAgainst;

export const chartPeriodNames = ['month', 'quarter', 'year'] as const;

const AtField = (): PropertyDecorator =>
  InstantField({
    description:
      'Windows, comebacks and sightings as they stood at this moment, by what is known now; now where left out.',
    optional: true,
  });
const AsOfField = (): PropertyDecorator =>
  InstantField({
    description:
      'The answer as it was known at this moment, worked out from the records themselves: for at most 20000 released jobs.',
    optional: true,
  });
const FromField = (): PropertyDecorator =>
  InstantField({ description: 'Jobs released from this moment on.', optional: true });
const UntilField = (): PropertyDecorator =>
  InstantField({ description: 'Jobs released before this moment.', optional: true });
const CustomerField = (): PropertyDecorator =>
  IdField({ description: 'Jobs of vehicles this customer owned when they were released.', optional: true });
const SymptomField = (): PropertyDecorator =>
  TextField({
    description: 'Jobs with this symptom.',
    max: 64,
    pattern: textPatterns.catalogueId,
    optional: true,
  });
const ComponentField = (): PropertyDecorator =>
  TextField({
    description: 'Jobs with work done on this kind of part.',
    max: 64,
    pattern: textPatterns.catalogueId,
    optional: true,
  });
const ActionField = (): PropertyDecorator =>
  EnumField({
    description: 'Jobs with this action done.',
    values: workActions,
    enumName: 'WorkAction',
    optional: true,
  });
const AgainstField = (): PropertyDecorator =>
  EnumField({
    description:
      'Count comebacks attributed to this process only; jobs whose comeback is not attributed yet are then in neither number. `diagnosis` by diagnosing technician and `fitting` by fitting technician where left out, else `anybody`.',
    values: comebacksAgainst,
    enumName: 'ComebacksAgainst',
    optional: true,
  });

/** What every question about comebacks may narrow. */
export class ComebackQuestionQuery {
  @AtField()
  at?: string;

  @AsOfField()
  asOf?: string;

  @FromField()
  from?: string;

  @UntilField()
  until?: string;

  @CustomerField()
  customerId?: string;

  @SymptomField()
  symptom?: string;

  @ComponentField()
  component?: string;

  @ActionField()
  action?: WorkAction;

  @AgainstField()
  against?: ComebacksAgainst;
}

const dimensionText =
  'What is told by: a symptom, its family, an action, the condition of a part used, a supplier, a kind of part, the customer, a fleet, the age of the vehicle, who diagnosed, who fitted (both for the owner only), or when the job was released. A job with several values stands under each.';

export class ComebackRatesQuery extends ComebackQuestionQuery {
  @EnumField({
    description: `${dimensionText} One rate over all jobs where left out.`,
    values: rateDimensions,
    enumName: 'RateDimension',
    optional: true,
  })
  by?: RateDimension;
}

export class ComebackComparisonQuery extends ComebackQuestionQuery {
  @EnumField({ description: dimensionText, values: rateDimensions, enumName: 'RateDimension' })
  by!: RateDimension;
}

const OfDimensionField = (): PropertyDecorator =>
  EnumField({
    description: 'Dimension of `value`.',
    values: rateDimensions,
    enumName: 'RateDimension',
    optional: true,
  });
const OfValueField = (): PropertyDecorator =>
  TextField({
    description: 'Jobs of this value of the dimension `by`; those without a value where left out.',
    max: 120,
    optional: true,
  });

export class ComebackCurveQuery extends ComebackQuestionQuery {
  @OfDimensionField()
  by?: RateDimension;

  @OfValueField()
  value?: string;
}

export class ComebackChartQuery extends ComebackCurveQuery {
  @EnumField({
    description:
      'Chart: share of jobs that came back (p), comebacks per job (u), jobs between (g) or days between (t); the one that fits their number where left out.',
    values: comebackChartKinds,
    enumName: 'ComebackChartKind',
    optional: true,
  })
  chart?: ComebackChartKind;

  @EnumField({
    description: 'Periods of release, in the time of the shop.',
    values: chartPeriodNames,
    enumName: 'ChartPeriodName',
    optional: true,
    default: 'month',
  })
  period?: (typeof chartPeriodNames)[number];

  @TextField({
    description: 'How many first places the centre is estimated from; all where left out.',
    max: 4,
    pattern: '^[1-9][0-9]{0,3}$',
    optional: true,
  })
  baseline?: string;
}

export class ComebackCostsQuery {
  @EnumField({
    description: 'Cause class, or period in which the complaint was received.',
    values: costDimensions,
    enumName: 'CostDimension',
    optional: true,
    default: 'attribution',
  })
  by?: CostDimension;

  @AtField()
  at?: string;

  @AsOfField()
  asOf?: string;

  @InstantField({ description: 'Complaints received from this moment on.', optional: true })
  from?: string;

  @InstantField({ description: 'Complaints received before this moment.', optional: true })
  until?: string;

  @CustomerField()
  customerId?: string;

  @SymptomField()
  symptom?: string;

  @ComponentField()
  component?: string;

  @ActionField()
  action?: WorkAction;
}

export class ComebackJobsQuery extends PageQuery {
  @OfDimensionField()
  by?: RateDimension;

  @OfValueField()
  value?: string;

  @EnumField({
    description:
      'Jobs that count so: came back, did not, window still running, never seen since, or not attributed yet.',
    values: jobOutcomeFilters,
    enumName: 'JobOutcome',
    optional: true,
  })
  outcome?: JobOutcomeFilter;

  @AtField()
  at?: string;

  @AsOfField()
  asOf?: string;

  @FromField()
  from?: string;

  @UntilField()
  until?: string;

  @CustomerField()
  customerId?: string;

  @SymptomField()
  symptom?: string;

  @ComponentField()
  component?: string;

  @ActionField()
  action?: WorkAction;

  @AgainstField()
  against?: ComebacksAgainst;
}
