import type pg from 'pg';
import type { OpenPorts } from '@endfloat/api';
import type { Reading } from '@endfloat/workshop';
import { seededUniform } from '../oracles/statistics-survival/seeded-uniform.js';

export const vansMade = 1000;
export const readingsEach = 8;
const characteristic = 'shaft-radial-play-lower';

/** What was made, for those who ask about it. */
export interface ManyVans {
  readonly vehicleIds: readonly string[];
}

const vehicle = (row: number) => ({
  chassisNumber: null,
  numberSearch: null,
  plate: null,
  plateSearch: null,
  label: `Van ${String(row)}`,
  firstUsedOn: '1991-04-02',
  application: null,
  attributes: {},
  expectedKmPerYear: '12000',
  observedSpans: [],
  retiredOn: null,
});

const part = {
  componentType: 'throttle-housing',
  position: 'intake',
  condition: 'original' as const,
  fittedAt: null,
  fittedKm: null,
  removedAt: null,
  removedKm: null,
  serial: null,
  batch: null,
  supplier: null,
  partNumber: null,
  removalReason: null,
  replacesPartId: null,
  workLineId: null,
};

/** A thousand invented vans with eight visits each, a dial, an offer and three items of a plan, written as the use cases leave them. */
export async function makeVans(ports: OpenPorts, admin: pg.Client): Promise<ManyVans> {
  const { work, ids } = ports;
  const { rows } = await admin.query<{ shop: string; person: string; sheet: string }>(
    `SELECT s.id AS shop, u.id AS person, c.id AS sheet FROM shop s JOIN shop_user u ON u.shop_id = s.id
     JOIN check_sheet c ON c.shop_id = s.id JOIN check_sheet_revision r ON r.shop_id = c.shop_id AND r.id = c.id
     WHERE r.document::text LIKE '%shaft-radial-play-lower%' LIMIT 1`,
  );
  const [found] = rows;
  if (found === undefined) throw new Error('the shop of the benchmark has no sheet');
  const stamp = { at: '2026-06-01T08:00:00.000Z', by: found.person };
  const next = seededUniform(20_310_504);
  const dial = ids.next();
  await work.run(found.shop, async (tx) => {
    await tx.instruments.add(
      dial,
      {},
      {
        kind: 'dialIndicator',
        name: 'dial 3',
        serial: null,
        properties: {
          errorModel: { kind: 'maximumPermissibleError', limit: { value: '0.015', unit: 'mm' } },
          resolution: { value: '0.01', unit: 'mm' },
        },
        retiredOn: null,
      },
      stamp,
    );
    for (const [condition, amount] of [
      ['remanufactured', '310.00'],
      ['repairedOwnPart', '35.00'],
      ['used', '120.00'],
    ] as const)
      await tx.offers.add(
        ids.next(),
        {},
        {
          componentType: 'throttle-housing',
          condition,
          supplier: 'Birchmoor Castings',
          partNumber: null,
          price: { amount, currency: 'EUR' },
          coreDeposit: null,
          promisedLeadDays: 2,
          warrantyMonths: null,
          validUntil: null,
        },
        stamp,
      );
    for (const everyKm of ['12000', '30000', '60000'])
      await tx.servicePlanItems.add(
        ids.next(),
        {},
        {
          name: `every ${everyKm} km`,
          componentType: null,
          actions: [],
          everyDays: 365,
          everyKm,
          vehicleId: null,
          application: null,
          inUse: true,
        },
        stamp,
      );
  });
  const vehicleIds: string[] = [];
  const reading = (fittedPartId: string, value: string, km: number, takenAt: string): Reading => ({
    checkId: characteristic,
    characteristic,
    trend: 'wear',
    fittedPartId,
    phase: 'asFound',
    position: 'intake',
    place: null,
    resultKind: 'number',
    shown: value,
    unit: 'mm',
    canonicalValue: value,
    canonicalUnit: 'mm',
    takenAt,
    distanceKm: String(km),
    instrumentId: dial,
    measuredBy: found.person,
    valueConfirmed: true,
    pair: null,
    answer: null,
    grade: null,
    conditions: {},
    note: null,
    warnings: [],
  });
  for (let from = 0; from < vansMade; from += 100) {
    const vans = Array.from({ length: 100 }, (_, row) => ({
      row: from + row,
      vehicleId: ids.next(),
      partId: ids.next(),
      start: 0.02 + 0.02 * next(),
      rate: 0.0004 + 0.001 * next(),
    }));
    vehicleIds.push(...vans.map(({ vehicleId }) => vehicleId));
    const visits = vans.flatMap((one) =>
      Array.from({ length: readingsEach }, (_, visit) => {
        const km = 10_000 + 12_000 * visit;
        const play = one.start + one.rate * (km / 1000) + 0.02 * (next() - 0.5);
        const readAt = `20${String(18 + visit)}-05-04T08:00:00.000Z`;
        return { ...one, id: ids.next(), km, readAt, value: Math.max(0, play).toFixed(2) };
      }),
    );
    await work.run(found.shop, async (tx) => {
      await tx.vehicles.addMany(
        vans.map(({ vehicleId, row }) => ({ id: vehicleId, identity: {}, content: vehicle(row) })),
        stamp,
      );
      await tx.fittedParts.addMany(
        vans.map(({ vehicleId, partId }) => ({ id: partId, identity: { vehicleId }, content: part })),
        stamp,
      );
      await tx.odometerEntries.addMany(
        visits.map(({ vehicleId, km, readAt }) => ({
          id: ids.next(),
          identity: { vehicleId },
          content: {
            shown: String(km),
            unit: 'km' as const,
            readAt,
            distanceKm: String(km),
            reliable: true,
            readBy: null,
            operatingHours: null,
            warnings: [],
            note: null,
          },
        })),
        stamp,
      );
      await tx.inspections.addMany(
        visits.map(({ id, vehicleId, readAt }) => ({
          id,
          identity: { vehicleId, jobId: null, checkSheetId: found.sheet },
          content: { startedAt: readAt, technicianId: null, asFoundNotTaken: [], notDone: [], note: null },
        })),
        stamp,
      );
      await tx.readings.addMany(
        visits.map(({ id, partId, value, km, readAt }) => ({
          id: ids.next(),
          identity: { inspectionId: id },
          content: reading(partId, value, km, readAt),
        })),
        stamp,
      );
    });
  }
  await admin.query('VACUUM ANALYZE');
  return { vehicleIds };
}
