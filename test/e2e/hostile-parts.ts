type Entry = Readonly<Record<string, unknown>>;

/** What parts people keep, one of everything, for the attacks on every operation. */
export async function addParts({
  mark,
  ids,
  bodies,
  made,
  ago,
}: {
  readonly mark: string;
  readonly ids: Record<string, string>;
  readonly bodies: Record<string, () => Entry>;
  readonly made: (url: string, body: object) => Promise<{ id: string }>;
  readonly ago: (days: number) => string;
}): Promise<void> {
  const eur = (amount: string): Entry => ({ amount, currency: 'EUR' });
  const day = (days: number): string => ago(days).slice(0, 10);
  let numbers = 0;
  bodies['createPart'] = () => ({
    componentType: 'throttle-housing',
    partNumber: `${mark} ${String((numbers += 1))}`,
    title: `${mark} housing`,
    applications: [],
    supersededById: null,
    interchangesWith: [],
    alsoOrder: [],
    note: null,
  });
  ids['partId'] = (await made('/v1/parts', bodies['createPart']())).id;
  bodies['createStockMove'] = () => ({
    partId: ids['partId'],
    condition: 'used',
    kind: 'receive',
    quantity: 1,
    happenedAt: ago(1),
    note: `${mark} shelf`,
  });
  ids['stockMoveId'] = (await made('/v1/stock-moves', bodies['createStockMove']())).id;
  bodies['createCore'] = () => ({
    partId: ids['partId'],
    jobId: null,
    supplier: `${mark} supplier`,
    componentType: 'throttle-housing',
    owedSince: day(9),
    returnBy: day(-9),
    deposit: eur('80.00'),
    serial: null,
    note: null,
  });
  ids['coreId'] = (await made('/v1/cores', bodies['createCore']())).id;
  bodies['createCoreStep'] = () => ({ kind: 'returned', on: day(1), reason: null, amount: null });
  bodies['createWarrantyClaim'] = () => ({
    partId: ids['partId'],
    fittedPartId: null,
    jobId: null,
    supplier: `${mark} supplier`,
    giver: 'part',
    claimedOn: day(2),
    foundOn: day(3),
    months: 12,
    km: '20000',
    amount: eur('310.00'),
    description: `${mark} shaft loose`,
  });
  ids['warrantyClaimId'] = (await made('/v1/warranty-claims', bodies['createWarrantyClaim']())).id;
  bodies['createWarrantyClaimStep'] = () => ({ kind: 'sent', on: day(1), reason: null, amount: null });
  bodies['createArrivalInspection'] = () => ({
    partId: ids['partId'],
    checkSheetId: ids['checkSheetId'],
    stockMoveId: ids['stockMoveId'],
    inspectedAt: ago(1),
    condition: 'used',
    serial: null,
    note: null,
    readings: [
      {
        checkId: 'shaft-radial-play-lower',
        place: null,
        result: { kind: 'number', shown: '0.15', unit: 'mm' },
        instrumentId: ids['instrumentId'],
        takenAt: ago(1),
        conditions: {},
        note: null,
      },
    ],
  });
  ids['arrivalInspectionId'] = (
    await made('/v1/arrival-inspections', bodies['createArrivalInspection']())
  ).id;
  bodies['previewStockLevel'] = () => ({
    demand: { kind: 'rate', perDay: 0.1 },
    leadTimeDays: [9],
    aim: { kind: 'service', measure: 'cycleService', target: 0.9 },
  });
}
