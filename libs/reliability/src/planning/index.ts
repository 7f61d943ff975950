export * from './rank-vehicles.js';
export * from './service-due.js';
export * from './downtime.js';
