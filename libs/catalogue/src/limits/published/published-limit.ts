import type {
  ApplicabilityRule,
  Limit,
  LimitCriterion,
  LimitOrigin,
  QuantityKind,
  Severity,
} from '@endfloat/metrology';
import { defineLimit } from '../define-limit.js';

/** Whose rule a limit is. Rules of different places are never merged. */
export const jurisdictions = {
  'us-federal': 'United States, federal rule for commercial motor vehicles',
  'us-federal-periodic-inspection':
    'United States, federal, periodic inspection of commercial motor vehicles',
  'us-federal-model-inspection': 'United States, federal model inspection standard',
  'us-maryland': 'United States, Maryland',
  'us-north-carolina': 'United States, North Carolina',
  'us-ohio': 'United States, Ohio',
  'us-utah': 'United States, Utah',
  'north-america-roadside': 'North America, roadside enforcement',
  'us-army-manual': 'United States Army technical manual',
  'us-aviation-manual': 'United States aviation technical manual',
  eu: 'European Union',
  france: 'France',
  luxembourg: 'Luxembourg',
  uk: 'United Kingdom',
} as const;
export type JurisdictionId = keyof typeof jurisdictions;

/** Published rules of other wearing items as the source has them, and the limits made of each. */
export interface PublishedLimit {
  readonly id: string;
  readonly item: string;
  readonly quantity: string;
  readonly componentTypeId: string;
  readonly unitAsWritten: string;
  readonly asWritten: string;
  readonly conditionsAsWritten: string | null;
  readonly severityAsWritten: string | null;
  /** sources that disagree on one question share a group; all of them are kept */
  readonly conflictGroup: string | null;
  /** more than one where one rule covers several cases, or is dangerous beyond a second value */
  readonly limits: readonly Limit[];
}

type Rules = Readonly<Record<string, ApplicabilityRule>>;

export interface PublishedPart {
  /** appended to the id of the rule where it makes more than one limit */
  readonly suffix?: string;
  readonly criterion: LimitCriterion;
  readonly where?: Rules;
  readonly severity?: Severity;
  readonly jurisdiction?: JurisdictionId;
  /** where the rule limits two characteristics */
  readonly characteristic?: string;
}

export interface PublishedGiven {
  readonly id: string;
  readonly item: string;
  readonly quantity: string;
  readonly component: string;
  readonly characteristic: string;
  readonly kind: QuantityKind | null;
  readonly jurisdiction: JurisdictionId | null;
  readonly unit: string;
  readonly asWritten: string;
  readonly cite: string;
  readonly origin: Extract<LimitOrigin, 'published' | 'memory' | 'commonPractice'>;
  /** to be read in the source before a shop judges by it */
  readonly verify?: boolean;
  readonly edition?: { readonly from?: string; readonly to?: string; readonly text?: string };
  readonly where?: Rules;
  readonly conditions?: Rules;
  readonly conditionsAsWritten?: string;
  readonly severityAsWritten?: string;
  readonly conflictGroup?: string;
  readonly note?: string;
  readonly rest?: Partial<Pick<Limit, 'exclusions' | 'correction'>>;
  readonly parts: readonly PublishedPart[];
}

/** A number from memory, or one that is to be verified, judges nothing until a shop confirms it. */
export function definePublishedLimit(given: PublishedGiven): PublishedLimit {
  const judging = given.origin === 'memory' || given.verify === true ? 'notUntilConfirmed' : 'allowed';
  const limits = given.parts.map((part) =>
    defineLimit({
      id: part.suffix === undefined ? given.id : `${given.id}-${part.suffix}`,
      characteristic: part.characteristic ?? given.characteristic,
      quantityKind: given.kind,
      criterion: part.criterion,
      severity: part.severity ?? 'notClassed',
      jurisdiction: part.jurisdiction ?? given.jurisdiction,
      applicability: { ...given.where, ...part.where },
      conditions: given.conditions ?? {},
      edition: {
        validFrom: given.edition?.from ?? null,
        validTo: given.edition?.to ?? null,
        source: given.edition?.text ?? 'edition not stated',
        citation: given.cite,
      },
      origin: given.origin,
      judging,
      asWritten: given.asWritten,
      note: given.note ?? null,
      ...given.rest,
    }),
  );
  return {
    id: given.id,
    item: given.item,
    quantity: given.quantity,
    componentTypeId: given.component,
    unitAsWritten: given.unit,
    asWritten: given.asWritten,
    conditionsAsWritten: given.conditionsAsWritten ?? null,
    severityAsWritten: given.severityAsWritten ?? null,
    conflictGroup: given.conflictGroup ?? null,
    limits,
  };
}

export const oneOf = (...values: readonly string[]): ApplicabilityRule => ({ kind: 'oneOf', values });
export const noneOf = (...values: readonly string[]): ApplicabilityRule => ({ kind: 'noneOf', values });
export const firstUsed = (from: string | null, before: string | null): ApplicabilityRule => ({
  kind: 'dates',
  ...(from === null ? {} : { from }),
  ...(before === null ? {} : { before }),
});
