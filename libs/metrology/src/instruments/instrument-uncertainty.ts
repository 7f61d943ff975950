import { canonicalStep } from '../quantities/canonical-number.js';
import { maximumComputedDigits, parseDecimalText } from '../quantities/parse-decimal-text.js';
import type { Quantity } from '../quantities/quantity.js';
import type { QuantityKind } from '../quantities/quantity-kind.js';
import type { DegreesOfFreedom, InstrumentErrorModel } from './instrument.js';

/** Standard uncertainty that an instrument's error brings, canonical unit of the kind, or why it is not known. */
export type InstrumentUncertainty =
  | {
      readonly kind: 'known';
      readonly standardUncertainty: number;
      readonly degreesOfFreedom: DegreesOfFreedom;
      /** Half-width of the rectangular distribution assumed; null for a certificate's uncertainty. */
      readonly halfWidth: number | null;
    }
  | { readonly kind: 'unknown'; readonly why: 'errorModelUnknown' | 'scaleNotLinear' };

/**
 * Standard uncertainty of an instrument at a reading.
 *
 * A stated bound of error is taken as rectangular: u = half-width / sqrt(3), infinite degrees of freedom, because the
 * bound is a promise and not an estimate. A certificate's expanded uncertainty is divided by its coverage factor.
 *
 * @param model    error model
 * @param reading  reading the error is asked for (only `percentOfReadingPlusDigits` depends on it)
 * @param kind     what is measured
 * @returns u in the canonical unit of the kind, 0 for a bound of 0; or `unknown`, also on a reciprocal scale
 * @throws RangeError on a negative bound, a coverage factor that is not positive, a unit of another kind, text that is
 *   no decimal
 * @source JCGM 100:2008, 4.3.7 and 4.3.3
 * @example instrumentUncertainty(
 *   { kind: 'accuracyClassOfSpan', accuracyClass: '1.6', span: { value: '100', unit: 'kPa' } },
 *   { value: '2', unit: 'kPa' }, 'vacuum').kind // => 'known'
 */
export function instrumentUncertainty(
  model: InstrumentErrorModel,
  reading: Quantity,
  kind: QuantityKind,
): InstrumentUncertainty {
  switch (model.kind) {
    case 'unknown':
      return { kind: 'unknown', why: 'errorModelUnknown' };
    case 'maximumPermissibleError':
      return rectangular([{ factor: 1, step: model.limit }], kind);
    case 'bladeSet':
      return rectangular([{ factor: 1, step: model.permissibleError }], kind);
    case 'accuracyClassOfSpan':
      return rectangular([{ factor: perCent(model.accuracyClass), step: model.span }], kind);
    case 'percentOfReadingPlusDigits':
      return rectangular(
        [
          { factor: perCent(model.percent), step: { ...reading, value: reading.value.replace('-', '') } },
          { factor: requireNotNegative(model.digits, 'digits'), step: model.digit },
        ],
        kind,
      );
    case 'expandedUncertainty': {
      if (!(model.coverageFactor > 0 && Number.isFinite(model.coverageFactor)))
        throw new RangeError('a coverage factor is positive and finite');
      const step = canonicalStep(model.expanded, kind);
      if (step.kind !== 'step') return { kind: 'unknown', why: step.kind };
      return {
        kind: 'known',
        standardUncertainty: step.value / model.coverageFactor,
        degreesOfFreedom: model.degreesOfFreedom,
        halfWidth: null,
      };
    }
  }
}

interface ErrorTerm {
  readonly factor: number;
  readonly step: Quantity;
}

function rectangular(terms: readonly ErrorTerm[], kind: QuantityKind): InstrumentUncertainty {
  let halfWidth = 0;
  for (const { factor, step } of terms) {
    const canonical = canonicalStep(step, kind);
    if (canonical.kind !== 'step') return { kind: 'unknown', why: canonical.kind };
    halfWidth += factor * canonical.value;
  }
  return {
    kind: 'known',
    standardUncertainty: halfWidth / Math.sqrt(3),
    degreesOfFreedom: 'infinite',
    halfWidth,
  };
}

function perCent(text: string): number {
  const parsed = parseDecimalText(text, maximumComputedDigits);
  if (parsed.kind !== 'decimal') throw new RangeError(`not a decimal number: ${text.slice(0, 64)}`);
  return requireNotNegative(Number(parsed.text), 'percentage') / 100;
}

function requireNotNegative(value: number, name: string): number {
  if (!(value >= 0) || !Number.isFinite(value)) throw new RangeError(`${name} is a number not below zero`);
  return value;
}
