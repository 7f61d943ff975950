import type { Characteristic } from '@endfloat/catalogue';
import {
  parseLimit,
  quantityKindTable,
  type BladePairGrade,
  type InstrumentProperties,
  type Limit,
  type LimitContext,
  type Quantity,
  type ReadingClass,
  type UncertaintyBudget,
  type UnitCode,
  type Verdict as Judgement,
} from '@endfloat/metrology';
import { invalidInput, unknownReference } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { referencedRecord } from '../recording/required-record.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { componentTypesOf } from './component-types-of.js';
import { invalidData } from './component-types.use-case.js';
import { resultContent, doesNotFit, type EnteredResult } from './entered-reading.js';
import { studiedFor, studiedRepeatabilitiesOf } from './gauge-studies/studied-repeatability.js';
import { instrumentFault } from './instrument-properties.js';
import { judgeAnswers, judgePairs } from './judging/judge-observations.js';
import { studyUsed } from './judging/judge-inspection.js';
import { judgeNumbers } from './judging/judge-numbers.js';
import { contextOfTexts } from './judging/limit-context.js';
import { localDay } from './local-day.js';
import { limitsById } from './limits.use-case.js';

export interface EvaluationCommand {
  /** by its id, or given whole */
  readonly limit: { readonly id: string } | { readonly definition: unknown };
  readonly results: readonly EnteredResult[];
  readonly instrument: { readonly id: string } | { readonly properties: InstrumentProperties } | null;
  /** doubt to assume; undefined: what the kind of part says */
  readonly setUp?: Quantity | null | undefined;
  readonly repeatability?: Quantity | null | undefined;
  readonly context: Readonly<Record<string, string>>;
}

export interface Evaluation {
  readonly limit: Limit;
  readonly judgement: Judgement;
  readonly uncertainty: UncertaintyBudget | null;
  readonly grade: BladePairGrade | null;
  readonly readingClass: ReadingClass | null;
  readonly gaugeStudyId: string | null;
}

/** Judges readings against a limit without storing anything: for front ends, and for asking "what if". */
export class EvaluateReadingUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, command: EvaluationCommand): Promise<Evaluation> {
    return this.work.read(caller.shopId, async (tx) => {
      const limit = await limitAskedFor(tx, command.limit);
      const characteristic = await characteristicFor(tx, limit, command);
      const { timeZone } = await settingsOf(tx);
      const standing = { asOf: localDay(this.clock.now(), timeZone) };
      const context: LimitContext = contextOfTexts(command.context);
      const contents = command.results.map((result, index) =>
        resultContentOf(characteristic, result, `/readings/${String(index)}`),
      );
      const none = { uncertainty: null, grade: null, readingClass: null, gaugeStudyId: null };
      if (characteristic.resultKind === 'number') {
        const { properties, kind } = await instrumentAskedFor(tx, command.instrument);
        const studied =
          command.repeatability === undefined
            ? studiedFor(await studiedRepeatabilitiesOf(tx, [characteristic.id]), characteristic.id, kind)
            : null;
        const judged = judgeNumbers({
          limit,
          characteristic,
          places: [
            {
              place: null,
              shown: contents.map(({ shown, unit }) => ({ text: shown ?? '', unit: unit as UnitCode })),
            },
          ],
          instrument: properties,
          studied,
          context,
          standing,
        });
        const { judgement, uncertainty, readingClass } = judged;
        const gaugeStudyId = studyUsed(studied, judged);
        return { limit, judgement, uncertainty, grade: null, readingClass, gaugeStudyId };
      }
      const readings = contents.map((content, index) => ({ id: String(index), content }));
      const judged =
        characteristic.resultKind === 'bladePair'
          ? judgePairs(limit, readings, context, standing)
          : judgeAnswers(limit, readings, context, standing);
      return { ...none, limit, judgement: judged.judgement, grade: judged.grade };
    });
  }
}

async function limitAskedFor(tx: ShopTransaction, asked: EvaluationCommand['limit']): Promise<Limit> {
  if ('id' in asked) {
    const found = (await limitsById(tx)).get(asked.id);
    if (found === undefined) throw unknownReference('/limitId', 'limit');
    return found.limit;
  }
  const read = parseLimit(asked.definition);
  if (read.kind !== 'limit') throw invalidData('limit', '/limit', read.issues);
  return read.limit;
}

async function instrumentAskedFor(
  tx: ShopTransaction,
  asked: EvaluationCommand['instrument'],
): Promise<{ readonly properties: InstrumentProperties | null; readonly kind: string | null }> {
  if (asked === null) return { properties: null, kind: null };
  if ('id' in asked) {
    const record = await referencedRecord(tx.instruments, 'instrument', asked.id, '/instrumentId');
    return record.content;
  }
  const fault = instrumentFault(asked.properties, '/instrument');
  if (fault !== null) throw invalidInput(fault.pointer, fault.rule, fault.detail);
  return { properties: asked.properties, kind: null };
}

const resultKindOf = ({ criterion }: Limit): Characteristic['resultKind'] => {
  if (criterion.kind === 'pair') return 'bladePair';
  return criterion.kind === 'yesNo' || criterion.kind === 'grade' ? criterion.kind : 'number';
};

/** The characteristic the limit is for; one nobody knows is taken from the limit alone. */
async function characteristicFor(
  tx: ShopTransaction,
  limit: Limit,
  { setUp, repeatability }: EvaluationCommand,
): Promise<Characteristic> {
  const resultKind = resultKindOf(limit);
  const known = (await componentTypesOf(tx))
    .flatMap(({ characteristics }) => characteristics)
    .find(
      ({ id, quantityKind, resultKind: kind }) =>
        id === limit.characteristic && quantityKind === limit.quantityKind && kind === resultKind,
    );
  const characteristic: Characteristic = known ?? {
    id: limit.characteristic,
    name: limit.characteristic,
    resultKind,
    quantityKind: limit.quantityKind,
    canonicalUnit: limit.quantityKind === null ? null : quantityKindTable[limit.quantityKind].canonical,
    wearDirection: 'none',
    trend: 'state',
    plausible: null,
    lowestPossible: null,
    doubt: null,
    readingsAdvised: 1,
  };
  refuseForeignUnit(limit, setUp, '/setUp');
  refuseForeignUnit(limit, repeatability, '/repeatability');
  return {
    ...characteristic,
    doubt: {
      evidence: { tag: 'shop', citation: null },
      repeatabilityDegreesOfFreedom: null,
      ...characteristic.doubt,
      setUp: setUp === undefined ? (characteristic.doubt?.setUp ?? null) : setUp,
      repeatability:
        repeatability === undefined ? (characteristic.doubt?.repeatability ?? null) : repeatability,
    },
  };
}

function refuseForeignUnit(limit: Limit, given: Quantity | null | undefined, pointer: string): void {
  if (given == null) return;
  const units: readonly string[] =
    limit.quantityKind === null ? [] : quantityKindTable[limit.quantityKind].units;
  if (!units.includes(given.unit) || given.value.startsWith('-')) {
    throw doesNotFit(`${given.value} ${given.unit} is no doubt about what the limit is for.`, {
      pointer,
      rule: 'unitOfKind',
      detail: units.join(', '),
    });
  }
}

/** A check made up around the characteristic, so that results are read as they are on the bench. */
function resultContentOf(characteristic: Characteristic, result: EnteredResult, at: string) {
  const type = {
    id: 'evaluation',
    name: 'evaluation',
    edition: 1,
    positions: [],
    characteristics: [characteristic],
  };
  const check = {
    id: 'evaluation',
    componentTypeId: type.id,
    characteristicId: characteristic.id,
    resultKind: characteristic.resultKind,
  };
  return resultContent([type], check, result, at);
}
