/** How well a statement of the catalogue is supported; every number and every caution carries one. */
export const evidenceTags = ['published', 'memory', 'commonPractice', 'judgement', 'maker', 'shop'] as const;
export type EvidenceTag = (typeof evidenceTags)[number];

/** Support of one statement. A published or remembered one names its source; the others name none. */
export interface Evidence {
  readonly tag: EvidenceTag;
  readonly citation: string | null;
}
