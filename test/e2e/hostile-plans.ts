type Entry = Readonly<Record<string, unknown>>;

/** Service plan, gauge studies and what else is decided ahead, one of everything, for the attacks on every operation. */
export async function addPlans({
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
  bodies['createGaugeStudy'] = () => ({
    characteristic: 'shaft-radial-play-lower',
    instrumentKind: 'dialIndicator',
    studiedOn: ago(9).slice(0, 10),
    design: 'crossed',
    poolingLevel: null,
    unit: 'mm',
    measurements: ['first', 'second'].flatMap((appraiser) =>
      [0.1, 0.12, 0.3, 0.32].map((value) => ({
        object: value < 0.2 ? 'housing 1' : 'housing 2',
        appraiser: `${mark} ${appraiser}`,
        value,
      })),
    ),
    inUse: true,
    note: null,
  });
  ids['gaugeStudyId'] = (await made('/v1/gauge-studies', bodies['createGaugeStudy']())).id;
  bodies['createServicePlanItem'] = () => ({
    name: `${mark} filter`,
    componentType: 'fuel-filter',
    actions: ['replace'],
    everyDays: 365,
    everyKm: '15000',
    vehicleId: ids['vehicleId'],
    application: null,
    inUse: true,
  });
  ids['planItemId'] = (await made('/v1/service-plan-items', bodies['createServicePlanItem']())).id;
  bodies['createServiceRecord'] = () => ({
    vehicleId: ids['vehicleId'],
    planItemId: ids['planItemId'],
    doneAt: ago(6),
    distanceKm: null,
    note: null,
  });
  ids['serviceRecordId'] = (await made('/v1/service-records', bodies['createServiceRecord']())).id;
  bodies['withdrawReading'] = () => ({ reason: 'read on the van beside it' });
  bodies['previewKeeping'] = () => ({
    resaleNow: { amount: '1000.00', currency: 'EUR' },
    resaleFallPerYear: '0.5',
    furtherYears: 2,
    expectedRunning: [{ running: '1900' }, { running: '2600' }],
    challenger: {
      price: { amount: '6000.00', currency: 'EUR' },
      years: [
        { running: '1000', resale: '3000' },
        { running: '1200', resale: '1500' },
      ],
    },
    discountRate: null,
  });
}
