import type { VehicleNumberWarningCode } from '@endfloat/catalogue';
import type { OdometerWarningCode } from '@endfloat/wear';

/** Warnings that the workshop itself adds: what it saw in the records of the shop. */
type RecordWarningCode = 'numberAlsoOnOtherVehicle' | 'plateAlsoOnOtherVehicle';

/** Warnings about a reading. */
type BenchWarningCode = 'valueToConfirm' | 'takenAfterWork' | 'instrumentOfOtherKind';

/** Warnings about stock, claims and cores. */
type StockWarningCode =
  | 'returnedMoreThanUsed'
  | 'reservedExceedsCounted'
  | 'beforeLastCount'
  | 'serialFittedElsewhere'
  | 'coreBeforeRoadTest'
  | 'afterWarranty'
  | 'warrantyUnknown';

export type WarningCode =
  VehicleNumberWarningCode | OdometerWarningCode | RecordWarningCode | BenchWarningCode | StockWarningCode;

/** The sentence of every warning; `{name}` is replaced by the value of that name. */
export const warningTexts: Readonly<Record<WarningCode, string>> = {
  numberMissing: 'No number was entered. If none is legible on the vehicle, that is a finding of its own.',
  illegibleCharacters: 'The characters at {positions} could not be read. Read them again if you can.',
  unusualCharacters: 'The characters at {positions} do not normally stand on a vehicle.',
  lettersNotUsed:
    'The letters {letters} are not used in such numbers. Did you read {offered}? Nothing was changed.',
  lengthNot17: 'The number has {length} characters. Vehicles first used in 1981 or later usually have 17.',
  checkDigitDiffers:
    'The check digit does not match. That is normal for many vehicles not built for North America.',
  numberAlsoOnOtherVehicle:
    'Another vehicle of this shop, {vehicleId}, has the same number. Two vans can share a short old number; check that it is not the same van entered twice.',
  plateAlsoOnOtherVehicle:
    'Another vehicle of this shop, {vehicleId}, has the same plate. Check which of the two carries it now.',
  valueToConfirm:
    'Expected was {lowest} to {highest} {unit}. The reading is kept and counts for nothing until somebody confirms it or corrects it.',
  takenAfterWork:
    'Taken after the work done at {doneAt}, because as found was never taken. It stays out of the series of its part.',
  instrumentOfOtherKind:
    'Taken with an instrument of another kind ({kind}) than the check asks for ({expected}).',
  returnedMoreThanUsed:
    'More came back than the ledger says this job got ({inJob}). What lies on the shelf counts; check whether a use was never recorded.',
  reservedExceedsCounted:
    'Fewer were counted than are kept for jobs ({reserved}). Some job will not get its part: order, or free one.',
  beforeLastCount:
    'This happened before the last count of {countedAt}, which may have seen it already. Count again if the number does not fit.',
  serialFittedElsewhere:
    'The part with serial {serial} is recorded as fitted to vehicle {vehicleId}. Record its removal there, or correct the serial.',
  coreBeforeRoadTest:
    'The core went back before the road test of its job was passed. The old part is evidence, and may be the only one that can be repaired.',
  afterWarranty: 'By the records the warranty had ended by then ({by}). The claim is kept all the same.',
  warrantyUnknown:
    'Whether the warranty still held cannot be seen from the records. Enter its terms, the day of fitting and the distance.',
  notReadable: '"{shown}" is not what an odometer shows. Enter the digits, with a point before tenths.',
  noSegment: 'This is the first entry of this display; the distance is taken from what it shows.',
  belowZero:
    'By the segments recorded, {shown} would be a distance below zero. Check the segment or the entry.',
  moreDigitsThanDisplay:
    '{shown} has more digits than the display, which has {digits}. Were tenths read as whole units?',
  unitDiffersFromSegment:
    'The entry is in {unit}, the display was recorded in {segmentUnit}. It was converted.',
  rolloverLikely:
    'Lower than the last entry ({last}): the display has probably rolled over. If so, record a new segment; it adds {added} km.',
  unitMixedUp:
    '{shown} {unit} does not fit the earlier entries by the factor between miles and kilometres. Check the unit.',
  digitTooMany: '{shown} is about ten times what was expected. Were tenths read as whole units?',
  digitMissing: '{shown} is about a tenth of what was expected. Is a digit missing?',
  lowerThanLast:
    '{shown} is lower than the last entry. A typing error, another display, or tampering: it counts for nothing until a person has settled it.',
  fasterThanPlausible:
    'That would be {perDay} a day, more than the {most} a day that is plausible. Check the entry and its date.',
  unchangedOverMonths:
    'The display has not moved for {days} days. If the van was used, the odometer is broken and distances are not reliable since {from}.',
  backFilled: 'Entered later than an entry of {nextReadAt}. It was put in its place by date.',
  higherThanNext:
    'Higher than the entry that follows by date. One of the two must be wrong: it counts for nothing until a person has settled it.',
};

/** The sentence of a warning with its values. A value that is missing shows as a dash, never as a gap in the sentence. */
export function warningText(code: string, values: Readonly<Record<string, string>>): string {
  const template = (warningTexts as Readonly<Record<string, string | undefined>>)[code];
  if (template === undefined) return `Warning ${code}.`;
  return template.replaceAll(/\{([A-Za-z]+)\}/g, (_, name: string) => values[name] ?? '-');
}
