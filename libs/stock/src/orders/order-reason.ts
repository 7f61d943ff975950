/** Why so many are to be ordered; sentences are made of code and values at the edge. */
export const orderReasonCodes = [
  'vansReachLimit',
  'vansEndLife',
  'jobsPlanned',
  'comebacksExpected',
  'pastUse',
  'stockAndOrders',
  'levelForService',
  'orderOverdue',
  'leadTimePromisedOnly',
] as const;
/** A code of `orderReasonCodes`. */
export type OrderReasonCode = (typeof orderReasonCodes)[number];
