import { adviceBases, adviceKinds, type AdviceBasis, type AdviceKind } from '@endfloat/workshop/ports';
import { EnumField, IntegerField, NumberField, TextField } from '../fields/index.js';

/** What to do ahead of the next complaint. */
export class PreventiveAdviceDto {
  @EnumField({ description: 'What is advised.', values: adviceKinds, enumName: 'AdviceKind', open: true })
  kind!: AdviceKind;

  @EnumField({
    description:
      'Whether the readings of this part show how it wears, or what is known of such parts had to do; null: no forecast.',
    values: adviceBases,
    enumName: 'AdviceBasis',
    nullable: true,
  })
  basis!: AdviceBasis | null;

  @NumberField({
    description: 'Further km until then; null: no distance belongs to it.',
    nullable: true,
    min: 0,
  })
  withinKm!: number | null;

  @NumberField({
    description: 'Chance of having reached the criterion by then; for a renewal, of being beyond it now.',
    nullable: true,
    min: 0,
    max: 1,
  })
  chance!: number | null;

  @TextField({ description: 'Option that renews the part; null: it stays in.', nullable: true, max: 64 })
  optionId!: string | null;

  @IntegerField({ description: 'Inspections needed to say more; null: enough is known.', nullable: true })
  needed!: number | null;

  @IntegerField({ description: 'Inspections with distance and uncertainty that it rests on.' })
  got!: number;

  @TextField({ description: 'Method and thresholds.', max: 500 })
  method!: string;

  @TextField({ description: 'In words.', max: 1000 })
  detail!: string;
}
