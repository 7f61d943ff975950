import type { AssessmentInput, LearnedTables } from '@endfloat/decision';
import type { Money } from '@endfloat/metrology';
import type { WearTrendOutcome } from '@endfloat/wear';
import { localDay } from '../bench/local-day.js';
import { overdueInstrumentsOf } from '../bench/overdue-instruments.js';
import { DomainError } from '../errors/domain.errors.js';
import type { Recorded } from '../ports/record-store.port.js';
import type { AssessmentQuestion, AssessmentSources } from '../ports/records/decide.records.js';
import type { Customer, NoReferences, ShopSettings } from '../ports/records/shop.records.js';
import type { FittedPart, OfVehicle } from '../ports/records/vehicles.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { partFittedAt } from '../intake/fitted-parts.use-case.js';
import { ownerOf } from '../recording/vehicle-visibility.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { componentCaseOf, type ComponentCase, type WearingCase } from './component-case.js';
import { readingLinks } from './evidence.js';
import { gatherCriterion } from './gather-criterion.js';
import { gatherComebacks, gatherConsent, gatherDangers } from './gather-history.js';
import { gatherOptions } from './gather-offers.js';
import { gatherWear, type MeasuredPart, type MeasuredPlace } from './gather-wear.js';
import { assessmentSeed, laterComplaint } from './repair-tariffs.js';
import { wearFindings, type ReadingsOnOffer, type WearFindings } from './wear-series.js';

/** Everything an assessment rests on, read in one transaction. */
export interface BuiltInput {
  readonly fittedPart: Recorded<OfVehicle, FittedPart> | undefined;
  readonly input: AssessmentInput;
  readonly sources: AssessmentSources;
  /** course of the wear, for advice beyond the decision */
  readonly wear: { readonly trend: WearTrendOutcome; readonly points: number };
}

/** Gathers the evidence a question is about; the same records give the same input. */
export async function buildInput(
  tx: ShopTransaction,
  question: AssessmentQuestion,
  given: { readonly now: string; readonly tables: LearnedTables; readonly readingsTaken: ReadingsTaken },
): Promise<BuiltInput> {
  const settings = await settingsOf(tx);
  const component = await componentCaseOf(tx, question);
  const { vehicleId, componentType, position } = question;
  const fittedPart = await partFittedAt(tx, { vehicleId, componentType, position }, given.now);
  const measured: MeasuredPart = { vehicleId, position, part: fittedPart };
  const { wearing, findings } = await worstWear(tx, measured, component, (usual, sets) => ({
    ...usual,
    wereOffered: question.furtherReadingsDeclined || given.readingsTaken(fittedPart?.id ?? null, sets),
  }));
  const dangers = await gatherDangers(tx, vehicleId, component.checkIds);
  const today = localDay(given.now, settings.timeZone);
  const offers = await gatherOptions(tx, question, { today, windowDays: settings.comebackWindowDays });
  const customer = await customerOf(tx, vehicleId, given.now);
  const input: AssessmentInput = {
    characteristic: wearing.sizes,
    occasion: question.occasion ?? (await usualOccasion(tx, question)),
    currency: settings.currency,
    planningDistanceKm: Number(
      question.planningDistanceKm ?? customer?.planningDistanceKm ?? settings.planningDistanceKm,
    ),
    watchWindowKm: watchWindowKm(settings),
    serviceIntervalKm: question.serviceIntervalKm === null ? null : Number(question.serviceIntervalKm),
    isUsableWhileWaiting: question.isUsableWhileWaiting ?? false,
    evidence: {
      wearNow: findings.wearNow,
      wearRate: findings.wearRate,
      functionalCriterion: await gatherCriterion(tx, measured, component.checks, wearing.characteristic.id),
      earlierComebacks: await gatherComebacks(tx, question, fittedPart?.content),
      safetyFindings: dangers.here,
    },
    rates: ratesOf(question, settings, customer),
    options: offers.options,
    furtherReadings: findings.furtherReadings,
    consent: await gatherConsent(tx, question),
    tables: given.tables,
    seed: assessmentSeed,
  };
  const sources: AssessmentSources = {
    offersLeftOut: offers.leftOut,
    wearLeftOut: findings.leftOut,
    otherDangerousFindings: dangers.elsewhere,
    overdueInstrumentIds: await overdueInstrumentsOf(tx, readingLinks(JSON.stringify(input.evidence))),
    observations: {
      readings: findings.readings,
      wearPoints: findings.points,
      deliveries: offers.deliveries,
    },
  };
  const wear = { trend: findings.trend, points: findings.points };
  return { fittedPart, input, sources, wear };
}

/** Whether further readings that an earlier assessment asked for have been taken since. */
export type ReadingsTaken = (fittedPartId: string | null, readings: number) => boolean;

async function worstWear(
  tx: ShopTransaction,
  measured: MeasuredPart,
  { wearing }: ComponentCase,
  onOffer: (usual: ReadingsOnOffer, readings: number) => ReadingsOnOffer,
): Promise<{ readonly wearing: WearingCase; readonly findings: WearFindings }> {
  let worst: { wearing: WearingCase; findings: WearFindings; share: number } | null = null;
  for (const each of wearing) {
    const places: readonly MeasuredPlace[] = await gatherWear(tx, measured, each);
    const none: MeasuredPlace = { sets: [], isAwaitingConfirmation: false };
    for (const { sets, isAwaitingConfirmation } of places.length === 0 ? [none] : places) {
      const readings = sets.reduce((sum, { values }) => sum + values.length, 0);
      const usual: ReadingsOnOffer = {
        count: each.characteristic.readingsAdvised,
        minutes: each.check.minutes,
        usualDoubt: usualDoubt(each),
        wereOffered: false,
      };
      const found = wearFindings(sets, each.sizes, onOffer(usual, readings));
      const findings: WearFindings = isAwaitingConfirmation
        ? { ...found, leftOut: 'awaitingConfirmation' }
        : found;
      const share = shareOfCriterion(findings, each);
      if (worst === null || share > worst.share) worst = { wearing: each, findings, share };
    }
  }
  if (worst === null) throw new RangeError('a component case has at least one wearing characteristic');
  return worst;
}

/** How far the wear has gone; -Infinity where nothing was measured, so that what was measured comes first. */
function shareOfCriterion({ wearNow }: WearFindings, { sizes }: WearingCase): number {
  if (wearNow.kind === 'contradictory') return 0;
  if (wearNow.kind === 'notMeasured') return -Infinity;
  return (wearNow.value - sizes.unwornSize) / (sizes.criterionSize - sizes.unwornSize);
}

function usualDoubt({ characteristic: { doubt }, sizes }: WearingCase): ReadingsOnOffer['usualDoubt'] {
  if (doubt?.repeatability?.unit !== sizes.unit || doubt.setUp?.unit !== sizes.unit) return null;
  return { repeat: Number(doubt.repeatability.value), setUp: Number(doubt.setUp.value), bias: 0 };
}

function watchWindowKm({ comebackWindowKm }: ShopSettings): number {
  const km = Number(comebackWindowKm);
  if (km > 0) return km;
  throw new DomainError(
    'assessment.notPossible',
    'The shop watches repairs over no distance, so no chance of a comeback can be reckoned. Set comebackWindowKm above 0.',
  );
}

async function customerOf(
  tx: ShopTransaction,
  vehicleId: string,
  now: string,
): Promise<Customer | undefined> {
  const owner = await ownerOf(tx, vehicleId, now);
  if (owner === undefined) return undefined;
  const customer: Recorded<NoReferences, Customer> | undefined = await tx.customers.find(owner.customerId);
  return customer?.content;
}

async function usualOccasion(
  tx: ShopTransaction,
  { jobId }: AssessmentQuestion,
): Promise<AssessmentInput['occasion']> {
  const complaints = jobId === null ? [] : await tx.complaints.all({ jobId });
  return complaints.length > 0 ? 'complaint' : 'serviceVisit';
}

function ratesOf(
  question: AssessmentQuestion,
  { currency, labourRatePerHour, downtimeCostPerDay, comebackHandling }: ShopSettings,
  customer: Customer | undefined,
): AssessmentInput['rates'] {
  const own = (amount: string): Money => ({ amount, currency });
  return {
    labourPerHour: question.labourPerHour ?? own(labourRatePerHour),
    downtimePerDay: question.downtimePerDay ?? own(customer?.downtimeCostPerDay ?? downtimeCostPerDay),
    comebackHandling: question.comebackHandling ?? own(comebackHandling),
    laterComplaint,
  };
}
