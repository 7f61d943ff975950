/** What may be done with a worn component. */
export const optionActions = ['leave', 'adjust', 'reBush', 'fitUsed', 'fitRemanufactured', 'fitNew'] as const;

/** An action of `optionActions`. */
export type OptionAction = (typeof optionActions)[number];

/** Actions after which the wearing surfaces are the ones that were there before. */
export const actionsKeepingTheWear = ['leave', 'adjust'] as const satisfies readonly OptionAction[];

/** Actions that start a new trend: other surfaces, with their own start and rate. */
export const renewingActions = [
  'reBush',
  'fitUsed',
  'fitRemanufactured',
  'fitNew',
] as const satisfies readonly OptionAction[];

/** An action of `renewingActions`. */
export type RenewingAction = (typeof renewingActions)[number];

/**
 * Conditions of a part as the comeback model tells them apart. `repairedOwnPart` is the re-bushed housing of the vehicle
 * itself.
 */
export const offeredConditions = [
  'new',
  'newOldStock',
  'remanufactured',
  'rebuilt',
  'reconditioned',
  'used',
  'repairedOwnPart',
] as const;

/** A condition of `offeredConditions`. */
export type OfferedCondition = (typeof offeredConditions)[number];
