import type { ApiKeyResponse, SettingsResponse, UserResponse } from '@endfloat/contracts';
import type { ApiKey, SettingsRecord, UserRecord } from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';

export function presentSettings(record: SettingsRecord): SettingsResponse {
  const { comebackFamilyWindows = [], ...settings } = record.content;
  return {
    ...presentRecorded(record),
    ...settings,
    comebackFamilyWindows: comebackFamilyWindows.map((window) => ({ ...window })),
  };
}

export function presentUser(record: UserRecord): UserResponse {
  const { displayName, roles, customerId, active } = record.content;
  return { ...presentRecorded(record), displayName, roles: [...roles], customerId, active };
}

export function presentApiKey(key: ApiKey): ApiKeyResponse {
  const { id, userId, name, roles, readOnly, expiresAt, replaces, lastUsedAt, recordedAt, revokedAt } = key;
  return {
    id,
    userId,
    name,
    roles: [...roles],
    readOnly,
    expiresAt,
    replaces,
    lastUsedAt,
    recordedAt,
    revokedAt,
  };
}
