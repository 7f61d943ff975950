import type { ComebackDetailResponse, ComebackResponse } from '@endfloat/contracts';
import {
  shopAmount,
  symptomNames,
  type ComebackReason,
  type ComebackRecord,
  type ComebackView,
  type ProposalProbability,
} from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';

/** Why a link is proposed, in words the desk can read to a customer. */
const reasonTexts: Readonly<Record<string, (values: Readonly<Record<string, string>>) => string>> = {
  sameSymptoms: ({ symptoms = '' }) => `The same complaint as then: ${listed(symptoms)}.`,
  sameSymptomFamily: ({ families = '' }) => `A complaint of the same kind as then: ${listed(families)}.`,
  sameComponent: ({ components = '' }) =>
    `It points to a part that was worked on then: ${listed(components)}.`,
  beganAfterRepair: () => 'The customer says that it began after that repair.',
  insideWindow: ({ days = '-', windowDays = '-', km, windowKm }) =>
    `${days} of ${windowDays} days since the release${km === undefined ? '' : `, ${km} of ${windowKm ?? '-'} km`}: inside the watch window.`,
  outsideWindow: ({ days = '-', windowDays = '-', km, windowKm }) =>
    `${days} days since the release (window ${windowDays} days)${km === undefined ? '' : `, ${km} km (window ${windowKm ?? '-'} km)`}: outside the watch window.`,
  distanceUnreliable: () => 'The distance cannot be relied on, so only days count.',
  repeatOfEarlierJob: ({ jobs = '' }) => `That job was itself a repeat of job ${listed(jobs)}.`,
  linkedByPerson: () => 'Linked by a person, not by a rule.',
};

/** Ids separated by commas, by name where they have one. */
function listed(text: string): string {
  return text
    .split(',')
    .map((id) => symptomNames.get(id) ?? id)
    .join('; ');
}

function presentReason({ code, values }: ComebackReason): ComebackResponse['reasons'][number] {
  return { code, values, detail: reasonTexts[code]?.(values) ?? `Reason ${code}.` };
}

export function presentComeback(record: ComebackRecord): ComebackResponse {
  const { state, attribution, reasons, likeness, daysSinceRelease, kmSinceRelease, insideWindow, note } =
    record.content;
  const { probability = null } = record.content;
  return {
    ...presentRecorded(record),
    complaintId: record.identity.complaintId,
    jobId: record.identity.jobId,
    state,
    attribution,
    reasons: reasons.map(presentReason),
    likeness: Number(likeness),
    probability: probability === null ? null : presentProbability(probability),
    daysSinceRelease,
    kmSinceRelease,
    insideWindow,
    note,
  };
}

function presentProbability(probability: ProposalProbability): NonNullable<ComebackResponse['probability']> {
  const { value, lower, upper, confidence, priorMean, priorWeight, confirmed, refused } = probability;
  return {
    value: Number(value),
    interval: {
      low: Number(lower),
      high: Number(upper),
      level: Number(confidence),
      method: 'betaPosterior',
    },
    priorMean: Number(priorMean),
    priorWeight,
    confirmed,
    refused,
  };
}

export function presentComebackDetail(view: ComebackView, withCost: boolean): ComebackDetailResponse {
  const { record, originalJobIds, repeatJobId, cost, currency } = view;
  const amount = (text: string) => ({ ...shopAmount(text, currency) });
  return {
    ...presentComeback(record),
    originalJobIds: [...originalJobIds],
    repeatJobId,
    cost:
      cost === null || !withCost
        ? null
        : {
            labour: amount(cost.labour),
            parts: amount(cost.parts),
            handling: amount(cost.handling),
            total: amount(cost.total),
            gaps: cost.gaps,
          },
  };
}
