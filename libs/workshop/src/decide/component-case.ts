import {
  shippedComponentTypes,
  type Characteristic,
  type Check,
  type ComponentType,
} from '@endfloat/catalogue';
import type { WearingCharacteristic } from '@endfloat/decision';
import { canonicalNumber, type Limit, type LimitBound } from '@endfloat/metrology';
import { DomainError, invalidInput } from '../errors/domain.errors.js';
import type { AssessmentQuestion } from '../ports/records/decide.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { latestSheets } from '../recording/latest-sheets.js';

/** One wearing characteristic of a component with the check that measures it. */
export interface WearingCase {
  readonly characteristic: Characteristic;
  readonly check: Check;
  readonly sizes: WearingCharacteristic;
}

/** What the shop knows about a kind of part that is asked about. */
export interface ComponentCase {
  readonly type: ComponentType;
  readonly checks: readonly Check[];
  /** ids of checks of this component: a dangerous finding by one of them is cured by working on it */
  readonly checkIds: ReadonlySet<string>;
  readonly wearing: readonly WearingCase[];
}

/** What of a question bears on the component and its sizes. */
type SizesAsked = Pick<
  AssessmentQuestion,
  'componentType' | 'position' | 'characteristicId' | 'unwornSize' | 'criterionSize'
>;

/** Everything about the component that is data: its characteristics, checks and limits, the shop's own before shipped ones. */
export async function componentCaseOf(tx: ShopTransaction, question: SizesAsked): Promise<ComponentCase> {
  const type = await componentTypeOf(tx, question.componentType);
  if (!type.positions.includes(question.position)) {
    throw invalidInput(
      '/position',
      'position',
      `A ${type.name} is at ${type.positions.join(' or ')}, not at "${question.position}".`,
    );
  }
  const checks = (await latestSheets(tx))
    .flatMap((sheet) => sheet.checks)
    .filter(({ componentTypeId }) => componentTypeId === type.id);
  const shopLimits = (await tx.shopLimits.all({})).map(({ content }) => content.limit);
  const worn = type.characteristics.filter(
    ({ id, trend, wearDirection }) =>
      trend === 'wear' &&
      wearDirection !== 'none' &&
      (question.characteristicId === null || id === question.characteristicId),
  );
  if (worn.length === 0) {
    throw question.characteristicId === null
      ? notPossible(`Nothing is known of a ${type.name} that wears and can be measured.`)
      : invalidInput('/characteristicId', 'reference', `A ${type.name} has no such wearing characteristic.`);
  }
  const wearing = worn.flatMap((characteristic) => wearingCase(characteristic, checks, shopLimits, question));
  if (wearing.length === 0) {
    throw notPossible(
      'It is not known at which size the part no longer does its work, or which size it has without wear. Give criterionSize and unwornSize, with the characteristic they are of.',
    );
  }
  return { type, checks, checkIds: new Set(checks.map(({ id }) => id)), wearing };
}

/** The same without a question, for the shop's usual sizes; null where it is not known what wears, and to which size. */
export async function componentCaseIfKnown(
  tx: ShopTransaction,
  componentType: string,
): Promise<ComponentCase | null> {
  const own = await tx.componentTypes.all({ code: componentType });
  const type = own.at(-1)?.content.definition ?? shippedComponentTypes.find(({ id }) => id === componentType);
  const [position] = type?.positions ?? [];
  if (position === undefined) return null;
  const usual = { componentType, position, characteristicId: null, unwornSize: null, criterionSize: null };
  try {
    return await componentCaseOf(tx, usual);
  } catch (error) {
    if (error instanceof DomainError && error.code === 'assessment.notPossible') return null;
    throw error;
  }
}

function notPossible(detail: string): DomainError {
  return new DomainError('assessment.notPossible', detail);
}

async function componentTypeOf(tx: ShopTransaction, id: string): Promise<ComponentType> {
  const own = await tx.componentTypes.all({ code: id });
  const type = own.at(-1)?.content.definition ?? shippedComponentTypes.find((each) => each.id === id);
  if (type === undefined)
    throw invalidInput('/componentType', 'reference', `This shop knows no kind of part "${id}".`);
  return type;
}

function wearingCase(
  characteristic: Characteristic,
  checks: readonly Check[],
  shopLimits: readonly Limit[],
  question: SizesAsked,
): WearingCase[] {
  const check = checks.find(({ characteristicId }) => characteristicId === characteristic.id);
  const { quantityKind, canonicalUnit, wearDirection } = characteristic;
  if (check === undefined || quantityKind === null || canonicalUnit === null || wearDirection === 'none')
    return [];
  const lowest = characteristic.lowestPossible;
  const unworn =
    question.unwornSize !== null
      ? Number(question.unwornSize)
      : wearDirection === 'up' && lowest !== null
        ? canonicalNumber(lowest, quantityKind)
        : null;
  const own = shopLimits.filter((limit) => limit.characteristic === characteristic.id);
  const bound = [...own, ...check.limits].map((limit) => wearBound(limit, wearDirection)).find(Boolean);
  const criterion =
    question.criterionSize !== null
      ? Number(question.criterionSize)
      : bound === undefined || bound === null
        ? null
        : canonicalNumber(bound.value, quantityKind);
  if (unworn === null || criterion === null) return [];
  if (wearDirection === 'up' ? criterion <= unworn : criterion >= unworn) {
    throw invalidInput(
      '/criterionSize',
      'order',
      `This characteristic goes ${wearDirection} as it wears: the size at which the part no longer does its work lies on that side of the unworn size.`,
    );
  }
  const sizes: WearingCharacteristic = {
    characteristicId: characteristic.id,
    unit: canonicalUnit,
    direction: wearDirection,
    unwornSize: unworn,
    criterionSize: criterion,
  };
  return [{ characteristic, check, sizes }];
}

/** The edge of a wear limit on the side of wear; an advisory limit is none, nor one that may not be judged by yet. */
export function wearBound(
  { criterion, severity, judging }: Limit,
  direction: 'up' | 'down',
): LimitBound | null {
  if (severity === 'advisory' || judging !== 'allowed') return null;
  if (criterion.kind === 'maximum' && direction === 'up') return criterion.bound;
  if (criterion.kind === 'minimum' && direction === 'down') return criterion.bound;
  return null;
}
