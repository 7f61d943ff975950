export { readSettings, SettingsError, type ProcessSettings } from './settings.js';
export { runApi, runEverything, runMigrate, runWorker, type Running } from './processes.js';
