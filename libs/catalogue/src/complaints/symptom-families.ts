/**
 * Complaints that a customer would call the same one. A later complaint of the same family inside the watch window is
 * proposed as a comeback; how long the window is, is a setting of the shop, for all families or for one.
 */
export interface SymptomFamily {
  readonly id: string;
  readonly name: string;
}

export const symptomFamilies: readonly SymptomFamily[] = [
  { id: 'idle-speed', name: 'idle speed wrong or unsteady' },
  { id: 'stalling', name: 'engine stalls' },
  { id: 'light-throttle', name: 'jerks or hesitates at light throttle' },
  { id: 'overrun', name: 'engine speed or fuel stays on when the pedal is released' },
];
