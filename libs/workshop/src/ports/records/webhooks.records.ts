export const endpointStates = ['active', 'paused', 'gone'] as const;
/** `gone`: the receiver said so (410); it is told nothing until somebody makes it active again. */
export type EndpointState = (typeof endpointStates)[number];

/** Where a program is told of what happened. */
export interface WebhookEndpoint {
  readonly url: string;
  readonly description: string;
  /** types it is told of; null: all */
  readonly eventTypes: readonly string[] | null;
  readonly state: EndpointState;
}
