/** What messages to one endpoint are signed with. */
export interface WebhookSecret {
  readonly id: string;
  readonly endpointId: string;
  readonly sealed: string;
  readonly recordedAt: string;
  readonly recordedBy: string;
  /** from when on it signs nothing any more; null while nothing has taken its place */
  readonly endsAt: string | null;
}

export interface WebhookSecretStore {
  add(secret: Omit<WebhookSecret, 'endsAt'>): Promise<void>;
  /** Those that sign at this moment, newest first. */
  signing(endpointId: string, now: string): Promise<readonly WebhookSecret[]>;
  /** Gives every secret of the endpoint that has no end, or a later one, this end. */
  endAll(endpointId: string, endsAt: string): Promise<void>;
}

export const deliveryStates = ['waiting', 'delivered', 'failed', 'withdrawn'] as const;
/** `failed`: given up after the last attempt; `withdrawn`: its endpoint was gone or paused before it was delivered. */
export type DeliveryState = (typeof deliveryStates)[number];

export const attemptOutcomes = [
  'accepted',
  'refused',
  'redirected',
  'gone',
  'timedOut',
  'notReached',
  'addressNotAllowed',
] as const;
export type AttemptOutcome = (typeof attemptOutcomes)[number];

export interface WebhookAttempt {
  readonly number: number;
  readonly startedAt: string;
  readonly endedAt: string;
  readonly outcome: AttemptOutcome;
  /** HTTP status; null where there was none */
  readonly status: number | null;
}

/** One event on its way to one endpoint. */
export interface WebhookDelivery {
  readonly id: string;
  readonly endpointId: string;
  readonly eventId: string;
  readonly eventType: string;
  readonly subjectId: string;
  readonly state: DeliveryState;
  /** attempts that were begun */
  readonly attempts: number;
  /** when the next attempt is due, while it waits */
  readonly dueAt: string;
  readonly recordedAt: string;
  readonly settledAt: string | null;
}

export interface DeliveryList {
  readonly items: readonly WebhookDelivery[];
  readonly next?: { readonly sortValue: string; readonly id: string } | undefined;
}

export interface WebhookDeliveryStore {
  add(delivery: {
    readonly id: string;
    readonly endpointId: string;
    readonly eventId: string;
    readonly at: string;
  }): Promise<void>;
  find(id: string): Promise<WebhookDelivery | undefined>;
  /** Newest first. */
  list(query: {
    readonly endpointId?: string | undefined;
    readonly state?: DeliveryState | undefined;
    readonly after?: { readonly sortValue: string; readonly id: string } | undefined;
    readonly limit: number;
  }): Promise<DeliveryList>;
  attemptsOf(id: string): Promise<readonly WebhookAttempt[]>;
  /**
   * Begins the next attempt of deliveries that are due, at most `perEndpoint` of each endpoint, and puts them off to
   * `until`, so that nobody else begins them before. Rows that another transaction is beginning are passed over.
   */
  claimDue(query: {
    readonly now: string;
    readonly until: string;
    readonly perEndpoint: number;
    readonly limit: number;
    readonly exceptEndpoints: readonly string[];
  }): Promise<readonly WebhookDelivery[]>;
  /** Notes how an attempt went; false when it was noted before. */
  recordAttempt(deliveryId: string, attempt: WebhookAttempt): Promise<boolean>;
  /** Ends a delivery, or says when it is tried again; nothing happens to one that is settled. */
  settle(id: string, state: Exclude<DeliveryState, 'waiting'>, at: string): Promise<boolean>;
  postpone(id: string, dueAt: string): Promise<void>;
  /** Takes back whatever still waits for an endpoint; answers how many. */
  withdrawAll(endpointId: string, at: string): Promise<number>;
}

/** A message as it is sent: signed, and complete. */
export interface WebhookMessage {
  readonly id: string;
  readonly url: string;
  /** seconds since 1970 */
  readonly timestamp: number;
  readonly body: string;
  /** `whsec_...`; one signature each, in this order */
  readonly secrets: readonly string[];
}

export interface SendResult {
  readonly outcome: AttemptOutcome;
  readonly status: number | null;
  /** what the receiver asked for; null where it did not */
  readonly retryAfterSeconds: number | null;
}

/** Sends messages to addresses that may be reached, follows nothing, reads little, waits little. Never throws. */
export abstract class WebhookSender {
  abstract send(message: WebhookMessage): Promise<SendResult>;
}

/** Chance, passed in: a number from 0 up to, not including, 1. */
export abstract class Chance {
  abstract next(): number;
}

/** What the operator of the service settles about webhooks, and the secrets that messages are signed with. */
export abstract class WebhookTerms {
  /** for trials on one machine */
  abstract readonly allowsLoopback: boolean;
  /** A new secret of an endpoint: as its owner is shown it once, and as it is stored. */
  abstract makeSecret(endpointId: string): { readonly shown: string; readonly sealed: string };
  /** `whsec_...` */
  abstract openSecret(sealed: string, endpointId: string): string;
}
