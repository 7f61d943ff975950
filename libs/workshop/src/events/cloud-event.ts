import type { RecordedEvent } from '../ports/event-feed.port.js';

/** An event as it is told to others: structured mode of CloudEvents 1.0.2. */
export interface CloudEvent {
  readonly specversion: '1.0';
  readonly id: string;
  /** the shop in which it happened; with the id unique everywhere */
  readonly source: string;
  readonly type: string;
  /** id of the record it happened to */
  readonly subject: string;
  readonly time: string;
  readonly datacontenttype: 'application/json';
  /** names the schema of `data`; the document has it under `webhooks` */
  readonly dataschema: string;
  readonly data: Readonly<Record<string, unknown>>;
}

/**
 * @source CloudEvents 1.0.2, "Context Attributes" and JSON event format 1.0.2
 * @example cloudEventOf('01890a5d-ac96-774b-bcce-b302099a8057', { id: '01890a5d-ac96-774b-bcce-b302099a8058', type: 'endfloat.job.opened.v1', subjectId: '01890a5d-ac96-774b-bcce-b302099a8059', at: '2031-05-04T09:30:00.000Z', payload: {} }) // => { specversion: '1.0', source: 'urn:uuid:01890a5d-ac96-774b-bcce-b302099a8057', dataschema: 'urn:endfloat:event:endfloat.job.opened.v1' }
 */
export function cloudEventOf(shopId: string, event: RecordedEvent): CloudEvent {
  return {
    specversion: '1.0',
    id: event.id,
    source: `urn:uuid:${shopId}`,
    type: event.type,
    subject: event.subjectId,
    time: event.at,
    datacontenttype: 'application/json',
    dataschema: `urn:endfloat:event:${event.type}`,
    data: event.payload,
  };
}
