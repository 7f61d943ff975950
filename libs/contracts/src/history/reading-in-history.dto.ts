import { NestedField, PickType } from '../fields/index.js';
import { InstrumentListItem } from '../instruments/index.js';
import { ReadingResponse } from '../readings/index.js';

/** An instrument as known at the moment asked about; `standing` is that of its calibration on the day of the reading. */
export class InstrumentOfReading extends PickType(InstrumentListItem, [
  'id',
  'version',
  'kind',
  'name',
  'serial',
  'standing',
]) {}

/** A reading with the instrument it was taken with. */
export class ReadingInHistory extends ReadingResponse {
  @NestedField({
    description: 'The instrument, and whether it was in calibration on that day; null: none was named.',
    nullable: true,
    type: () => InstrumentOfReading,
  })
  instrument!: InstrumentOfReading | null;
}
