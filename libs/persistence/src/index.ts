export { openDatabasePool, type DatabasePoolSettings } from './connection/database-pool.js';
export { ShopConnections, sqlState } from './connection/shop-connection.js';
export { sqlReadiness } from './connection/sql-readiness.js';
export { SqlUnitOfWork } from './repositories/sql-unit-of-work.repository.js';
export { listShopIds } from './repositories/list-shops.js';
export { SystemClock } from './system/system-clock.js';
export { UuidSource } from './system/uuid-source.js';
export * from './embedded/index.js';
export * from './migrations/index.js';
