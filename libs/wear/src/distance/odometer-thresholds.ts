/** When a reading looks odd. All judgement, but for the sizes of a mile and of a day. */
export const odometerThresholds = {
  /** more in a day than this since the last reading is taken for a typing error */
  kmPerDay: 1000,
  hoursPerDay: 24,
  /** a display is taken to have rolled over where the last reading was above this part of its capacity */
  rolloverFrom: 0.9,
  /** how near to 1.609 or 0.621 reading / expected must be, as a part */
  unitRatioTolerance: 0.05,
  /** how near to 10 or 0.1 */
  digitRatioTolerance: 0.1,
  /** below this expected number ratios say nothing */
  smallestExpectedForRatio: 1000,
  /** the same number for at least this long is taken for a display that stands still */
  unchangedDays: 60,
  /** shortest span of earlier readings from which a rate is taken */
  rateSpanDays: 30,
} as const;
