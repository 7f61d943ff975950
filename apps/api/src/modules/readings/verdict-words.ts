import { renderText, type BenchJudgement } from '@endfloat/workshop';

export interface SpokenVerdict {
  readonly judgement: BenchJudgement;
  /** what was read, in words */
  readonly value: string;
  readonly title: string;
  readonly outrankedBy: string | null;
}

/** A verdict in sentences, made here from its codes and values; never stored. */
export function verdictWords({ judgement, value, title, outrankedBy }: SpokenVerdict): string[] {
  const finding = judgement.kind === 'notJudged' ? [] : findingWords(judgement, title);
  const outranked = outrankedBy === null ? [] : [renderText('finding.functionalOutranks')];
  return [...outcomeWords(judgement, value), ...finding, ...outranked];
}

function outcomeWords(judgement: BenchJudgement, value: string): string[] {
  switch (judgement.kind) {
    case 'notJudged':
      return [renderText('verdict.notJudged'), ...reasonWords(judgement)];
    case 'faceValue':
      return [
        renderText(judgement.outcome === 'inside' ? 'verdict.inside' : 'verdict.outside', { value }),
        renderText('verdict.faceValue'),
      ];
    case 'judged':
      return [renderText(`verdict.${judgement.outcome}`, { value }), ...furtherWords(judgement)];
  }
}

function reasonWords(judgement: Extract<BenchJudgement, { kind: 'notJudged' }>): string[] {
  const { reason, details } = judgement;
  if (reason === 'noReadings') return ['No reading stands behind it any more.'];
  return [renderText(`notJudged.${reason}`, { checks: details, missing: details })];
}

function furtherWords({ outcome, furtherReadings }: Extract<BenchJudgement, { kind: 'judged' }>): string[] {
  if (outcome !== 'undecided' || furtherReadings.kind === 'none') return [];
  if (furtherReadings.kind === 'noNumberSettles') return [renderText('furtherReadings.noNumberSettles')];
  return [renderText('furtherReadings.needed', { count: furtherReadings.count })];
}

function findingWords(
  { outcome, severity }: Exclude<BenchJudgement, { kind: 'notJudged' }>,
  title: string,
): string[] {
  if (outcome !== 'outside') return [];
  if (severity === 'dangerous') return [renderText('finding.dangerous', { finding: title })];
  return severity === 'advisory' ? [renderText('finding.advisory', { finding: title })] : [];
}
