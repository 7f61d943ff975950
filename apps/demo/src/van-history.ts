import type { ReadingEntry } from '@endfloat/workshop';
import type { DemoDesk } from './demo-desk.js';
import { demoInstruments, technicians, type DemoCustomer, type DemoUser } from './people.js';
import type { SeededRandom } from './seeded-random.js';
import {
  complaintHazard,
  drive,
  newVan,
  playThatWorksSwitch,
  replacementOf,
  sayingOf,
  type VanTruth,
} from './van-world.js';

export interface VanPlan {
  readonly vehicleId: string;
  readonly number: number;
  readonly customer: DemoCustomer;
  /** instants between which the history lies */
  readonly from: string;
  readonly until: string;
}

type Measured = Omit<ReadingEntry, 'takenAt' | 'measuredBy' | 'position' | 'place' | 'note' | 'conditions'>;

const serviceEveryKm = 12_000;
const stepDays = 7;

/** Two years of one van: services with a look at the shaft, complaints, what was done, and what came back. */
export async function makeVanHistory(shop: DemoDesk, plan: VanPlan, random: SeededRandom): Promise<void> {
  const van = newVan(random);
  await recordVan(shop, plan, van, random);
  let nextService = van.km + random.between(1_000, serviceEveryKm);
  let wornAndAdjusted = false;
  for (;;) {
    const next = new Date(Date.parse(shop.clock.now()) + stepDays * 86_400_000).toISOString();
    if (next > plan.until) return;
    shop.clock.moveTo(next);
    drive(van, stepDays, random);
    const hazard = complaintHazard(van) * (wornAndAdjusted ? 2 : 1);
    if (random.happens(1 - Math.exp(-hazard * stepDays))) {
      wornAndAdjusted = await complaintVisit(shop, plan, van, random, wornAndAdjusted);
    } else if (van.km >= nextService) {
      await serviceVisit(shop, plan, van, random);
      nextService = van.km + serviceEveryKm;
    }
  }
}

async function recordVan(shop: DemoDesk, plan: VanPlan, van: VanTruth, random: SeededRandom): Promise<void> {
  const serial = String(1000 + plan.number).padStart(6, '0');
  await shop.vehicle({
    id: plan.vehicleId,
    customerId: plan.customer.id,
    ownedFrom: plan.from,
    vehicle: {
      chassisNumber: `ZZZDEMV4XLA${serial}`,
      plate: `QX ${String(10 + plan.number)} ${random.pick(['LTN', 'MRS', 'FEN', 'OAK'])}`,
      label: `Van ${String(plan.number)}`,
      firstUsedOn: `${String(random.whole(1989, 1999))}-0${String(random.whole(1, 9))}-1${String(random.whole(0, 9))}`,
      application: 'panel-van-petrol',
      attributes: {},
      expectedKmPerYear: String(Math.round(van.kmPerDay * 365)),
      observedSpans: [{ from: plan.from, until: null }],
      retiredOn: null,
    },
  });
  await shop.originalHousing(plan.vehicleId);
}

/** A service without a complaint: the shaft is looked at, so that its wear can be followed. */
async function serviceVisit(
  shop: DemoDesk,
  plan: VanPlan,
  van: VanTruth,
  random: SeededRandom,
): Promise<void> {
  const technician = random.pick(technicians);
  const jobId = await shop.job(plan.vehicleId, { complaintIds: [], km: String(van.km), technician });
  const inspectionId = await shop.inspection(plan.vehicleId, jobId, technician);
  await shop.readings(inspectionId, technician, [...linkage(), ...playReadings(van, random)]);
  await shop.proveAndRelease(jobId, technician);
}

/** A visit because of a complaint. Answers whether a worn shaft was left in. */
async function complaintVisit(
  shop: DemoDesk,
  plan: VanPlan,
  van: VanTruth,
  random: SeededRandom,
  repeat: boolean,
): Promise<boolean> {
  const technician = random.pick(technicians);
  const { record, comebacks } = await shop.complaint(plan.vehicleId, {
    ...sayingOf(random),
    km: String(van.km),
  });
  const jobId = await shop.job(plan.vehicleId, { complaintIds: [record.id], km: String(van.km), technician });
  const worn = van.play >= playThatWorksSwitch;
  const inspectionId = await shop.inspection(plan.vehicleId, jobId, technician);
  await shop.readings(inspectionId, technician, [
    ...linkage(),
    {
      checkId: 'shaft-moves-switch',
      phase: 'asFound',
      result: { kind: 'yesNo', answer: worn },
      instrumentId: demoInstruments.meter,
    },
    ...playReadings(van, random),
    ...settingReadings(van, random, 'asFound'),
  ]);
  for (const [index, { id, content }] of comebacks.entries()) {
    const same = content.insideWindow && index === 0 && (repeat || random.happens(0.5));
    await shop.settle(
      id,
      same
        ? {
            state: 'confirmed',
            attribution: repeat ? 'wrongRootCause' : 'workmanship',
            reason: 'same complaint, the customer says it never went away',
          }
        : { state: 'refused', attribution: null, reason: 'another cause was found' },
    );
  }
  const replace = worn && (repeat || random.happens(0.7));
  if (replace) await replaceHousing(shop, jobId, technician, van, random);
  else {
    await shop.workWithConsent(jobId, technician, [
      { action: 'clean', minutes: random.whole(20, 40) },
      {
        action: 'adjustSwitch',
        minutes: random.whole(15, 30),
        from: van.switchOff ? 'closes too late' : 'in the window',
        to: 'closed on the 0.07 mm blade',
      },
    ]);
    van.switchOff = false;
  }
  await shop.readings(inspectionId, technician, settingReadings(van, random, 'asLeft'));
  await shop.proveAndRelease(jobId, technician);
  return worn && !replace;
}

async function replaceHousing(
  shop: DemoDesk,
  jobId: string,
  technician: DemoUser,
  van: VanTruth,
  random: SeededRandom,
): Promise<void> {
  const { part, play, waitDays } = replacementOf(random);
  const lines = [
    {
      action: 'replace' as const,
      minutes: random.whole(95, 130),
      part,
      partsAmount: part.price?.amount ?? '0.00',
    },
    { action: 'adjustSwitch' as const, minutes: 20, to: 'closed on the 0.07 mm blade' },
  ];
  await shop.workWithConsent(jobId, technician, lines, waitDays);
  van.play = play;
  van.rate = Math.exp(random.normal(Math.log(0.06), 0.5));
  van.switchOff = false;
}

function linkage(): readonly Measured[] {
  return ['linkage-return', 'linkage-free-play'].map((checkId) => ({
    checkId,
    phase: 'asFound' as const,
    result: { kind: 'yesNo' as const, answer: true },
    instrumentId: null,
  }));
}

function playReadings(van: VanTruth, random: SeededRandom): readonly Measured[] {
  const read = (truth: number): string => Math.max(0, random.normal(truth, 0.02)).toFixed(2);
  const number = (checkId: string, truth: number): Measured => ({
    checkId,
    phase: 'asFound',
    result: { kind: 'number', shown: read(truth), unit: 'mm' },
    instrumentId: demoInstruments.dial,
  });
  return [
    ...Array.from({ length: 3 }, () => number('shaft-radial-play-lower', van.play)),
    number('shaft-radial-play-upper', van.play * 0.6),
  ];
}

/** Port vacuum and switch, in the order the sheet wants. */
function settingReadings(
  van: VanTruth,
  random: SeededRandom,
  phase: 'asFound' | 'asLeft',
): readonly Measured[] {
  const vacuum = Math.max(0, random.normal(van.play > playThatWorksSwitch ? 1.6 : 0.4, 0.3)).toFixed(1);
  const off = phase === 'asFound' && van.switchOff;
  return [
    {
      checkId: 'purge-port-vacuum-idle',
      phase,
      result: { kind: 'number', shown: vacuum, unit: 'kPa' },
      instrumentId: demoInstruments.vacuum,
    },
    {
      checkId: 'idle-switch-closing-point',
      phase,
      result: {
        kind: 'bladePair',
        largestClosed: off ? '0.10' : '0.06',
        smallestOpen: off ? '0.15' : '0.08',
        unit: 'mm',
      },
      instrumentId: demoInstruments.blades,
    },
  ];
}
