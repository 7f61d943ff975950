import { decisionChoices, type DecisionChoice } from '@endfloat/workshop/ports';
import { EnumField, IdField, InstantField, JoinTypes, ListField, TextField } from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { ReasonField, RecordedResponse } from '../recording/index.js';

export class DecisionContent {
  @EnumField({
    description:
      'The option chosen, or `handOverUnrepaired`: the van goes back unrepaired and not for the road. An option that a guard removed cannot be chosen.',
    values: decisionChoices,
    enumName: 'DecisionChoice',
  })
  chosen!: DecisionChoice;

  @InstantField({ description: 'When it was decided.' })
  decidedAt!: string;

  @IdField({ description: 'Who decided.' })
  decidedBy!: string;

  @TextField({
    description: 'Why this was chosen; required when it differs from the recommendation.',
    nullable: true,
    max: 500,
  })
  choiceReason!: string | null;
}

export class RecordDecisionRequest extends DecisionContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;
}

export class CorrectDecisionRequest extends DecisionContent {
  @ReasonField()
  reason!: string;
}

export class DecisionResponse extends JoinTypes(RecordedResponse, DecisionContent) {
  @IdField({ description: 'The assessment it answers.' })
  assessmentId!: string;
}

export class DecisionPage extends pageOf(() => DecisionResponse) {}

export class DecisionRevisions {
  @ListField({ description: 'Every revision, oldest first.', max: 1000, type: () => DecisionResponse })
  items!: DecisionResponse[];
}

export class ListDecisionsQuery extends PageQuery {
  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class DecisionPath {
  @IdField({ description: 'Id of the decision.' })
  decisionId!: string;
}
