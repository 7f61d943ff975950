import type { ComplaintView } from '@endfloat/workshop';
import { linkage, playReadings, settingReadings } from './bench-readings.js';
import type { DemoDesk } from './demo-desk.js';
import { demoInstruments, technicians, type DemoUser } from './people.js';
import type { SeededRandom } from './seeded-random.js';
import { playThatWorksSwitch, truthOfRepair, type Saying, type VanTruth } from './van-world.js';

/** A visit because of a complaint: looked at, decided, repaired, proved; the world settles whether it will hold. */
export async function complaintVisit(
  shop: DemoDesk,
  vehicleId: string,
  van: VanTruth,
  random: SeededRandom,
  saying: Saying,
): Promise<void> {
  const technician = random.pick(technicians);
  const km = String(van.km);
  const view = await shop.complaint(vehicleId, { ...saying, km, beganAfterRepair: van.returning !== null });
  const jobId = await shop.job(vehicleId, { complaintIds: [view.record.id], km, technician });
  const worn = van.play >= playThatWorksSwitch;
  const inspectionId = await shop.inspection(vehicleId, jobId, technician);
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
  await sayWhetherBack(shop, view, van, random);
  const optionId = await choose(shop, { vehicleId, jobId }, worn, random);
  const truth = truthOfRepair(optionId, worn, random);
  await repair(shop, { jobId, technician, optionId }, truth, random, van.switchOff);
  await shop.confirmCause(jobId, causeOf(optionId, van.switchOff, random));
  if (truth.play !== null) {
    van.play = truth.play;
    van.rate = Math.exp(random.normal(Math.log(0.06), 0.5));
  }
  van.switchOff = false;
  await shop.readings(inspectionId, technician, settingReadings(van, random, 'asLeft'));
  await shop.proveAndRelease(jobId, technician);
  van.returning = random.happens(truth.failure)
    ? { at: daysAfter(shop.clock.now(), random.whole(12, 75)), saying, jobId, attribution: truth.attribution }
    : null;
}

const daysAfter = (instant: string, days: number): string =>
  new Date(Date.parse(instant) + days * 86_400_000).toISOString();

/** The desk confirms or refuses what was proposed; now and then it has not come to it yet. */
async function sayWhetherBack(
  shop: DemoDesk,
  { comebacks }: ComplaintView,
  van: VanTruth,
  random: SeededRandom,
): Promise<void> {
  const { returning } = van;
  for (const { id, identity, content } of comebacks) {
    if (identity.jobId === returning?.jobId) {
      const how = content.insideWindow ? 'the customer says it never went away' : 'though late';
      await shop.settle(id, {
        state: 'confirmed',
        attribution: returning.attribution,
        reason: `same complaint, ${how}`,
      });
    } else if (random.happens(0.9)) {
      await shop.settle(id, { state: 'refused', attribution: null, reason: 'another cause was found' });
    }
  }
}

/** What is done: mostly what is advised, else what the customer wants. Without measurable wear nobody asks for advice. */
async function choose(
  shop: DemoDesk,
  visit: { readonly vehicleId: string; readonly jobId: string },
  worn: boolean,
  random: SeededRandom,
): Promise<string> {
  if (!worn && random.happens(0.6)) return 'adjust';
  const { id, advised, open } = await shop.assess(visit.vehicleId, visit.jobId);
  const wish = random.pick(['adjust', 'fitUsed', 'fitRemanufactured']);
  const follows = random.happens(0.7) || !open.includes(wish);
  const chosen = follows ? (advised ?? 'adjust') : wish;
  await shop.decide(id, chosen, follows ? null : 'the customer wants it this way and was told of the costs');
  return chosen;
}

async function repair(
  shop: DemoDesk,
  visit: { readonly jobId: string; readonly technician: DemoUser; readonly optionId: string },
  { part, waitDays }: ReturnType<typeof truthOfRepair>,
  random: SeededRandom,
  wasSwitchOff: boolean,
): Promise<void> {
  const setSwitch = {
    action: 'adjustSwitch' as const,
    minutes: random.whole(15, 30),
    from: wasSwitchOff ? 'closes too late' : 'in the window',
    to: 'closed on the 0.07 mm blade',
  };
  const { jobId, technician, optionId } = visit;
  const first =
    part === null
      ? { action: 'clean' as const, minutes: random.whole(20, 40) }
      : {
          action: optionId === 'reBush' ? ('reBush' as const) : ('replace' as const),
          minutes: optionId === 'reBush' ? random.whole(220, 260) : random.whole(95, 130),
          part,
          partsAmount: part.price?.amount ?? '0.00',
        };
  await shop.workWithConsent(
    jobId,
    technician,
    optionId === 'leave' ? [first] : [first, setSwitch],
    waitDays,
  );
}

function causeOf(optionId: string, wasSwitchOff: boolean, random: SeededRandom): string {
  if (optionId !== 'adjust' && optionId !== 'leave') return 'shaft-worn';
  if (wasSwitchOff) return 'idle-switch-misset-or-faulty';
  return random.pick(['unmetered-air-leak', 'idle-air-valve-faulty', 'other-cause']);
}
