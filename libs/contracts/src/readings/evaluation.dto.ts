import {
  IdField,
  JsonField,
  ListField,
  NestedField,
  QuantityField,
  TextField,
  TextMapField,
  textPatterns,
  type QuantityDto,
} from '../fields/index.js';
import { InstrumentPropertiesDto } from '../instruments/index.js';
import { LimitDto } from '../limits/index.js';
import { readingResultTypes, type ReadingResultDto } from './reading.dto.js';
import { JudgementDto } from './verdict.dto.js';

/** Readings to judge against a limit without storing anything. */
export class EvaluateReadingRequest {
  @TextField({
    description: 'Id of a limit that holds in this shop; or give `limit`.',
    optional: true,
    max: 128,
    pattern: textPatterns.catalogueId,
  })
  limitId?: string;

  @JsonField({ description: 'A whole limit; or give `limitId`.', optional: true, maxMembers: 30 })
  limit?: Record<string, unknown>;

  @ListField({
    description: 'Repeats of one result.',
    min: 1,
    max: 100,
    union: { types: readingResultTypes },
  })
  readings!: ReadingResultDto[];

  @IdField({ description: 'An instrument of the shop.', optional: true })
  instrumentId?: string;

  @NestedField({
    description: 'What is known of an instrument.',
    optional: true,
    type: () => InstrumentPropertiesDto,
  })
  instrument?: InstrumentPropertiesDto;

  @QuantityField({
    description:
      'Standard uncertainty of mounting; what the kind of part says where absent, unknown where null.',
    kind: 'any',
    optional: true,
    nullable: true,
  })
  setUp?: QuantityDto | null;

  @QuantityField({
    description: 'Standard deviation of one reading; as above.',
    kind: 'any',
    optional: true,
    nullable: true,
  })
  repeatability?: QuantityDto | null;

  @TextMapField({
    description: 'What is known of vehicle and test, e.g. jurisdiction: uk, grossMass: 3500 kg.',
    optional: true,
    maxEntries: 60,
    max: 120,
  })
  context?: Record<string, string>;
}

export class EvaluationResponse {
  @NestedField({ description: 'The limit that was used.', type: () => LimitDto })
  limit!: LimitDto;

  @NestedField({ description: 'What the readings say.', type: () => JudgementDto })
  judgement!: JudgementDto;
}
