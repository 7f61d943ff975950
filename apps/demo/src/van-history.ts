import { linkage, playReadings } from './bench-readings.js';
import { complaintVisit } from './complaint-visit.js';
import type { DemoDesk } from './demo-desk.js';
import { demoPlanItems, technicians, type DemoCustomer } from './people.js';
import type { SeededRandom } from './seeded-random.js';
import { complaintHazard, drive, newVan, sayingOf, type VanTruth } from './van-world.js';

export interface VanPlan {
  readonly vehicleId: string;
  readonly number: number;
  readonly customer: DemoCustomer;
  /** instants between which the history lies */
  readonly from: string;
  readonly until: string;
}

const serviceEveryKm = 12_000;
const stepDays = 7;

/** Two years of one van: services with a look at the shaft, complaints, what was done, and what came back. */
export async function makeVanHistory(shop: DemoDesk, plan: VanPlan, random: SeededRandom): Promise<void> {
  const van = newVan(random);
  await recordVan(shop, plan, van, random);
  let nextService = van.km + random.between(1_000, serviceEveryKm);
  for (;;) {
    const next = new Date(Date.parse(shop.clock.now()) + stepDays * 86_400_000).toISOString();
    if (next > plan.until) return;
    shop.clock.moveTo(next);
    drive(van, stepDays, random);
    const { returning } = van;
    if (returning !== null && returning.at <= next) {
      await complaintVisit(shop, plan.vehicleId, van, random, returning.saying);
    } else if (returning === null && random.happens(1 - Math.exp(-complaintHazard(van) * stepDays))) {
      await complaintVisit(shop, plan.vehicleId, van, random, sayingOf(random));
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
  await shop.servicedBefore(plan.vehicleId, van.km, random.whole(20, 400));
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
  const done = random.happens(0.5) ? [demoPlanItems.oil, demoPlanItems.fuelFilter] : [demoPlanItems.oil];
  for (const item of done) await shop.service(plan.vehicleId, item, String(van.km));
  await shop.proveAndRelease(jobId, technician);
}
