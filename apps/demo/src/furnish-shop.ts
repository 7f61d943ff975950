import {
  OpenShopUseCase,
  RecordCalibrationUseCase,
  RecordCustomerUseCase,
  RecordDeliveryUseCase,
  RecordInstrumentUseCase,
  RecordOfferUseCase,
  type Instrument,
  type UnitOfWork,
} from '@endfloat/workshop';
import { callerOf } from './demo-intake.js';
import { furnishPlan } from './furnish-plan.js';
import type { HistoryClock, SeededIds } from './history-clock.js';
import {
  customers,
  demoInstruments,
  demoSecret,
  demoShopId,
  hashOf,
  owner,
  partsPerson,
  users,
} from './people.js';

const settings = {
  name: 'Quillmarsh Van Works',
  timeZone: 'Europe/Lisbon',
  currency: 'EUR',
  labourRatePerHour: '80.00',
  downtimeCostPerDay: '60.00',
  comebackHandling: '250.00',
  comebackWindowDays: 90,
  comebackWindowKm: '5000',
  planningDistanceKm: '120000',
  rankingMinimumJobs: 20,
};

/** Opens the demo shop with its people, customers, instruments and suppliers. Everything is invented. */
export async function furnishShop(
  work: UnitOfWork,
  clock: HistoryClock,
  ids: SeededIds,
  secret: string,
): Promise<void> {
  await new OpenShopUseCase(work, clock, ids).execute({ shopId: demoShopId, settings, owner });
  await addPeople(work, clock, secret);
  const recordCustomer = new RecordCustomerUseCase(work, clock, ids);
  for (const { id, name, kind, downtimeCostPerDay } of customers) {
    const customer = { kind, contact: { name }, downtimeCostPerDay, planningDistanceKm: null };
    await recordCustomer.execute(callerOf(owner), { id, customer });
  }
  await addOffers(work, clock, ids);
  await addInstruments(work, clock, ids);
  await furnishPlan(work, clock, ids);
}

async function addPeople(work: UnitOfWork, clock: HistoryClock, secret: string): Promise<void> {
  const stamp = { at: clock.now(), by: owner.id };
  await work.run(demoShopId, async (tx) => {
    for (const user of users) {
      if (user.id !== owner.id) {
        const content = {
          displayName: user.displayName,
          roles: [user.role],
          customerId: user.customer,
          active: true,
        };
        await tx.users.add(user.id, {}, content, stamp);
      }
      await tx.apiKeys.add({
        id: user.keyId,
        userId: user.id,
        name: 'demo key',
        secretHash: hashOf(demoSecret(secret, user)),
        roles: [user.role],
        expiresAt: null,
        recordedAt: stamp.at,
        recordedBy: owner.id,
      });
    }
  });
}

async function addInstruments(work: UnitOfWork, clock: HistoryClock, ids: SeededIds): Promise<void> {
  const add = async (
    id: string,
    instrument: Omit<Instrument, 'retiredOn'>,
    dueInDays: number,
  ): Promise<void> => {
    await new RecordInstrumentUseCase(work, clock, ids).execute(callerOf(owner), {
      id,
      instrument: { ...instrument, retiredOn: null },
    });
    const day = (after: number): string =>
      new Date(Date.parse(clock.now()) + after * 86_400_000).toISOString().slice(0, 10);
    const calibration = {
      calibratedOn: day(-1),
      dueOn: day(dueInDays),
      passed: true,
      certificate: null,
      note: null,
    };
    await new RecordCalibrationUseCase(work, clock, ids).execute(callerOf(owner), {
      instrumentId: id,
      calibration,
    });
  };
  await add(
    demoInstruments.dial,
    {
      kind: 'dialIndicator',
      name: 'dial on magnetic base, bay 1',
      serial: 'D-1',
      properties: {
        errorModel: { kind: 'maximumPermissibleError', limit: { value: '0.015', unit: 'mm' } },
        resolution: { value: '0.01', unit: 'mm' },
      },
    },
    1095,
  );
  await add(
    demoInstruments.blades,
    {
      kind: 'feelerBlades',
      name: 'feeler blades, set 2',
      serial: null,
      properties: {
        errorModel: {
          kind: 'bladeSet',
          blades: ['0.04', '0.05', '0.06', '0.07', '0.08', '0.10', '0.15'].map((value) => ({
            value,
            unit: 'mm' as const,
          })),
          permissibleError: { value: '0.005', unit: 'mm' },
        },
        resolution: null,
      },
    },
    1095,
  );
  await add(
    demoInstruments.vacuum,
    {
      kind: 'lowRangeVacuumGauge',
      name: 'low-range gauge 0 to 10 kPa, class 2.5',
      serial: 'V-7',
      properties: {
        errorModel: {
          kind: 'accuracyClassOfSpan',
          accuracyClass: '2.5',
          span: { value: '10', unit: 'kPa' },
        },
        resolution: { value: '0.2', unit: 'kPa' },
      },
    },
    420,
  );
  await add(
    demoInstruments.meter,
    {
      kind: 'ohmmeter',
      name: 'multimeter, bay 1',
      serial: 'M-3',
      properties: {
        errorModel: {
          kind: 'percentOfReadingPlusDigits',
          percent: '0.5',
          digits: 3,
          digit: { value: '0.1', unit: 'Ohm' },
        },
        resolution: { value: '0.1', unit: 'Ohm' },
      },
    },
    1095,
  );
}

const suppliers = [
  {
    supplier: 'Rill & Daughters',
    condition: 'remanufactured',
    amount: '310.00',
    deposit: '80.00',
    promised: 3,
    delivered: [3, 4, 3, 5],
    warrantyMonths: 12,
  },
  {
    supplier: 'Harl Breakers',
    condition: 'used',
    amount: '120.00',
    deposit: null,
    promised: 2,
    delivered: [4, 9, 3],
    warrantyMonths: 3,
  },
  {
    supplier: 'Oxbow Stores',
    condition: 'newOldStock',
    amount: '520.00',
    deposit: null,
    promised: 10,
    delivered: [14, 13],
    warrantyMonths: 12,
  },
  {
    supplier: 'Birchmoor Castings',
    condition: 'repairedOwnPart',
    amount: '35.00',
    deposit: null,
    promised: 1,
    delivered: [1, 2, 1, 3],
    warrantyMonths: null,
  },
] as const;

async function addOffers(work: UnitOfWork, clock: HistoryClock, ids: SeededIds): Promise<void> {
  const day = (after: number): string =>
    new Date(Date.parse(clock.now()) + after * 86_400_000).toISOString().slice(0, 10);
  const money = (amount: string) => ({ amount, currency: settings.currency });
  for (const { supplier, condition, amount, deposit, promised, delivered, warrantyMonths } of suppliers) {
    const { record } = await new RecordOfferUseCase(work, clock, ids).execute(callerOf(partsPerson), {
      offer: {
        componentType: 'throttle-housing',
        condition,
        supplier,
        partNumber: null,
        price: money(amount),
        coreDeposit: deposit === null ? null : money(deposit),
        promisedLeadDays: promised,
        warrantyMonths,
        validUntil: null,
      },
    });
    for (const [index, days] of delivered.entries()) {
      const start = -200 + index * 40;
      const delivery = {
        orderedOn: day(start),
        promisedOn: day(start + promised),
        arrivedOn: day(start + days),
      };
      await new RecordDeliveryUseCase(work, clock, ids).execute(callerOf(partsPerson), {
        offerId: record.id,
        delivery,
      });
    }
  }
}
