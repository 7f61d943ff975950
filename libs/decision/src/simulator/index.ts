export * from './fleet-parameters.js';
export * from './situation.js';
export * from './simulated-van.js';
export * from './play-van.js';
export * from './fixed-rules.js';
export * from './clairvoyant.js';
export * from './informed-policy.js';
export { exactWorld } from './exact-world.js';
export { renews } from './money.js';
