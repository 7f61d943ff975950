import type { Check, CheckSheet, ComponentType, RequiredState } from '@endfloat/catalogue';
import { refuseImpossiblePair } from '../bench/blades-of-set.js';
import { componentTypesOf } from '../bench/component-types-of.js';
import { checkOf, resultContent, type ReadingEntry } from '../bench/entered-reading.js';
import { studiedRepeatabilitiesOf } from '../bench/gauge-studies/studied-repeatability.js';
import { characteristicOf, positionsOf, type ReadingRecord } from '../bench/judging/bench-case.js';
import { instrumentsOf } from '../bench/judging/gather-bench-case.js';
import { judgeInspection } from '../bench/judging/judge-inspection.js';
import { localDay } from '../bench/local-day.js';
import { refuseForeignHands, rolesOfPeople } from '../bench/who-may-measure.js';
import { unknownReference } from '../errors/domain.errors.js';
import type { Reading } from '../ports/records/bench.records.js';
import type { ArrivalInspection } from '../ports/records/stock.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { refuseFuture } from '../recording/happened-at.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import type { ArrivalEntry } from './arrival-entry.js';

/** States that only a vehicle can be in. */
const statesOfVehicle: readonly RequiredState[] = [
  'engineHot',
  'engineCold',
  'idling',
  'raisedIdle',
  'cranking',
  'driving',
  'coolingSystemOpen',
  'vehicleRaised',
  'wheelsStraightAhead',
];

/** Final checks and proof are of the vehicle; so is what wants its engine running. */
const needsVehicle = ({ section, requiredStates }: Check): boolean =>
  section === 'final' ||
  section === 'proof' ||
  requiredStates.some((state) => statesOfVehicle.includes(state));

/** The checks of a sheet that look at one kind of part by itself, waiting for each other only: the rest needs a van. */
export function sheetForPart(sheet: CheckSheet, componentType: string): CheckSheet {
  const own = sheet.checks.filter((check) => check.componentTypeId === componentType && !needsVehicle(check));
  const ids = new Set(own.map(({ id }) => id));
  const among = (checkIds: readonly string[]): string[] => checkIds.filter((id) => ids.has(id));
  return {
    ...sheet,
    checks: own.map((check) => ({
      ...check,
      prerequisites: among(check.prerequisites),
      advisedAfter: among(check.advisedAfter),
    })),
  };
}

/** Reads and judges what was found on a part that is on no vehicle: by the same sheet, rules and limits. */
export async function judgeArrival(
  tx: ShopTransaction,
  sheet: CheckSheet,
  entry: ArrivalEntry,
  now: string,
): Promise<Pick<ArrivalInspection, 'readings' | 'verdicts'>> {
  const types = await componentTypesOf(tx);
  const instruments = await instrumentsOf(
    tx,
    entry.readings.flatMap(({ instrumentId }) => instrumentId ?? []),
  );
  const people = await rolesOfPeople(
    tx,
    entry.readings.map(({ measuredBy }) => measuredBy),
  );
  const readings = entry.readings.map((reading, index): Reading => {
    const at = `/readings/${String(index)}`;
    refuseFuture(reading.takenAt, now, `${at}/takenAt`);
    refuseForeignHands(people, reading.measuredBy, `${at}/measuredBy`);
    const instrument = reading.instrumentId === null ? null : instruments.get(reading.instrumentId);
    if (instrument === undefined) throw unknownReference(`${at}/instrumentId`, 'instrument');
    if (reading.result.kind === 'bladePair')
      refuseImpossiblePair(reading.result, instrument?.instrument ?? null, at);
    return readingOf(types, sheet, reading, at);
  });
  const { timeZone } = await settingsOf(tx);
  const characteristics = [...new Set(sheet.checks.map(({ characteristicId }) => characteristicId))];
  const limits = await tx.shopLimits.all({ characteristic: characteristics });
  const rows = judgeInspection({
    sheet,
    componentTypes: types,
    readings: readings.map((content, index) => recordOf(content, index)),
    instruments,
    works: [],
    notDone: [],
    studies: await studiedRepeatabilitiesOf(tx, characteristics),
    context: {},
    shopLimits: limits.map(({ content }) => content.limit),
    localDay: (at) => localDay(at, timeZone),
  });
  return {
    readings,
    verdicts: rows.map(({ checkId, limitId, content }) => ({
      checkId,
      limitId,
      content: { ...content, readingIds: [] },
    })),
  };
}

function readingOf(
  types: readonly ComponentType[],
  sheet: CheckSheet,
  entry: ReadingEntry,
  at: string,
): Reading {
  const check = checkOf(sheet, entry.checkId, at);
  const characteristic = characteristicOf(types, check);
  const { implausible, ...result } = resultContent(types, check, entry.result, at);
  return {
    ...result,
    checkId: check.id,
    characteristic: characteristic.id,
    trend: characteristic.trend,
    fittedPartId: null,
    phase: 'asFound',
    position: entry.position ?? positionsOf(types, check)[0] ?? '',
    place: entry.place,
    takenAt: entry.takenAt,
    distanceKm: null,
    instrumentId: entry.instrumentId,
    measuredBy: entry.measuredBy,
    valueConfirmed: implausible === null,
    conditions: entry.conditions,
    note: entry.note,
    warnings: implausible === null ? [] : [implausible],
  };
}

/** As the judging wants it; an inspection on arrival holds its readings itself, under no ids of their own. */
function recordOf(content: Reading, index: number): ReadingRecord {
  return {
    id: String(index),
    identity: { inspectionId: '' },
    revision: 1,
    content,
    recordedAt: content.takenAt,
    recordedBy: content.measuredBy,
    reason: null,
    replacedAt: null,
    firstRecordedAt: content.takenAt,
  };
}
