/**
 * Complaints that a customer would call the same one. A later complaint of the same family inside the window is proposed
 * as a comeback; the window closes at its days or its distance, whichever is reached first.
 */
export interface SymptomFamily {
  readonly id: string;
  readonly name: string;
  readonly windowDays: number;
  readonly windowKilometres: number;
}

/** Default windows of 90 days and 5000 km: judgement, a setting of the shop. */
export const symptomFamilies: readonly SymptomFamily[] = [
  { id: 'idle-speed', name: 'idle speed wrong or unsteady', windowDays: 90, windowKilometres: 5000 },
  { id: 'stalling', name: 'engine stalls', windowDays: 90, windowKilometres: 5000 },
  {
    id: 'light-throttle',
    name: 'jerks or hesitates at light throttle',
    windowDays: 90,
    windowKilometres: 5000,
  },
  {
    id: 'overrun',
    name: 'engine speed or fuel stays on when the pedal is released',
    windowDays: 90,
    windowKilometres: 5000,
  },
];
