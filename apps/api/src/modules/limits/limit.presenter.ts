import type { LimitDto, LimitListItem, ShopLimitResponse } from '@endfloat/contracts';
import type { LimitView, ShopLimitRecord } from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';

type Limit = LimitView['limit'];

export function presentLimit(limit: Limit): LimitDto {
  return {
    id: limit.id,
    characteristic: limit.characteristic,
    quantityKind: limit.quantityKind,
    criterion: { ...limit.criterion },
    advisory: limit.advisory === null ? null : { ...limit.advisory },
    severity: limit.severity,
    jurisdiction: limit.jurisdiction,
    applicability: { ...limit.applicability },
    conditions: { ...limit.conditions },
    exclusions: limit.exclusions.map(({ id, key, rule }) => ({ id, key, rule: { ...rule } })),
    correction: limit.correction === null ? null : { ...limit.correction },
    edition: {
      validFrom: limit.edition.validFrom,
      validTo: limit.edition.validTo,
      source: limit.edition.source,
      citation: limit.edition.citation,
    },
    origin: limit.origin,
    judging: limit.judging,
    thresholds: { inside: limit.thresholds.inside, outside: limit.thresholds.outside },
    asWritten: limit.asWritten,
    note: limit.note,
  };
}

export function presentLimitListItem({ limit, record }: LimitView): LimitListItem {
  return {
    recordId: record?.id ?? null,
    recordVersion: record?.revision ?? null,
    limit: presentLimit(limit),
  };
}

export function presentShopLimit(record: ShopLimitRecord): ShopLimitResponse {
  return { ...presentRecorded(record), limit: presentLimit(record.content.limit) };
}
