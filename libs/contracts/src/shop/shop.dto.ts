import { shopRoles, type ShopRole } from '@endfloat/workshop/ports';
import {
  DecimalField,
  FlagField,
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  ListField,
  PartialType,
  TextField,
  textPatterns,
} from '../fields/index.js';
import { pageOf } from '../paging/index.js';
import { RecordedResponse } from '../recording/index.js';

const amount = (description: string, example: string) =>
  DecimalField({
    description: `${description}, in the shop's currency.`,
    integerDigits: 9,
    scale: 4,
    example,
  });

export class FamilyWindow {
  @TextField({
    description: 'Family of symptoms, see GET /v1/symptoms.',
    max: 60,
    pattern: textPatterns.catalogueId,
    example: 'stalling',
  })
  familyId!: string;

  @IntegerField({ description: 'Days after release.', min: 1, max: 3650, example: 180 })
  days!: number;

  @DecimalField({ description: 'Distance after release, in km.', example: '8000' })
  km!: string;
}

export class SettingsContent {
  @TextField({ description: 'Name of the shop.', max: 120 })
  name!: string;

  @TextField({
    description: 'IANA time zone of the shop.',
    max: 60,
    pattern: textPatterns.timeZone,
    example: 'Europe/Lisbon',
  })
  timeZone!: string;

  @TextField({
    description: 'ISO 4217 code of the currency the shop calculates in.',
    max: 3,
    min: 3,
    pattern: '^[A-Z]{3}$',
    example: 'EUR',
  })
  currency!: string;

  @amount('Full door rate of labour per hour', '80.00')
  labourRatePerHour!: string;

  @amount('What a day off the road costs a customer who has not said otherwise', '60.00')
  downtimeCostPerDay!: string;

  @amount('What any comeback costs before its repair: taking in, looking again', '250.00')
  comebackHandling!: string;

  @IntegerField({
    description: 'Days after release in which a comeback counts.',
    min: 1,
    max: 3650,
    example: 90,
  })
  comebackWindowDays!: number;

  @DecimalField({ description: 'Distance after release in which a comeback counts, in km.', example: '5000' })
  comebackWindowKm!: string;

  @ListField({
    description:
      'Families of symptoms whose window differs from the one above. A job is watched for the longest of its complaints.',
    max: 40,
    type: () => FamilyWindow,
  })
  comebackFamilyWindows!: FamilyWindow[];

  @DecimalField({
    description: 'Distance an owner still wants from a van when nothing else is known, in km.',
    example: '120000',
  })
  planningDistanceKm!: string;

  @IntegerField({
    description: 'No ranking of people, parts or suppliers under this number of closed jobs.',
    min: 1,
    max: 1000,
    example: 20,
  })
  rankingMinimumJobs!: number;
}

export class SettingsPatch extends PartialType(SettingsContent) {}

export class SettingsResponse extends JoinTypes(RecordedResponse, SettingsContent) {}

export class UserContent {
  @TextField({ description: 'Name as shown on records.', max: 120 })
  displayName!: string;

  @ListField({
    description: 'What the person does here.',
    max: 6,
    min: 1,
    unique: true,
    choice: { values: shopRoles, enumName: 'ShopRole' },
  })
  roles!: ShopRole[];

  @IdField({
    description: "For a fleet manager: the customer whose vehicles they see. Null for the shop's own people.",
    nullable: true,
  })
  customerId!: string | null;

  @FlagField({ description: 'Whether the person may still work here; keys of others are void.' })
  active!: boolean;
}

export class RecordUserRequest extends UserContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;
}

export class UserPatch extends PartialType(UserContent) {}

export class UserResponse extends JoinTypes(RecordedResponse, UserContent) {}

export class UserPage extends pageOf(() => UserResponse) {}

export class UserPath {
  @IdField({ description: 'Id of the user.' })
  userId!: string;
}

export class ApiKeyContent {
  @IdField({ description: 'Whom the key speaks for.' })
  userId!: string;

  @TextField({ description: 'What it is for.', max: 120, example: 'tablet at bay 2' })
  name!: string;

  @ListField({
    description: 'What the key may do at most; the roles of its user bound it further.',
    max: 6,
    min: 1,
    unique: true,
    choice: { values: shopRoles, enumName: 'ShopRole' },
  })
  roles!: ShopRole[];

  @InstantField({ description: 'When the key ends by itself; null: when it is revoked.', nullable: true })
  expiresAt!: string | null;
}

export class CreateApiKeyRequest extends ApiKeyContent {
  @FlagField({ description: 'The key only reads: GET and HEAD. False unless told.', optional: true })
  readOnly?: boolean;
}

export class RotateApiKeyRequest {
  @IntegerField({
    description: 'Minutes for which the earlier key works beside its successor; 0 ends it at once.',
    min: 0,
    max: 43200,
    example: 1440,
  })
  overlapMinutes!: number;

  @InstantField({
    description: 'When the successor ends by itself; null: when it is revoked.',
    nullable: true,
  })
  expiresAt!: string | null;
}

export class ApiKeyResponse extends ApiKeyContent {
  @FlagField({ description: 'The key only reads: GET and HEAD.' })
  readOnly!: boolean;

  @IdField({ description: 'The key whose place this one takes; null: none.', nullable: true })
  replaces!: string | null;

  @InstantField({
    description: 'When it was last used, to within a minute; null: it was not.',
    nullable: true,
  })
  lastUsedAt!: string | null;

  @IdField({ description: 'Id of the key.' })
  id!: string;

  @InstantField({ description: 'When it was made.' })
  recordedAt!: string;

  @InstantField({ description: 'When it was revoked; null: it was not.', nullable: true })
  revokedAt!: string | null;
}

export class NewApiKeyResponse extends ApiKeyResponse {
  @TextField({
    description: 'The key itself, for the Authorization header. Shown this once; only a hash of it is kept.',
    max: 200,
  })
  key!: string;
}

export class ApiKeyList {
  @ListField({
    description: 'All keys of the shop, revoked ones too.',
    max: 10000,
    type: () => ApiKeyResponse,
  })
  items!: ApiKeyResponse[];
}

export class KeyPath {
  @IdField({ description: 'Id of the key.' })
  keyId!: string;
}
