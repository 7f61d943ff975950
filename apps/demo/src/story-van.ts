import { CorrectReadingUseCase, exactly } from '@endfloat/workshop';
import type { DemoDesk } from './demo-desk.js';
import { callerOf } from './demo-intake.js';
import { demoInstruments, demoVehicleId, fleets, technicians } from './people.js';

const day = 86_400_000;
/** Days before the end of the history at which the story begins. */
export const storyBeginsDaysAgo = 75;
export const storyVehicleId = demoVehicleId(0);

const [ilse] = [technicians[1]];

/**
 * The van the walk-through follows: adjusted because nothing but stop and switch was out, back after six weeks, its
 * shaft then found worn, and a remanufactured housing fitted.
 */
export async function makeStoryVan(shop: DemoDesk, until: string): Promise<void> {
  shop.clock.moveTo(new Date(Date.parse(until) - storyBeginsDaysAgo * day).toISOString());
  await shop.vehicle({
    id: storyVehicleId,
    customerId: fleets[0].id,
    vehicle: {
      chassisNumber: 'ZZZTEST7XZA000014',
      plate: 'QX 14 LTN',
      label: 'Van 14',
      firstUsedOn: '1991-04-02',
      application: 'panel-van-petrol',
      attributes: {},
      expectedKmPerYear: '22000',
      observedSpans: [],
      retiredOn: null,
    },
  });
  await shop.originalHousing(storyVehicleId);
  await shop.servicedBefore(storyVehicleId, 184_200, 120);
  await firstVisit(shop);
  shop.clock.moveTo(new Date(Date.parse(until) - (storyBeginsDaysAgo - 42) * day).toISOString());
  await secondVisit(shop);
}

const words = 'The revs go up when I put the air on, and it kicks in town.';
const symptoms = {
  'idle-rises-with-ac': 'present',
  'bucks-at-light-throttle': 'present',
  'idle-hunts-warm': 'present',
  'stalls-cold': 'absent',
} as const;

const yes = (checkId: string, answer = true, phase: 'asFound' | 'asLeft' = 'asFound') =>
  ({ checkId, phase, result: { kind: 'yesNo', answer }, instrumentId: demoInstruments.meter }) as const;
const play = (shown: string, checkId = 'shaft-radial-play-lower', phase: 'asFound' | 'asLeft' = 'asFound') =>
  ({
    checkId,
    phase,
    result: { kind: 'number', shown, unit: 'mm' },
    instrumentId: demoInstruments.dial,
  }) as const;
const vacuum = (shown: string, phase: 'asFound' | 'asLeft' = 'asFound') =>
  ({
    checkId: 'purge-port-vacuum-idle',
    phase,
    result: { kind: 'number', shown, unit: 'kPa' },
    instrumentId: demoInstruments.vacuum,
  }) as const;
const blades = (largestClosed: string, smallestOpen: string, phase: 'asFound' | 'asLeft' = 'asFound') =>
  ({
    checkId: 'idle-switch-closing-point',
    phase,
    result: { kind: 'bladePair', largestClosed, smallestOpen, unit: 'mm' },
    instrumentId: demoInstruments.blades,
  }) as const;

async function firstVisit(shop: DemoDesk): Promise<void> {
  const { record } = await shop.complaint(storyVehicleId, { words, symptoms, km: '184200' });
  const jobId = await shop.job(storyVehicleId, { complaintIds: [record.id], km: '184200', technician: ilse });
  const inspectionId = await shop.inspection(storyVehicleId, jobId, ilse);
  await shop.readings(inspectionId, ilse, [
    yes('linkage-return'),
    yes('linkage-free-play'),
    yes('shaft-moves-switch', false),
  ]);
  const measured = await shop.readings(inspectionId, ilse, [
    play('0.51'),
    play('0.14'),
    play('0.15'),
    play('0.09', 'shaft-radial-play-upper'),
  ]);
  await correctMistyped(shop, measured.readings[0]?.record);
  await shop.readings(inspectionId, ilse, [
    vacuum('5.2'),
    yes('stop-screw-paper', false),
    blades('0.10', '0.15'),
  ]);
  await shop.workWithConsent(jobId, ilse, [
    {
      action: 'adjustStop',
      minutes: 18,
      from: 'turned in',
      to: 'grips a strip of paper',
      stopReason: 'screw found turned in, paint broken; port vacuum at idle',
    },
    {
      action: 'adjustSwitch',
      minutes: 20,
      from: 'closes beyond the 0.10 mm blade',
      to: 'closed on the 0.07 mm blade',
    },
  ]);
  await shop.readings(inspectionId, ilse, [
    vacuum('0.4', 'asLeft'),
    yes('stop-screw-paper', true, 'asLeft'),
    blades('0.06', '0.08', 'asLeft'),
  ]);
  await shop.proveAndRelease(jobId, ilse);
}

/** 0.15 mm was typed as 0.51: corrected with the reason, and both stay visible. */
async function correctMistyped(
  shop: DemoDesk,
  reading: { readonly id: string; readonly content: { readonly takenAt: string } } | undefined,
): Promise<void> {
  if (reading === undefined) throw new RangeError('the mistyped reading was not recorded');
  await new CorrectReadingUseCase(shop.work, shop.clock, shop.ids).execute(callerOf(ilse), {
    id: reading.id,
    expected: exactly(1),
    entry: {
      ...play('0.15'),
      takenAt: reading.content.takenAt,
      measuredBy: ilse.id,
      position: null,
      place: null,
      note: null,
      conditions: {},
    },
    valueConfirmed: false,
    reason: 'digits swapped when typing: the dial showed 0.15',
  });
}

async function secondVisit(shop: DemoDesk): Promise<void> {
  const { record, comebacks } = await shop.complaint(storyVehicleId, {
    words: 'Same as before, it never quite went away.',
    symptoms,
    km: '186950',
  });
  const jobId = await shop.job(storyVehicleId, { complaintIds: [record.id], km: '186950', technician: ilse });
  for (const { id } of comebacks) {
    await shop.settle(id, {
      state: 'confirmed',
      attribution: 'wrongRootCause',
      reason: 'same complaint inside the window; the shaft had been left in',
    });
  }
  const inspectionId = await shop.inspection(storyVehicleId, jobId, ilse);
  await shop.readings(inspectionId, ilse, [
    yes('linkage-return'),
    yes('linkage-free-play'),
    blades('0.06', '0.08'),
    yes('shaft-moves-switch'),
  ]);
  await shop.readings(inspectionId, ilse, [play('0.22'), play('0.21'), play('0.24')]);
  await shop.readings(inspectionId, ilse, [
    play('0.27'),
    play('0.27'),
    play('0.13', 'shaft-radial-play-upper'),
  ]);
  const part = {
    condition: 'remanufactured' as const,
    supplier: 'Rill & Daughters',
    partNumber: null,
    serial: 'RD-20417',
    batch: 'B3',
    price: { amount: '310.00', currency: 'EUR' },
  };
  await shop.workWithConsent(
    jobId,
    ilse,
    [
      { action: 'replace', minutes: 108, part, partsAmount: '310.00' },
      { action: 'adjustSwitch', minutes: 20, to: 'closed on the 0.07 mm blade' },
    ],
    3,
  );
  await shop.readings(inspectionId, ilse, [
    yes('linkage-return', true, 'asLeft'),
    yes('linkage-free-play', true, 'asLeft'),
    yes('shaft-moves-switch', false, 'asLeft'),
    play('0.03', 'shaft-radial-play-lower', 'asLeft'),
    vacuum('0.2', 'asLeft'),
    blades('0.06', '0.08', 'asLeft'),
  ]);
  await shop.proveAndRelease(jobId, ilse);
}
