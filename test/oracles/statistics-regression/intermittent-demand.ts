/** Hyndman & Athanasopoulos (2018), Forecasting: Principles and Practice, 2nd ed., series productC: 36 months. */
export const intermittentDemand: readonly number[] = [
  0, 2, 0, 1, 0, 11, 0, 0, 0, 0, 2, 0, 6, 3, 0, 0, 0, 0, 0, 7, 0, 0, 0, 0, 0, 0, 0, 3, 1, 0, 0, 1, 0, 1, 0, 0,
];
