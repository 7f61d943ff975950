/**
 * Who may do what is decided by role. `fleetManager` belongs to one customer and sees that customer's vehicles only;
 * all others see the whole shop.
 */
export const shopRoles = [
  'owner',
  'desk',
  'technician',
  'parts',
  'fleetManager',
  'developer',
  'auditor',
] as const;
export type ShopRole = (typeof shopRoles)[number];

/** Who is asking. Taken from the credential alone, never from a request body. */
export interface Caller {
  readonly shopId: string;
  readonly userId: string;
  readonly roles: readonly ShopRole[];
  /** set for a customer's user: only this customer's vehicles exist for them */
  readonly customerId?: string | undefined;
  /** the credential changes nothing */
  readonly readOnly?: boolean | undefined;
}
