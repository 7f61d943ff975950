import type * as records from '@endfloat/workshop/ports';
import type { RecordTable } from './record-table.js';

/** Where endpoints of webhooks lie; their deliveries and secrets have no revisions. */
export const webhookTables = {
  webhookEndpoints: {
    name: 'webhook_endpoint',
    identity: {},
    columns: { state: 'text' },
    sort: { by: 'firstRecordedAt', descending: true },
  } satisfies RecordTable<records.NoReferences, records.WebhookEndpoint>,
};
