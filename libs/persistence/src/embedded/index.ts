export { DatabaseStartError, databaseStartFaults, type DatabaseStartFault } from './database-start.error.js';
export { defaultDataFolder } from './data-folder.js';
export { createDatabase, dropDatabase, dropDatabases, type NewDatabase } from './databases.js';
export { databaseUrls, type DatabaseUrls, type ExternalDatabase } from './external-database.js';
export { createRolesAndDatabase, roles, type Role, type RolesAndDatabase } from './roles.js';
export {
  startEmbeddedDatabase,
  type EmbeddedDatabase,
  type EmbeddedDatabaseOptions,
} from './start-embedded-database.js';
export { startScratchServer, type ScratchServer, type ScratchServerOptions } from './scratch-server.js';
