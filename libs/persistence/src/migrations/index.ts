export { findDrift, type Drift, type DriftCheck } from './find-drift.js';
export { findUnguardedTables, type UnguardedTable } from './find-unguarded-tables.js';
export { MigrationError, migrationFaults, type MigrationFault } from './migration.error.js';
export { resolveMigration, type MigrationResolution } from './resolve-migration.js';
export { runMigrations, type MigrationResult, type MigrationRun } from './run-migrations.js';
