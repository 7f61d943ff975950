import type {
  CheckWorthDto,
  ChecksByMoneyUnknownDto,
  NextCheckReasonDto,
  NextCheckResponse,
} from '@endfloat/contracts';
import {
  renderText,
  type CheckWorth,
  type MoneyUnknownReason,
  type NextCheckAnswer,
  type WorthwhileCheck,
} from '@endfloat/workshop';
import { checkWorthText, moneyUnknownTexts } from '../assessments/check-worth-texts.js';
import { presentCheck } from '../check-sheets/check-sheet.presenter.js';

export function presentNextCheck(answer: NextCheckAnswer): NextCheckResponse {
  return {
    step: presentStep(answer.step),
    precedence: answer.precedence,
    worthwhile: answer.worthwhile.map(({ diagnosticCheckId, checks, minutes, reasons }) => ({
      diagnosticCheckId,
      checkIds: checks.map(({ id }) => id),
      minutes,
      reasons: reasons.map(presentReason),
    })),
    leadingCauses: answer.leadingCauses.map(({ causeId, probability }) => ({
      causeId,
      probability: Math.min(1, probability),
    })),
    byMoney: presentByMoney(answer.byMoney),
    tablesVersion: answer.tablesVersion,
    method: answer.tablesVersion === null ? null : 'openingMovesThenJointInformationPerMinute',
  };
}

function presentStep(step: NextCheckAnswer['step']): NextCheckResponse['step'] {
  switch (step.kind) {
    case 'next': {
      const { why, progress, unsettled } = step;
      return {
        kind: 'next',
        check: presentCheck(progress.check),
        why: { code: why, detail: whyWords(why) },
        unsettled: [...unsettled],
      };
    }
    case 'correctFirst':
      return {
        kind: 'correctFirst',
        findings: step.findings.map((check) => presentCheck(check)),
        waiting: [...step.waiting],
        detail: renderText('nextCheck.correctFirst', { findings: step.findings.map(({ title }) => title) }),
      };
    case 'done':
      return { kind: 'done', detail: renderText('nextCheck.allChecksDone') };
  }
}

type Why = Extract<NextCheckAnswer['step'], { kind: 'next' }>['why'];

function whyWords(why: Why): string {
  if (why === 'asLeftDue')
    return 'It, or what comes before it, was worked on since it was read: read it again, as left.';
  if (why === 'companionNowRight')
    return 'Its earlier answer was provisional; the switch is in its window now, so repeat it.';
  return renderText(`nextCheck.${why}`);
}

function presentReason(reason: WorthwhileCheck['reasons'][number]): NextCheckReasonDto {
  const { code } = reason;
  switch (reason.code) {
    case 'informationPerMinute':
      return { code, detail: renderText('nextCheck.informationPerMinute', { minutes: reason.minutes }) };
    case 'unlocks':
      return { code, detail: renderText('nextCheck.unlocks', { target: reason.targetCheckId }) };
    case 'separatesCauses': {
      const { likelier, lessLikely } = reason;
      return { code, detail: renderText('nextCheck.separatesCauses', { likelier, lessLikely }) };
    }
    case 'provisionalUntilCorrected': {
      const { findings } = reason;
      return { code, detail: renderText('nextCheck.provisionalUntilCorrected', { findings }) };
    }
    case 'openingMove':
    case 'repeatOfUndecided':
      return { code, detail: renderText(`nextCheck.${reason.code}`) };
  }
}

const presentMoneyUnknown = (why: MoneyUnknownReason): ChecksByMoneyUnknownDto => ({
  kind: 'cannotBeSaid',
  why,
  detail: moneyUnknownTexts[why],
});

function presentByMoney(byMoney: NextCheckAnswer['byMoney']): NextCheckResponse['byMoney'] {
  if (byMoney.kind === 'cannotBeSaid') return presentMoneyUnknown(byMoney.why);
  return {
    kind: 'ranked',
    bestCureNow: byMoney.bestCureNow.causeId,
    expectedCostNow: byMoney.bestCureNow.expectedCost,
    checks: byMoney.checks.map(presentCheckWorth),
    method: 'expectedCostSavedPerMinute',
  };
}

/** A check with the money it saves, and the same in words. */
function presentCheckWorth(worth: CheckWorth): CheckWorthDto {
  const { diagnosticCheckId, isOpeningMove, chain, minutes, expectedSaving, cost, net, isWorthIt } = worth;
  return {
    diagnosticCheckId,
    checkIds: worth.checks.map(({ id }) => id),
    isOpeningMove,
    chain: [...chain],
    minutes,
    expectedSaving,
    cost,
    net,
    isWorthIt,
    detail: checkWorthText(worth),
  };
}
