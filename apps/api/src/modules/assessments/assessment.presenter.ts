import type {
  AssessmentAnswer,
  AssessmentReasonDto,
  AssessmentResponse,
  EvidenceLinkDto,
  FurtherCheckDto,
  FlipsAtDto,
  GuardDto,
  NoFlipDto,
  ReadingsValueDto,
  RecommendationDto,
  ReplayResponse,
} from '@endfloat/contracts';
import type { Assessment, FlipPoint, GuardFinding, Reason } from '@endfloat/decision';
import {
  evidenceLink,
  renderText,
  type AssessmentRecord,
  type AssessmentSources,
  type FurtherCheck,
  type PreviewOutcome,
  type ReplayOutcome,
} from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';
import { presentOption } from './assessment-option.presenter.js';
import { checkWorthText, moneyUnknownTexts } from './check-worth-texts.js';
import { presentAdvice } from './preventive-advice.presenter.js';
import { actionTexts, flipTexts, guardTexts, inWords, reasonText, sentence } from './assessment-texts.js';

/** Words for the options of one assessment, by id. */
type OptionWords = (optionId: string | null) => string | null;

function wordsOf({ options }: Assessment): OptionWords {
  const words = new Map(options.map(({ optionId, action }) => [optionId, actionTexts[action]]));
  return (optionId) => (optionId === null ? null : (words.get(optionId) ?? optionId));
}

function presentEvidence(evidence: readonly string[]): EvidenceLinkDto[] {
  return [...new Set(evidence)].map((each) => {
    const { kind, id } = evidenceLink(each);
    return { kind, id };
  });
}

function presentReason(reason: Reason, words: OptionWords): AssessmentReasonDto {
  const { code, optionId, values, evidence } = reason;
  return {
    code,
    optionId,
    // By name: a stored answer comes back with its members in another order.
    values: Object.entries(values)
      .map(([name, { value, unit }]) => ({ name, value, unit }))
      .sort((a, b) => (a.name < b.name ? -1 : 1)),
    evidence: presentEvidence(evidence),
    detail: reasonText(reason, words(optionId)),
  };
}

function presentGuard({ code, optionId, evidence }: GuardFinding, words: OptionWords): GuardDto {
  const detail = sentence(guardTexts[code], {}, words(optionId));
  return { code, optionId, evidence: presentEvidence(evidence), detail };
}

const whyNone = {
  noOptions: 'No option was given.',
  nothingPriced: 'No option can be priced; each says why.',
  nothingAdmissible:
    'The guards leave no option. The van may only be handed over unrepaired, not for the road.',
} as const;

const dangerFirst =
  'A dangerous finding is open: it is put right before anything else, and until then the van is not for the road. ';

function presentRecommendation(result: Assessment, words: OptionWords): RecommendationDto {
  const { recommendation, reasons } = result;
  const first = reasons.some(({ code }) => code === 'safetyFinding') ? dangerFirst : '';
  const consent = ' The customer has still to consent to the amount.';
  switch (recommendation.kind) {
    case 'recommended': {
      const { kind, optionId, consentNeeded } = recommendation;
      const detail = `${first}Recommended: ${words(optionId) ?? optionId}.${consentNeeded ? consent : ''}`;
      return { kind, optionId, consentNeeded, detail };
    }
    case 'closeCall': {
      const { kind, optionIds, consentNeeded } = recommendation;
      const names = optionIds.map((id) => words(id) ?? id).join('; ');
      const detail = `${first}A close call, cheapest first: ${names}. A person may take any of them.${consentNeeded ? consent : ''}`;
      return { kind, optionIds: [...optionIds], consentNeeded, detail };
    }
    case 'measureFirst': {
      const { kind, optionId, readings } = recommendation;
      const detail = `${first}Take ${String(readings)} more readings first. Without them it would be: ${words(optionId) ?? optionId}.`;
      return { kind, optionId, readings, detail };
    }
    case 'none':
      return { kind: 'none', why: recommendation.why, detail: whyNone[recommendation.why] };
  }
}

function presentFlip(flip: FlipPoint, words: OptionWords): FlipsAtDto | NoFlipDto {
  const { quantity, optionId, now } = flip;
  const of = optionId === null ? '' : ` (${words(optionId) ?? optionId})`;
  const head = `If ${flipTexts[quantity]}${of} were`;
  const tail = `Now it is ${inWords(now)}.`;
  if (flip.kind === 'flipsAt') {
    const to = words(flip.toOptionId) ?? flip.toOptionId;
    const detail = `${head} ${inWords(flip.at)}, the cheapest would be to ${to}. ${tail}`;
    return { kind: flip.kind, quantity, optionId, now, at: flip.at, toOptionId: flip.toOptionId, detail };
  }
  const { kind, lower, upper } = flip;
  const detail = `${head} anything from ${inWords(lower)} to ${inWords(upper)}, nothing would change. ${tail}`;
  return { kind, quantity, optionId, now, lower, upper, detail };
}

const whyNotSaid = {
  notAvailable: 'No further set of readings can be had, or its uncertainty is not known.',
  labourRateMissing: 'The prices are not known.',
  fewerThanTwoOptions: 'There is nothing to choose between, so no reading can change the choice.',
} as const;

function presentReadingsValue({ furtherReadings }: Assessment): ReadingsValueDto {
  if (furtherReadings.kind === 'cannotBeSaid') {
    const { kind, why } = furtherReadings;
    return { kind, why, detail: whyNotSaid[why] };
  }
  const { kind, expectedGain, cost, readings } = furtherReadings;
  const gain = `${expectedGain.amount} ${expectedGain.currency}`;
  const judged = kind === 'worthIt' ? 'worth their cost' : 'not worth their cost';
  const detail = `${String(readings)} more readings are ${judged}: they save ${gain} on average and cost ${cost.amount} ${cost.currency}.`;
  return { kind, expectedGain, cost, readings, detail };
}

function presentFurtherCheck(check: FurtherCheck): FurtherCheckDto {
  if (check.kind === 'cannotBeSaid')
    return { kind: check.kind, why: check.why, detail: moneyUnknownTexts[check.why] };
  const { kind, diagnosticCheckId, chain, minutes, expectedSaving, cost, net, isOpeningMove } = check;
  return {
    kind,
    diagnosticCheckId,
    chain: [...chain],
    minutes,
    expectedSaving,
    cost,
    net,
    isOpeningMove,
    inspectionId: check.inspectionId,
    tablesVersion: check.tablesVersion,
    tablesHash: check.tablesHash,
    detail: checkWorthText({ ...check, isWorthIt: kind === 'worthIt' }),
  };
}

/** What an assessment answers beside the decision. */
type FurtherAnswers = Pick<AssessmentRecord['content'], 'furtherCheck' | 'advice'>;

/** Assessments of before these were told hold no such members. */
function furtherAnswers({ content }: AssessmentRecord): FurtherAnswers {
  const { furtherCheck, advice }: Partial<FurtherAnswers> = content;
  return { furtherCheck: furtherCheck ?? null, advice: advice ?? null };
}

/** The answer as it leaves: codes with their words, evidence as links, counts and the caution beside it. */
export function presentAnswer(
  result: Assessment,
  sources: AssessmentSources,
  inputHash: string,
  further: FurtherAnswers,
): AssessmentAnswer {
  const { furtherCheck, advice } = further;
  const words = wordsOf(result);
  const { modelVersion, tablesVersion, tablesHash, seed, draws, belief } = result;
  const { observations, wearLeftOut, offersLeftOut, otherDangerousFindings } = sources;
  const { mean, lower, upper } = belief.wearNow;
  return {
    modelVersion,
    tablesVersion,
    tablesHash,
    inputHash,
    seed,
    draws,
    recommendation: presentRecommendation(result, words),
    options: result.options.map(presentOption),
    guards: result.guards.map((guard) => presentGuard(guard, words)),
    reasons: result.reasons.map((reason) => presentReason(reason, words)),
    flipPoints: result.flipPoints.map((flip) => presentFlip(flip, words)),
    furtherReadings: presentReadingsValue(result),
    advice: advice === null ? null : presentAdvice(advice),
    furtherCheck: furtherCheck === null ? null : presentFurtherCheck(furtherCheck),
    belief: {
      wearNow: { mean, lower, upper },
      probabilityBeyondCriterion: belief.probabilityBeyondCriterion,
      ratePerThousandKm: belief.ratePerThousandKm,
    },
    observations: {
      readings: observations.readings,
      wearPoints: observations.wearPoints,
      deliveries: observations.deliveries,
    },
    wearLeftOut,
    offersLeftOut: offersLeftOut.map(({ offerId, why }) => ({ offerId, why })),
    otherDangerousFindings: [...otherDangerousFindings],
    overdueInstrumentIds: [...(sources.overdueInstrumentIds ?? [])],
    caution: renderText('safety.precedence'),
  };
}

export function presentAssessment(record: AssessmentRecord): AssessmentResponse {
  const { result, sources, inputHash, question } = record.content;
  return {
    ...presentRecorded(record),
    vehicleId: record.identity.vehicleId,
    jobId: record.identity.jobId,
    fittedPartId: record.identity.fittedPartId,
    componentType: question.componentType,
    position: question.position,
    ...presentAnswer(result, sources, inputHash, furtherAnswers(record)),
  };
}

export function presentPreview({ result, sources, inputHash, advice }: PreviewOutcome): AssessmentAnswer {
  return presentAnswer(result, sources, inputHash, { furtherCheck: null, advice });
}

export function presentReplay(outcome: ReplayOutcome): ReplayResponse {
  const { record, replayed, isEqual, isInputUnchanged, inputHash } = outcome;
  return {
    assessmentId: record.id,
    isEqual,
    isInputUnchanged,
    inputHash,
    modelVersion: record.content.modelVersion,
    replayedModelVersion: replayed.modelVersion,
    answer: presentAnswer(replayed, record.content.sources, inputHash, furtherAnswers(record)),
  };
}
