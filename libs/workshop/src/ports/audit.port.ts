export const auditActions = [
  'recorded',
  'corrected',
  'keyMade',
  'keyRevoked',
  'personalDataErased',
  'secretMade',
] as const;
export type AuditAction = (typeof auditActions)[number];

/** Who did what to which record, when, and why where that is asked for. */
export interface AuditEntry {
  /** kind of record, in words of the tables, e.g. fittedPart */
  readonly kind: string;
  readonly recordId: string;
  /** number of the revision that was made */
  readonly version: number;
  readonly action: AuditAction;
  readonly at: string;
  /** null where the database does not tell who */
  readonly by: string | null;
  readonly reason: string | null;
}

export interface AuditQuery {
  readonly from: string;
  readonly until: string;
  readonly by?: string | undefined;
  readonly kind?: string | undefined;
  readonly recordId?: string | undefined;
  readonly after?: { readonly sortValue: string; readonly id: string } | undefined;
  readonly limit: number;
}

export interface AuditTrail {
  /** Newest first. */
  list(query: AuditQuery): Promise<{
    readonly items: readonly AuditEntry[];
    readonly next?: { readonly sortValue: string; readonly id: string } | undefined;
  }>;
}
