import { compareQuantities, quantityKinds, quantityKindTable } from '@endfloat/metrology';
import type { Quantity, QuantityKind } from '@endfloat/metrology';
import type { Characteristic, ComponentType, DefaultDoubt } from '../component-types/component-type.js';
import { resultKinds, trendKinds, wearDirections } from '../component-types/component-type.js';
import { evidenceTags } from '../evidence/evidence-tag.js';
import type { DataIssue, Report } from './data-issue.js';
import { collectIssues } from './data-issue.js';
import {
  readCount,
  readId,
  readList,
  readOneOf,
  readQuantity,
  readRecord,
  readText,
  reportRepeats,
} from './read-data.js';

export type ComponentTypeResult =
  | { readonly kind: 'componentType'; readonly componentType: ComponentType }
  | { readonly kind: 'invalid'; readonly issues: readonly DataIssue[] };

/**
 * Takes data as a kind of part: ids in kebab-case and unique, units of the right kind, canonical units, plausible ranges
 * the right way round. A shop adds a kind of part with this, without code.
 *
 * @param data  anything
 * @returns the component type, or findings with JSON Pointers
 * @example parseComponentType(null) // => { kind: 'invalid', issues: [{ pointer: '', code: 'wrongType', detail: 'object' }] }
 */
export function parseComponentType(data: unknown): ComponentTypeResult {
  const { issues, report } = collectIssues();
  const record = readRecord(data, '', ['id', 'name', 'edition', 'positions', 'characteristics'], [], report);
  if (record === null) return { kind: 'invalid', issues };
  const positions = readList(record['positions'], '/positions', report, (entry, at) =>
    readText(entry, at, report),
  );
  const characteristics = readList(record['characteristics'], '/characteristics', report, (entry, at) =>
    readCharacteristic(entry, at, report),
  );
  if (Array.isArray(record['positions']) && positions.length === 0) report('/positions', 'empty');
  if (Array.isArray(record['characteristics']) && characteristics.length === 0)
    report('/characteristics', 'empty');
  reportRepeats(positions, (index) => `/positions/${index}`, report);
  reportRepeats(
    characteristics.map(({ id }) => id),
    (index) => `/characteristics/${index}/id`,
    report,
  );
  const componentType: ComponentType = {
    id: readId(record['id'], '/id', report),
    name: readText(record['name'], '/name', report),
    edition: readCount(record['edition'], '/edition', report, 1, 1_000_000),
    positions,
    characteristics,
  };
  return issues.length === 0 ? { kind: 'componentType', componentType } : { kind: 'invalid', issues };
}

/** Findings of `parseComponentType`; none means that the data is a component type. */
export function validateComponentType(data: unknown): readonly DataIssue[] {
  const result = parseComponentType(data);
  return result.kind === 'invalid' ? result.issues : [];
}

const CHARACTERISTIC = [
  'id',
  'name',
  'resultKind',
  'quantityKind',
  'canonicalUnit',
  'wearDirection',
  'trend',
];
const CHARACTERISTIC_OPTIONAL = ['plausible', 'lowestPossible', 'doubt', 'readingsAdvised'];

function readCharacteristic(data: unknown, at: string, report: Report): Characteristic {
  const record = readRecord(data, at, CHARACTERISTIC, CHARACTERISTIC_OPTIONAL, report) ?? {};
  const resultKind = readOneOf(record['resultKind'], resultKinds, `${at}/resultKind`, report);
  const quantityKind = readKind(
    record['quantityKind'],
    resultKind === 'number' || resultKind === 'bladePair',
    at,
    report,
  );
  const canonicalUnit = quantityKind === null ? null : quantityKindTable[quantityKind].canonical;
  if (record['canonicalUnit'] !== undefined && record['canonicalUnit'] !== canonicalUnit) {
    report(`${at}/canonicalUnit`, 'notCanonicalUnit', canonicalUnit ?? 'null');
  }
  return {
    id: readId(record['id'], `${at}/id`, report),
    name: readText(record['name'], `${at}/name`, report),
    resultKind,
    quantityKind,
    canonicalUnit,
    wearDirection: readOneOf(record['wearDirection'], wearDirections, `${at}/wearDirection`, report),
    trend: readOneOf(record['trend'], trendKinds, `${at}/trend`, report),
    plausible: readPlausible(record['plausible'], quantityKind, `${at}/plausible`, report),
    lowestPossible:
      quantityKind === null || record['lowestPossible'] === undefined || record['lowestPossible'] === null
        ? null
        : readQuantity(record['lowestPossible'], quantityKind, `${at}/lowestPossible`, report),
    doubt: readDoubt(record['doubt'], quantityKind, `${at}/doubt`, report),
    readingsAdvised:
      record['readingsAdvised'] === undefined
        ? 1
        : readCount(record['readingsAdvised'], `${at}/readingsAdvised`, report, 1, 50),
  };
}

function readKind(data: unknown, needed: boolean, at: string, report: Report): QuantityKind | null {
  const known = quantityKinds.find((kind) => kind === data);
  if (data !== undefined && data !== null && known === undefined)
    report(`${at}/quantityKind`, 'notOneOf', quantityKinds.join(', '));
  else if (needed && data === null) report(`${at}/quantityKind`, 'kindNeeded');
  else if (!needed && known !== undefined) report(`${at}/quantityKind`, 'kindNotWanted');
  return known ?? null;
}

function readPlausible(
  data: unknown,
  kind: QuantityKind | null,
  at: string,
  report: Report,
): Characteristic['plausible'] {
  if (data === undefined || data === null) return null;
  const record = readRecord(data, at, ['lowest', 'highest'], [], report);
  if (kind === null) {
    report(at, 'kindNotWanted');
    return null;
  }
  if (record === null) return null;
  const lowest = readQuantity(record['lowest'], kind, `${at}/lowest`, report);
  const highest = readQuantity(record['highest'], kind, `${at}/highest`, report);
  if (lowest === null || highest === null) return null;
  const compared = compareQuantities(lowest, highest, kind);
  if (compared.kind === 'compared' && compared.order !== 'less') report(at, 'edgesExchanged');
  return { lowest, highest };
}

function readDoubt(
  data: unknown,
  kind: QuantityKind | null,
  at: string,
  report: Report,
): DefaultDoubt | null {
  if (data === undefined || data === null) return null;
  const record = readRecord(
    data,
    at,
    ['repeatability', 'repeatabilityDegreesOfFreedom', 'setUp', 'evidence'],
    [],
    report,
  );
  if (kind === null) {
    report(at, 'kindNotWanted');
    return null;
  }
  if (record === null) return null;
  const part = (name: 'repeatability' | 'setUp'): Quantity | null =>
    record[name] === null || record[name] === undefined
      ? null
      : readQuantity(record[name], kind, `${at}/${name}`, report);
  const degrees = record['repeatabilityDegreesOfFreedom'];
  const evidence = readRecord(record['evidence'], `${at}/evidence`, ['tag', 'citation'], [], report) ?? {};
  return {
    repeatability: part('repeatability'),
    repeatabilityDegreesOfFreedom:
      degrees === null || degrees === undefined
        ? null
        : readNumberAbove(degrees, `${at}/repeatabilityDegreesOfFreedom`, report),
    setUp: part('setUp'),
    evidence: {
      tag: readOneOf(evidence['tag'], evidenceTags, `${at}/evidence/tag`, report),
      citation:
        evidence['citation'] === null
          ? null
          : readText(evidence['citation'], `${at}/evidence/citation`, report),
    },
  };
}

const readNumberAbove = (data: unknown, at: string, report: Report): number =>
  readCount(data, at, report, 1, 1_000_000);
