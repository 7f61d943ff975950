import type {
  AssessRequest,
  PreviewAssessmentRequest,
  PreviewOfferDto,
  PreviewOptionDto,
  ReadingDoubtDto,
} from '@endfloat/contracts';
import type { FunctionalCriterion, LeadTime, OptionTerms, PartOffer } from '@endfloat/decision';
import type { AssessmentQuestion, InlineInspection, PreviewCommand } from '@endfloat/workshop';

export function toQuestion(request: AssessRequest): AssessmentQuestion {
  return {
    vehicleId: request.vehicleId,
    jobId: request.jobId,
    componentType: request.componentType,
    position: request.position,
    occasion: request.occasion ?? null,
    characteristicId: request.characteristicId ?? null,
    unwornSize: request.unwornSize ?? null,
    criterionSize: request.criterionSize ?? null,
    options:
      request.options?.map(({ action, labourHours, workshopDays }) => ({
        action,
        labourHours: labourHours ?? null,
        workshopDays: workshopDays ?? null,
      })) ?? null,
    declinedActions: request.declinedActions ?? [],
    furtherReadingsDeclined: request.furtherReadingsDeclined ?? false,
    ...toOwnRates(request),
    planningDistanceKm: request.planningDistanceKm ?? null,
    serviceIntervalKm: request.serviceIntervalKm ?? null,
    isUsableWhileWaiting: request.isUsableWhileWaiting ?? null,
    coreLossChance: request.coreLossChance ?? null,
  };
}

function toOwnRates(
  request: AssessRequest,
): Pick<AssessmentQuestion, 'labourPerHour' | 'downtimePerDay' | 'comebackHandling'> {
  return {
    labourPerHour: request.labourPerHour ?? null,
    downtimePerDay: request.downtimePerDay ?? null,
    comebackHandling: request.comebackHandling ?? null,
  };
}

const numberOrNull = (text: string | null): number | null => (text === null ? null : Number(text));

function toDoubt(doubt: ReadingDoubtDto | null): InlineInspection['doubt'] {
  if (doubt === null) return null;
  return { repeat: Number(doubt.repeat), setUp: Number(doubt.setUp), bias: Number(doubt.bias) };
}

function toLeadTime(leadTime: PreviewOfferDto['leadTime']): LeadTime {
  if (leadTime.kind === 'inStock') return { kind: 'inStock' };
  return {
    kind: 'toOrder',
    promisedDays: numberOrNull(leadTime.promisedDays),
    delivered: leadTime.delivered.map(({ promisedDays, actualDays }) => ({
      promisedDays: numberOrNull(promisedDays),
      actualDays: Number(actualDays),
    })),
  };
}

function toOffer(offer: PreviewOfferDto): PartOffer {
  const { offerId, supplier, condition, price, core, arrivalWear } = offer;
  return {
    offerId,
    supplierId: supplier,
    condition,
    price,
    leadTime: toLeadTime(offer.leadTime),
    core:
      core === undefined
        ? null
        : { deposit: core.deposit, probabilityOfLosing: Number(core.probabilityOfLosing) },
    arrivalWear:
      arrivalWear === undefined
        ? { kind: 'notMeasured' }
        : {
            kind: 'measured',
            value: Number(arrivalWear.value),
            standardUncertainty: Number(arrivalWear.standardUncertainty),
            evidence: [],
          },
    warranty: {
      coversPart: offer.warrantyCoversPart ?? false,
      coversLabour: offer.warrantyCoversLabour ?? false,
    },
  };
}

function toOption(option: PreviewOptionDto): OptionTerms {
  const { optionId, action, labourHours, workshopDays, offers } = option;
  return {
    optionId,
    action,
    labourHours: Number(labourHours),
    workshopDays: Number(workshopDays),
    offers: offers.map(toOffer),
  };
}

function toCriterion(criterion: PreviewAssessmentRequest['functionalCriterion']): FunctionalCriterion {
  if (criterion.kind === 'notDone') return { kind: 'notDone' };
  const { kind, isValid, id } = criterion;
  return { kind, isValid, evidence: id === undefined ? [] : [id] };
}

export function toPreviewCommand(request: PreviewAssessmentRequest): PreviewCommand {
  const { characteristic, rates, furtherReadings } = request;
  return {
    characteristic: {
      characteristicId: characteristic.characteristicId,
      unit: characteristic.unit,
      direction: characteristic.direction,
      unwornSize: Number(characteristic.unwornSize),
      criterionSize: Number(characteristic.criterionSize),
    },
    occasion: request.occasion,
    currency: request.currency,
    planningDistanceKm: Number(request.planningDistanceKm),
    watchWindowKm: Number(request.watchWindowKm),
    serviceIntervalKm: numberOrNull(request.serviceIntervalKm),
    isUsableWhileWaiting: request.isUsableWhileWaiting,
    inspections: request.inspections.map(({ kmSinceFitted, instrument, values, doubt, id }) => ({
      kmSinceFitted: numberOrNull(kmSinceFitted),
      instrument,
      values: values.map(Number),
      doubt: toDoubt(doubt),
      evidence: id === undefined ? [] : [id],
    })),
    evidence: {
      functionalCriterion: toCriterion(request.functionalCriterion),
      earlierComebacks: { count: request.earlierComebacks, evidence: [] },
      safetyFindings: request.safetyFindings.map(({ findingId, curedBy }) => ({
        findingId,
        curedBy,
        evidence: [],
      })),
    },
    rates: {
      labourPerHour: rates.labourPerHour,
      downtimePerDay: rates.downtimePerDay,
      comebackHandling: rates.comebackHandling,
      laterComplaint: {
        labourHours: Number(rates.laterComplaintHours),
        downtimeDays: Number(rates.laterComplaintDays),
      },
    },
    options: request.options.map(toOption),
    furtherReadings:
      furtherReadings === null
        ? null
        : {
            count: furtherReadings.count,
            minutes: furtherReadings.minutes,
            wereOffered: furtherReadings.wereOffered,
            doubt: toDoubt(furtherReadings.doubt),
          },
    consent: { declinedActions: request.declinedActions, ceiling: request.consentCeiling, evidence: [] },
    seed: request.seed ?? 1,
    depth: request.omitFlipPoints === true ? 'withoutFlipPoints' : 'full',
  };
}
