import type { DegreesOfFreedom, Quantity } from '@endfloat/metrology';
import type { Recorded } from '../../ports/record-store.port.js';
import type { GaugeStudy } from '../../ports/records/bench.records.js';
import type { NoReferences } from '../../ports/records/shop.records.js';
import type { ShopTransaction } from '../../ports/unit-of-work.port.js';
import { gaugeStudyResult, repeatabilityOf } from './study-result.js';

export type GaugeStudyRecord = Recorded<NoReferences, GaugeStudy>;

/** Repeatability of single readings as a study of the shop found it. */
export interface StudiedRepeatability {
  readonly studyId: string;
  readonly standardUncertainty: Quantity;
  readonly degreesOfFreedom: DegreesOfFreedom;
}

/** By characteristic and kind of instrument. */
export type StudiedRepeatabilities = ReadonlyMap<string, StudiedRepeatability>;

const keyOf = (characteristic: string, instrumentKind: string): string =>
  `${characteristic} ${instrumentKind}`;

/** The study that feeds the doubt about readings of a characteristic with a kind of instrument; null where there is none. */
export const studiedFor = (
  studies: StudiedRepeatabilities,
  characteristic: string,
  instrumentKind: string | null,
): StudiedRepeatability | null =>
  instrumentKind === null ? null : (studies.get(keyOf(characteristic, instrumentKind)) ?? null);

/** Studies in use of some characteristics: of each kind of instrument the latest that says anything. */
export async function studiedRepeatabilitiesOf(
  tx: ShopTransaction,
  characteristics: readonly string[],
  asOf?: string,
): Promise<StudiedRepeatabilities> {
  if (characteristics.length === 0) return new Map();
  return studiedRepeatabilities(await tx.gaugeStudies.all({ characteristic: characteristics }, asOf));
}

/** The same of records at hand, any order. */
export function studiedRepeatabilities(records: readonly GaugeStudyRecord[]): StudiedRepeatabilities {
  const oldestFirst = [...records].sort((a, b) => (orderOf(a) < orderOf(b) ? -1 : 1));
  const found = new Map<string, StudiedRepeatability>();
  for (const { id, content } of oldestFirst) {
    const repeatability = content.inUse ? repeatabilityOf(gaugeStudyResult(content)) : null;
    if (repeatability === null) continue;
    found.set(keyOf(content.characteristic, content.instrumentKind), {
      studyId: id,
      standardUncertainty: { value: decimalText(repeatability.standardDeviation), unit: content.unit },
      degreesOfFreedom: repeatability.degreesOfFreedom,
    });
  }
  return found;
}

const orderOf = ({ id, firstRecordedAt, content }: GaugeStudyRecord): string =>
  `${content.studiedOn} ${firstRecordedAt} ${id}`;

/** A number as decimal text without an exponent: the digits that tell a double from its neighbours, and more. */
const decimalText = (value: number): string => value.toFixed(20);
