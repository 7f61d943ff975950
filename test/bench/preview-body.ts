const eur = (amount: string) => ({ amount, currency: 'EUR' });

/** A repair-or-replace question of usual size: one part, two visits, four options. */
export const previewBody = {
  characteristic: {
    characteristicId: 'shaft-radial-play-lower',
    unit: 'mm',
    direction: 'up',
    unwornSize: '0',
    criterionSize: '0.20',
  },
  occasion: 'complaint',
  currency: 'EUR',
  planningDistanceKm: '120000',
  watchWindowKm: '5000',
  serviceIntervalKm: null,
  isUsableWhileWaiting: false,
  inspections: ['150000', '180000'].map((kmSinceFitted, index) => ({
    kmSinceFitted,
    instrument: 'dial-1',
    values: index === 0 ? ['0.16', '0.17'] : ['0.20', '0.21', '0.22'],
    doubt: { repeat: '0.02', setUp: '0.0153', bias: '0.0087' },
  })),
  functionalCriterion: { kind: 'notDone' },
  earlierComebacks: 0,
  safetyFindings: [],
  rates: {
    labourPerHour: eur('80.00'),
    downtimePerDay: eur('60.00'),
    comebackHandling: eur('250.00'),
    laterComplaintHours: '1',
    laterComplaintDays: '1',
  },
  options: [
    { optionId: 'leave', action: 'leave', labourHours: '0', workshopDays: '0', offers: [] },
    { optionId: 'adjust', action: 'adjust', labourHours: '1.2', workshopDays: '0', offers: [] },
    {
      optionId: 're-bush',
      action: 'reBush',
      labourHours: '4',
      workshopDays: '2',
      offers: [
        {
          offerId: 'bushes',
          supplier: 'Birchmoor Castings',
          condition: 'repairedOwnPart',
          price: eur('35.00'),
          leadTime: { kind: 'inStock' },
        },
      ],
    },
    {
      optionId: 'remanufactured',
      action: 'fitRemanufactured',
      labourHours: '1.8',
      workshopDays: '0.5',
      offers: [
        {
          offerId: 'exchange',
          supplier: 'Birchmoor Castings',
          condition: 'remanufactured',
          price: eur('310.00'),
          leadTime: {
            kind: 'toOrder',
            promisedDays: '3',
            delivered: ['3', '4', '3', '5'].map((actualDays) => ({ promisedDays: '3', actualDays })),
          },
          core: { deposit: eur('80.00'), probabilityOfLosing: '0.1' },
          warrantyCoversPart: true,
        },
      ],
    },
  ],
  furtherReadings: { count: 3, minutes: 5, wereOffered: false, doubt: null },
  declinedActions: [],
  consentCeiling: null,
};
