import { NumberField } from '../fields/number.field.js';
import { TextField } from '../fields/text.field.js';

/** Interval around an estimate, with the level and the method it was made by. An open end is `null`. */
export class IntervalDto {
  @NumberField({ description: 'Lower end; null where it is open.', nullable: true })
  low!: number | null;

  @NumberField({ description: 'Upper end; null where it is open.', nullable: true })
  high!: number | null;

  @NumberField({ description: 'Level of the interval, such as 0.95.', min: 0, max: 1, example: 0.95 })
  level!: number;

  @TextField({ description: 'Name of the method.', max: 80, example: 'wilson' })
  method!: string;
}
