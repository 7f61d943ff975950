import type { Shape } from './field.js';

/** Shape of a member that is taken as it is. */
export const value: Shape = { kind: 'value' };
