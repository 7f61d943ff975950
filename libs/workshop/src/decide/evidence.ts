import { evidenceKinds, type EvidenceKind } from '../ports/records/decide.records.js';

/** A record behind a reason. */
export interface EvidenceLink {
  readonly kind: EvidenceKind;
  readonly id: string;
}

/** How a record is named inside an assessment, whose room takes ids for opaque. */
export function evidenceOf(kind: EvidenceKind, id: string): string {
  return `${kind}:${id}`;
}

/** The record behind an evidence id; whatever does not read as one was given from outside. */
export function evidenceLink(evidence: string): EvidenceLink {
  const at = evidence.indexOf(':');
  const kind = evidenceKinds.find((each) => each === evidence.slice(0, at));
  return kind === undefined ? { kind: 'given', id: evidence } : { kind, id: evidence.slice(at + 1) };
}

const namedReading = /"reading:([0-9a-f-]{36})"/g;

/** Readings that the canonical input text of an assessment names, each once. */
export const readingLinks = (input: string): readonly string[] => [
  ...new Set([...input.matchAll(namedReading)].flatMap(([, id]) => id ?? [])),
];
