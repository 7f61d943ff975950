import { createHash, createHmac } from 'node:crypto';
import type { ShopRole } from '@endfloat/workshop';

/** Everything in here is invented: the town, the firms, the people. */
export const demoShopId = '01900000-0000-7000-8000-00000000d3a0';

const id = (kind: string, index: number): string =>
  `01900000-0000-7000-8000-${kind}${index.toString(16).padStart(10, '0')}`;

export interface DemoUser {
  readonly id: string;
  readonly keyId: string;
  readonly displayName: string;
  readonly role: ShopRole;
  readonly customer: string | null;
}

const user = (
  index: number,
  displayName: string,
  role: ShopRole,
  customer: string | null = null,
): DemoUser => ({
  id: id('aa', index),
  keyId: id('bb', index),
  displayName,
  role,
  customer,
});

export const owner = user(1, 'Odile Marrow', 'owner');
export const desk = user(2, 'Wren Fallow', 'desk');
export const partsPerson = user(3, 'Jory Pike', 'parts');
export const technicians = [
  user(4, 'Bram Sedgewick', 'technician'),
  user(5, 'Ilse Tarn', 'technician'),
  user(6, 'Corin Vasey', 'technician'),
  user(7, 'Nell Harrow', 'technician'),
  user(8, 'Piet Oakum', 'technician'),
] as const;

export interface DemoCustomer {
  readonly id: string;
  readonly name: string;
  readonly kind: 'person' | 'fleetOperator';
  readonly vans: number;
  readonly downtimeCostPerDay: string | null;
}

const customer = (
  index: number,
  name: string,
  kind: DemoCustomer['kind'],
  vans: number,
  downtimeCostPerDay: string | null,
): DemoCustomer => ({
  id: id('cc', index),
  name,
  kind,
  vans,
  downtimeCostPerDay,
});

export const fleets = [
  customer(1, 'Brindle Parcels', 'fleetOperator', 14, '95.00'),
  customer(2, 'Tamsin Vale Bakeries', 'fleetOperator', 11, '120.00'),
  customer(3, 'Lowmere Glaziers', 'fleetOperator', 8, null),
] as const;

const privateNames = [
  'Ottoline Farrow',
  'Hob Trevanion',
  'Sunniva Kell',
  'Marten Quill',
  'Isolde Brack',
  'Fenn Garrow',
  'Lucan Pettifer',
  'Merle Ashdown',
  'Tobin Wray',
  'Ansel Corrow',
];
export const privateCustomers = privateNames.map((name, index) =>
  customer(10 + index, name, 'person', 1, null),
);
export const customers: readonly DemoCustomer[] = [...fleets, ...privateCustomers];

export const fleetManagers = [
  user(20, 'Agathe Brindle', 'fleetManager', fleets[0].id),
  user(21, 'Rufus Tamsin', 'fleetManager', fleets[1].id),
  user(22, 'Perpetua Low', 'fleetManager', fleets[2].id),
] as const;
export const developer = user(30, 'Front-end developer', 'developer');
export const auditor = user(31, 'Edda Stonecroft', 'auditor');

export const users: readonly DemoUser[] = [
  owner,
  desk,
  partsPerson,
  ...technicians,
  ...fleetManagers,
  developer,
  auditor,
];

/** Ids that stay the same at every start, so that loading can go on where it was cut off. */
export const demoInstruments = {
  dial: id('dd', 1),
  blades: id('dd', 2),
  vacuum: id('dd', 3),
  meter: id('dd', 4),
} as const;
/** What is done to every van from time to time. */
export const demoPlanItems = { oil: id('df', 1), fuelFilter: id('df', 2), beltCheck: id('df', 3) } as const;
export const demoVehicleId = (number: number): string => id('ee', number);

/** Key of a person of the demo shop: follows from the secret of the installation, so it is the same at every start. */
export function demoSecret(secret: string, person: DemoUser): string {
  return createHmac('sha256', secret).update(`demo ${person.id}`).digest('base64url');
}

export function hashOf(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}
