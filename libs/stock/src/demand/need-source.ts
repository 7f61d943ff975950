/**
 * What makes a van need a part: its measured wear, the life of such parts in general, a replacement planned on an open job,
 * or a repair that is still being watched and may come back.
 */
export const needSources = ['wear', 'life', 'openJob', 'comeback'] as const;
/** A source of `needSources`. */
export type NeedSource = (typeof needSources)[number];
