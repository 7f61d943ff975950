import { coreStates, coreStepKinds, type CoreState, type CoreStepKind } from '@endfloat/stock';
import {
  EnumField,
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  ListField,
  LocalDateField,
  MoneyField,
  QueryIntegerField,
  TextField,
  textPatterns,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { MoneyDto } from '../quantity/index.js';
import { ReasonField, RecordedResponse, WarningResponse } from '../recording/index.js';

export class CoreContent {
  @TextField({ description: 'Who wants it back.', max: 120 })
  supplier!: string;

  @TextField({ description: 'Kind of part.', max: 64, pattern: textPatterns.catalogueId })
  componentType!: string;

  @LocalDateField({ description: 'Day since which it is owed.' })
  owedSince!: string;

  @LocalDateField({ description: 'Last day to send it back; null: none was named.', nullable: true })
  returnBy!: string | null;

  @MoneyField({ description: 'Deposit that is paid back for it.', nullable: true })
  deposit!: MoneyDto | null;

  @TextField({ description: 'Serial of the old part.', nullable: true, max: 80 })
  serial!: string | null;

  @TextField({ description: 'Anything else worth knowing.', nullable: true, max: 1000 })
  note!: string | null;
}

export class RecordCoreRequest extends CoreContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @IdField({ description: 'Number of the shop’s list it belongs to.', nullable: true })
  partId!: string | null;

  @IdField({
    description: 'The job it came off on: it stays until that job is released, or a reason is given.',
    nullable: true,
  })
  jobId!: string | null;
}

export class CorrectCoreRequest extends CoreContent {
  @ReasonField()
  reason!: string;
}

export class CoreStepDto {
  @EnumField({ description: 'What was done.', values: coreStepKinds, enumName: 'CoreStepKind' })
  kind!: CoreStepKind;

  @LocalDateField({ description: 'On which day.' })
  on!: string;

  @TextField({
    description: 'Why it was refused, or why it went back before the road test.',
    nullable: true,
    max: 500,
  })
  reason!: string | null;

  @MoneyField({ description: 'What was credited.', nullable: true })
  amount!: MoneyDto | null;
}

export class RecordCoreStepRequest extends CoreStepDto {}

export class CoreResponse extends JoinTypes(RecordedResponse, CoreContent) {
  @IdField({ description: 'Number of the shop’s list it belongs to.', nullable: true })
  partId!: string | null;

  @IdField({ description: 'The job it came off on.', nullable: true })
  jobId!: string | null;

  @IdField({ description: 'The receipt that made it owed.', nullable: true })
  stockMoveId!: string | null;

  @EnumField({
    description: 'Where it stands today. `expired`: its day has passed and it was not sent back.',
    values: coreStates,
    enumName: 'CoreState',
  })
  state!: CoreState;

  @LocalDateField({ description: 'Since when.' })
  since!: string;

  @IntegerField({
    description:
      'Days to its last day, negative once it has passed; null without one, or once it was sent back.',
    nullable: true,
    min: -1_000_000,
    max: 1_000_000,
  })
  daysLeft!: number | null;

  @ListField({
    description: 'What may come next.',
    max: 10,
    choice: { values: coreStepKinds, enumName: 'CoreStepKind' },
  })
  next!: CoreStepKind[];

  @ListField({ description: 'What was done, in order.', max: 100, type: () => CoreStepDto })
  steps!: CoreStepDto[];

  @ListField({ description: 'What looked odd about the last step.', max: 20, type: () => WarningResponse })
  warnings!: WarningResponse[];
}

export class CorePage extends pageOf(() => CoreResponse) {}

export class CoreRevisions {
  @ListField({ description: 'Every revision, oldest first.', max: 1000, type: () => CoreResponse })
  items!: CoreResponse[];
}

export class ListCoresQuery extends PageQuery {
  @EnumField({
    description: 'Cores in this state.',
    values: coreStates,
    enumName: 'CoreState',
    optional: true,
  })
  state?: CoreState;

  @TextField({ description: 'Cores owed to this supplier.', optional: true, max: 120 })
  supplier?: string;

  @QueryIntegerField({
    description: 'Cores not sent back whose last day comes within so many days.',
    digits: 4,
    optional: true,
  })
  dueWithinDays?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class CorePath {
  @IdField({ description: 'Id of the core.' })
  coreId!: string;
}
