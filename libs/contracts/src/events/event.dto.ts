import {
  FlagField,
  IdField,
  InstantField,
  JsonField,
  KindField,
  ListField,
  PageSizeField,
  TextField,
} from '../fields/index.js';

const placePattern = '^[A-Za-z0-9_-]+\\.[A-Za-z0-9_-]+$';
export const mostEvents = 200;

export class CloudEventDto {
  @KindField('1.0', 'Version of CloudEvents.')
  specversion!: '1.0';

  @IdField({ description: 'Id of the event; the same in the feed and in every webhook that tells of it.' })
  id!: string;

  @TextField({
    description: 'The shop in which it happened.',
    max: 60,
    pattern: '^urn:uuid:[0-9a-f-]{36}$',
    example: 'urn:uuid:01890a5d-ac96-774b-bcce-b302099a8057',
  })
  source!: string;

  @TextField({
    description: 'What happened; types may be added, accept those you do not know.',
    max: 120,
    pattern: '^endfloat\\.[A-Za-z]+\\.[A-Za-z]+\\.v[0-9]+$',
    example: 'endfloat.job.released.v1',
  })
  type!: string;

  @IdField({ description: 'The record it happened to.' })
  subject!: string;

  @InstantField({ description: 'When it was recorded.' })
  time!: string;

  @KindField('application/json', 'Media type of the data.')
  datacontenttype!: 'application/json';

  @TextField({
    description: 'Name of the schema of the data.',
    max: 160,
    pattern: '^urn:endfloat:event:\\S+$',
    example: 'urn:endfloat:event:endfloat.job.released.v1',
  })
  dataschema!: string;

  @JsonField({
    description: 'Ids and codes, no personal data; the schema of each type stands under `webhooks`.',
  })
  data!: Record<string, unknown>;
}

export class ListEventsQuery {
  @PageSizeField()
  pageSize?: string;

  @TextField({
    description: 'Where to go on: `after` of the answer before. The beginning of the feed where absent.',
    optional: true,
    max: 2048,
    pattern: placePattern,
  })
  after?: string;
}

export class EventStretchResponse {
  @ListField({
    description: 'What happened, in the order in which it became true.',
    type: () => CloudEventDto,
    max: mostEvents,
  })
  events!: CloudEventDto[];

  @TextField({
    description: 'Send it as `after` to go on from here, also when there was nothing new.',
    max: 2048,
    pattern: placePattern,
  })
  after!: string;

  @FlagField({ description: 'More is there already.' })
  hasMore!: boolean;
}
