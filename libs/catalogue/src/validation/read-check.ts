import type { Limit, Quantity } from '@endfloat/metrology';
import { validateLimit } from '@endfloat/metrology';
import type { Caution } from '../cautions/hazard.js';
import { hazards } from '../cautions/hazard.js';
import { impliedHazards } from '../cautions/implied-hazards.js';
import type { Check, FunctionalCriterion } from '../check-sheets/check-sheet.js';
import {
  adjustabilities,
  checkSections,
  instrumentKinds,
  requiredStates,
} from '../check-sheets/check-sheet.js';
import { resultKinds } from '../component-types/component-type.js';
import { evidenceTags } from '../evidence/evidence-tag.js';
import type { Report } from './data-issue.js';
import {
  readFlag,
  readId,
  readList,
  readNumber,
  readOneOf,
  readQuantity,
  readRecord,
  readText,
  reportRepeats,
} from './read-data.js';

const REQUIRED = [
  'id',
  'title',
  'section',
  'steps',
  'componentTypeId',
  'characteristicId',
  'resultKind',
  'instrumentKind',
  'minutes',
  'outsideMeans',
  'whatToDo',
];
const OPTIONAL = [
  'question',
  'diagnosticCheckId',
  'openingMove',
  'prerequisites',
  'advisedAfter',
  'alsoRemeasure',
  'requiredStates',
  'hazards',
  'cautions',
  'limits',
  'adjustable',
  'targetCauses',
  'functional',
  'whereFitted',
];

/** One check of a sheet, with defaults for what may be left out; hazards that follow from state and instrument are added. */
export function readCheck(data: unknown, at: string, report: Report): Check {
  const record = readRecord(data, at, REQUIRED, OPTIONAL, report) ?? {};
  const texts = (name: string): readonly string[] =>
    readList(record[name], `${at}/${name}`, report, (entry, place) => readText(entry, place, report));
  const ids = (name: string): readonly string[] =>
    readList(record[name], `${at}/${name}`, report, (entry, place) => readId(entry, place, report));
  const textOrNull = (name: string): string | null =>
    record[name] === undefined || record[name] === null
      ? null
      : readText(record[name], `${at}/${name}`, report);
  const resultKind = readOneOf(record['resultKind'], resultKinds, `${at}/resultKind`, report);
  const instrumentKind = readOneOf(record['instrumentKind'], instrumentKinds, `${at}/instrumentKind`, report);
  const states = readList(record['requiredStates'], `${at}/requiredStates`, report, (entry, place) =>
    readOneOf(entry, requiredStates, place, report),
  );
  const named = readList(record['hazards'], `${at}/hazards`, report, (entry, place) =>
    readOneOf(entry, hazards, place, report),
  );
  const cautions = readList(record['cautions'], `${at}/cautions`, report, (entry, place) =>
    readCaution(entry, place, report),
  );
  const allHazards = impliedHazards({ hazards: named, requiredStates: states, instrumentKind });
  for (const hazard of allHazards) {
    if (!cautions.some((caution) => caution.hazard === hazard))
      report(`${at}/cautions`, 'cautionMissing', hazard);
  }
  const steps = texts('steps');
  if (Array.isArray(record['steps']) && steps.length === 0) report(`${at}/steps`, 'empty');
  const question = textOrNull('question');
  if (resultKind === 'yesNo' && question === null) report(`${at}/question`, 'questionMissing');
  return {
    id: readId(record['id'], `${at}/id`, report),
    title: readText(record['title'], `${at}/title`, report),
    section: readOneOf(record['section'], checkSections, `${at}/section`, report),
    steps,
    question,
    componentTypeId: readId(record['componentTypeId'], `${at}/componentTypeId`, report),
    characteristicId: readId(record['characteristicId'], `${at}/characteristicId`, report),
    resultKind,
    diagnosticCheckId: textOrNull('diagnosticCheckId'),
    openingMove: readFlag(record['openingMove'], `${at}/openingMove`, report),
    prerequisites: ids('prerequisites'),
    advisedAfter: ids('advisedAfter'),
    alsoRemeasure: ids('alsoRemeasure'),
    requiredStates: states,
    instrumentKind,
    minutes: readNumber(record['minutes'], `${at}/minutes`, report, 0.1, 1440),
    hazards: allHazards,
    cautions,
    limits: readLimits(record['limits'], `${at}/limits`, report),
    adjustable: readOneOf(record['adjustable'], adjustabilities, `${at}/adjustable`, report),
    outsideMeans: readText(record['outsideMeans'], `${at}/outsideMeans`, report),
    whatToDo: readText(record['whatToDo'], `${at}/whatToDo`, report),
    targetCauses: ids('targetCauses'),
    functional: readFunctional(record['functional'], `${at}/functional`, report),
    whereFitted: readFlag(record['whereFitted'], `${at}/whereFitted`, report),
  };
}

function readCaution(data: unknown, at: string, report: Report): Caution {
  const record = readRecord(data, at, ['id', 'hazard', 'text', 'source'], [], report) ?? {};
  const source = readRecord(record['source'], `${at}/source`, ['tag', 'citation'], [], report) ?? {};
  return {
    id: readId(record['id'], `${at}/id`, report),
    hazard: readOneOf(record['hazard'], hazards, `${at}/hazard`, report),
    text: readText(record['text'], `${at}/text`, report),
    source: {
      tag: readOneOf(source['tag'], evidenceTags, `${at}/source/tag`, report),
      citation:
        source['citation'] === null ? null : readText(source['citation'], `${at}/source/citation`, report),
    },
  };
}

function readLimits(data: unknown, at: string, report: Report): readonly Limit[] {
  const limits = readList(data, at, report, (entry, place): Limit | null => {
    const issues = validateLimit(entry);
    issues.forEach((issue) => report(`${place}${issue.pointer}`, issue.code, issue.detail));
    return issues.length === 0 ? (entry as Limit) : null;
  });
  reportRepeats(
    limits.map((limit) => limit?.id ?? ''),
    (index) => `${at}/${index}/id`,
    report,
  );
  return limits.filter((limit) => limit !== null);
}

function readFunctional(data: unknown, at: string, report: Report): FunctionalCriterion | null {
  if (data === undefined || data === null) return null;
  const members = ['outranks', 'companionCheckId', 'conclusiveFrom', 'negativeRepeatedAfterCompanion'];
  const record = readRecord(data, at, members, [], report);
  if (record === null) return null;
  const conclusiveFrom: Quantity | null = readQuantity(
    record['conclusiveFrom'],
    'length',
    `${at}/conclusiveFrom`,
    report,
  );
  return {
    outranks: readList(record['outranks'], `${at}/outranks`, report, (entry, place) =>
      readId(entry, place, report),
    ),
    companionCheckId: readId(record['companionCheckId'], `${at}/companionCheckId`, report),
    conclusiveFrom: conclusiveFrom ?? { value: '0', unit: 'mm' },
    negativeRepeatedAfterCompanion: readFlag(
      record['negativeRepeatedAfterCompanion'],
      `${at}/negativeRepeatedAfterCompanion`,
      report,
    ),
  };
}
