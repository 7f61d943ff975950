import type { PersonalRecord } from './records/shop.records.js';
import type { ShopRole } from './roles.js';

/** The shop itself. */
export interface ShopStore {
  /** Records the shop of this transaction; false when it was there already. */
  add(recordedAt: string): Promise<boolean>;
  exists(): Promise<boolean>;
}

export interface ApiKey {
  readonly id: string;
  readonly userId: string;
  readonly name: string;
  /** SHA-256 of the secret, hexadecimal */
  readonly secretHash: string;
  /** the key may do what both its user and this list may */
  readonly roles: readonly ShopRole[];
  readonly expiresAt: string | null;
  readonly recordedAt: string;
  readonly recordedBy: string;
  readonly revokedAt: string | null;
  readonly revokedBy: string | null;
  /** the key changes nothing */
  readonly readOnly: boolean;
  /** the key whose place this one takes */
  readonly replaces: string | null;
  /** to within a minute */
  readonly lastUsedAt: string | null;
}

/** A key as it is made; it may write and replaces none unless told. */
export type NewApiKey = Omit<ApiKey, 'revokedAt' | 'revokedBy' | 'readOnly' | 'replaces' | 'lastUsedAt'> &
  Partial<Pick<ApiKey, 'readOnly' | 'replaces'>>;

export interface ApiKeyStore {
  add(key: NewApiKey): Promise<void>;
  find(id: string): Promise<ApiKey | undefined>;
  list(): Promise<readonly ApiKey[]>;
  /** false when there is no such key or it was revoked before */
  revoke(id: string, at: string, by: string): Promise<boolean>;
  /** Lets a key end at this moment unless it ends sooner; others who do so wait. False where it was revoked before. */
  endAt(id: string, at: string): Promise<boolean>;
  /** Notes that a key was used. */
  noteUse(id: string, at: string): Promise<void>;
}

export interface PersonalRecordStore {
  add(record: Omit<PersonalRecord, 'erasedAt'>, by: string): Promise<void>;
  findMany(ids: readonly string[]): Promise<readonly PersonalRecord[]>;
  ofCustomer(customerId: string): Promise<readonly PersonalRecord[]>;
  /** Erases the content for good; the row stays and says who did it and why. Answers how many were erased. */
  erase(ids: readonly string[], by: string, at: string, reason: string): Promise<number>;
}

export const learnedSubjects = ['diagnosis', 'decision'] as const;
export type LearnedSubject = (typeof learnedSubjects)[number];

/** Tables as a shop has learned them. */
export interface StoredTables {
  readonly subject: LearnedSubject;
  readonly version: string;
  /** SHA-256 of the canonical text of `document` */
  readonly hash: string;
  readonly learnedAt: string;
  readonly document: unknown;
}

/** Learned tables: a projection that can be dropped and rebuilt; every one that was in use stays, by its hash. */
export interface LearnedTablesStore {
  add(tables: StoredTables): Promise<void>;
  /** those in use; undefined where the shop has learned nothing yet */
  latest(subject: LearnedSubject): Promise<StoredTables | undefined>;
  byHash(subject: LearnedSubject, hash: string): Promise<StoredTables | undefined>;
}
