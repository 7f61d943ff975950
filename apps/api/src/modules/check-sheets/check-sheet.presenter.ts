import type { CheckDto, CheckSheetResponse, CheckSheetSummary } from '@endfloat/contracts';
import { unitsOf, type CheckSheetRecord, type CheckSheetView } from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';
import { presentCharacteristic } from '../component-types/component-type.presenter.js';
import { presentLimit } from '../limits/limit.presenter.js';

type Check = CheckSheetRecord['content']['definition']['checks'][number];
type Characteristic = CheckSheetView['componentTypes'][number]['characteristics'][number];

export function presentCheck(check: Check, characteristic?: Characteristic): CheckDto {
  const { functional } = check;
  const kind = characteristic?.quantityKind ?? check.limits[0]?.quantityKind ?? null;
  return {
    id: check.id,
    title: check.title,
    section: check.section,
    steps: [...check.steps],
    question: check.question,
    componentTypeId: check.componentTypeId,
    characteristicId: check.characteristicId,
    ...(characteristic === undefined ? {} : { characteristic: presentCharacteristic(characteristic) }),
    resultKind: check.resultKind,
    units: [...unitsOf(kind)],
    diagnosticCheckId: check.diagnosticCheckId,
    openingMove: check.openingMove,
    prerequisites: [...check.prerequisites],
    advisedAfter: [...check.advisedAfter],
    alsoRemeasure: [...check.alsoRemeasure],
    requiredStates: [...check.requiredStates],
    instrumentKind: check.instrumentKind,
    minutes: check.minutes,
    cautions: check.cautions.map(({ id, hazard, text, source }) => ({
      id,
      hazard,
      text,
      source: { tag: source.tag, citation: source.citation },
    })),
    limits: check.limits.map(presentLimit),
    adjustable: check.adjustable,
    outsideMeans: check.outsideMeans,
    whatToDo: check.whatToDo,
    targetCauses: [...check.targetCauses],
    functional:
      functional === null
        ? null
        : {
            outranks: [...functional.outranks],
            companionCheckId: functional.companionCheckId,
            conclusiveFrom: functional.conclusiveFrom,
            negativeRepeatedAfterCompanion: functional.negativeRepeatedAfterCompanion,
          },
    whereFitted: check.whereFitted,
  };
}

export function presentCheckSheetSummary(record: CheckSheetRecord): CheckSheetSummary {
  const { definition } = record.content;
  return {
    ...presentRecorded(record),
    code: record.identity.code,
    sheetVersion: record.identity.sheetVersion,
    title: definition.title,
    componentTypeIds: [...definition.componentTypeIds],
    checkCount: definition.checks.length,
    minutes: definition.checks.reduce((sum, { minutes }) => sum + minutes, 0),
  };
}

export function presentCheckSheet({ record, componentTypes }: CheckSheetView): CheckSheetResponse {
  const { definition } = record.content;
  return {
    ...presentCheckSheetSummary(record),
    checks: definition.checks.map((check) =>
      presentCheck(
        check,
        componentTypes
          .find(({ id }) => id === check.componentTypeId)
          ?.characteristics.find(({ id }) => id === check.characteristicId),
      ),
    ),
    proofPointIds: [...definition.proofPointIds],
    precedence: definition.precedence,
  };
}
