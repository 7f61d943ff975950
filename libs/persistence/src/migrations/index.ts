export { MigrationError, migrationFaults, type MigrationFault } from './migration.error.js';
export { resolveMigration, type MigrationResolution } from './resolve-migration.js';
export { runMigrations, type MigrationResult, type MigrationRun } from './run-migrations.js';
