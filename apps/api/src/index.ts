export { AppModule } from './app.module.js';
export { createApi, type ApiParts } from './create-api.js';
export { CredentialLookup, type StoredCredential } from './http/access/credential-lookup.port.js';
export { createLogger } from './http/operation/logger.js';
export { ReadinessProbe } from './http/operation/readiness-probe.port.js';
export { usualApiSettings, type ApiSettings } from './http/settings.js';
export { openComputePool } from './computing/open-compute-pool.js';
export { openPorts, type OpenPorts } from './ports.module.js';
export { writeKeyPrefix } from './http/access/key-prefix.js';
