import fc from 'fast-check';
import { cautionFor } from '../cautions/cautions.js';
import { tyreSheet } from '../check-sheets/wheels-and-brakes.check-sheets.js';
import { throttleHousingSheet } from '../check-sheets/throttle-housing/throttle-housing.check-sheet.js';
import { shippedComponentTypes } from '../component-types/shipped-component-types.js';
import { parseCheckSheet, validateCheckSheet } from './parse-check-sheet.js';
import { parseComponentType, validateComponentType } from './parse-component-type.js';

type Json = Record<string, unknown>;
const copy = (value: unknown): Json => JSON.parse(JSON.stringify(value)) as Json;
const checksOf = (sheet: Json): Json[] => sheet['checks'] as Json[];

/** What a front-end developer sends for a kind of part that nobody thought of here. */
const liftGateChain = {
  id: 'lift-gate-chain',
  name: 'chain of the lift gate',
  edition: 1,
  positions: ['left', 'right'],
  characteristics: [
    {
      id: 'chain-stretch',
      name: 'stretch against a new chain',
      resultKind: 'number',
      quantityKind: 'ratio',
      canonicalUnit: '1',
      wearDirection: 'up',
      trend: 'wear',
      plausible: { lowest: { value: '0', unit: '%' }, highest: { value: '20', unit: '%' } },
      doubt: {
        repeatability: { value: '0.1', unit: '%' },
        repeatabilityDegreesOfFreedom: 8,
        setUp: null,
        evidence: { tag: 'shop', citation: null },
      },
    },
  ],
};

const chainSheet = {
  id: 'lift-gate',
  edition: 1,
  title: 'lift gate chain',
  componentTypeIds: ['lift-gate-chain'],
  checks: [
    {
      id: 'chain-stretch',
      title: 'stretch of the chain',
      section: 'search',
      steps: ['Measure over ten links.'],
      componentTypeId: 'lift-gate-chain',
      characteristicId: 'chain-stretch',
      resultKind: 'number',
      instrumentKind: 'caliper',
      requiredStates: ['vehicleRaised'],
      cautions: [cautionFor.vehicleRaised],
      minutes: 5,
      limits: [
        {
          id: 'chain-stretch-max',
          characteristic: 'chain-stretch',
          quantityKind: 'ratio',
          criterion: { kind: 'maximum', bound: { comparator: 'atMost', value: { value: '3', unit: '%' } } },
          advisory: null,
          severity: 'major',
          jurisdiction: null,
          applicability: {},
          conditions: {},
          exclusions: [],
          correction: null,
          edition: {
            validFrom: null,
            validTo: null,
            source: 'shop rule 4',
            citation: 'Example Valley Vans, shop rule 4',
          },
          origin: 'shop',
          judging: 'allowed',
          thresholds: { inside: 0.95, outside: 0.05 },
          asWritten: 'at most 3 %',
          note: null,
        },
      ],
      outsideMeans: 'worn',
      whatToDo: 'Replace both chains.',
    },
  ],
};

function withChain(change: (sheet: Json, check: Json) => void): readonly string[] {
  const parsed = parseComponentType(liftGateChain);
  if (parsed.kind !== 'componentType') throw new Error('the component type should be valid');
  const sheet = copy(chainSheet);
  change(sheet, checksOf(sheet)[0]!);
  return validateCheckSheet(sheet, [...shippedComponentTypes, parsed.componentType]).map(
    (issue) => `${issue.pointer} ${issue.code}`,
  );
}

describe('parseComponentType', () => {
  it('takes a kind of part that is new, without code', () => {
    expect(parseComponentType(liftGateChain)).toMatchObject({
      kind: 'componentType',
      componentType: { id: 'lift-gate-chain', characteristics: [{ readingsAdvised: 1 }] },
    });
  });

  it.each([
    ['an id that is none', (t: Json): unknown => (t['id'] = 'Lift Gate'), '/id notAnId'],
    ['a member nobody knows', (t: Json): unknown => (t['colour'] = 'grey'), '/colour unknownMember'],
    ['no characteristics', (t: Json): unknown => (t['characteristics'] = []), '/characteristics empty'],
    [
      'a position named twice',
      (t: Json): unknown => (t['positions'] = ['left', 'left']),
      '/positions/1 idRepeats',
    ],
    ['an edition of zero', (t: Json): unknown => (t['edition'] = 0), '/edition outOfRange'],
    ['no name', (t: Json): unknown => delete t['name'], '/name missing'],
  ] as const)('refuses %s', (_title, change, finding) => {
    const data = copy(liftGateChain);
    change(data);
    expect(validateComponentType(data).map((issue) => `${issue.pointer} ${issue.code}`)).toContain(finding);
  });

  it.each([
    ['a unit of another kind', { canonicalUnit: 'mm' }, '/characteristics/0/canonicalUnit notCanonicalUnit'],
    [
      'a number without a kind of quantity',
      { quantityKind: null },
      '/characteristics/0/quantityKind kindNeeded',
    ],
    ['a yes or no with one', { resultKind: 'yesNo' }, '/characteristics/0/quantityKind kindNotWanted'],
    ['a kind nobody knows', { quantityKind: 'beauty' }, '/characteristics/0/quantityKind notOneOf'],
    [
      'a plausible range the wrong way round',
      { plausible: { lowest: { value: '5', unit: '%' }, highest: { value: '1', unit: '%' } } },
      '/characteristics/0/plausible edgesExchanged',
    ],
    [
      'a plausible value in another unit',
      { plausible: { lowest: { value: '5', unit: 'mm' }, highest: { value: '9', unit: '%' } } },
      '/characteristics/0/plausible/lowest/unit wrongKindOfUnit',
    ],
    [
      'a value that is no decimal',
      { plausible: { lowest: { value: 'five', unit: '%' }, highest: { value: '9', unit: '%' } } },
      '/characteristics/0/plausible/lowest/value notAQuantity',
    ],
  ])('refuses %s', (_title, change, finding) => {
    const data = copy(liftGateChain);
    Object.assign((data['characteristics'] as Json[])[0]!, change);
    expect(validateComponentType(data).map((issue) => `${issue.pointer} ${issue.code}`)).toContain(finding);
  });
});

describe('parseCheckSheet', () => {
  it('takes a sheet of the shop’s own and fills in what was left out', () => {
    const parsed = parseComponentType(liftGateChain);
    if (parsed.kind !== 'componentType') throw new Error('the component type should be valid');
    expect(parseCheckSheet(chainSheet, [parsed.componentType])).toMatchObject({
      kind: 'checkSheet',
      checkSheet: {
        proofPointIds: [],
        checks: [{ prerequisites: [], hazards: ['vehicleRaised'], adjustable: 'no', functional: null }],
      },
    });
  });

  it.each([
    [
      'an unknown kind of part',
      (s: Json): unknown => (s['componentTypeIds'] = ['rocket']),
      '/componentTypeIds/0 componentTypeUnknown',
    ],
    ['no checks', (s: Json): unknown => (s['checks'] = []), '/checks empty'],
    ['a list that is none', (s: Json): unknown => (s['checks'] = 'all'), '/checks wrongType'],
    [
      'an unknown proof point',
      (s: Json): unknown => (s['proofPointIds'] = ['moon-walk']),
      '/proofPointIds/0 proofPointUnknown',
    ],
    ['ids that repeat', (s: Json, c: Json): unknown => (s['checks'] = [c, c]), '/checks/1/id idRepeats'],
    [
      'a prerequisite that is not there',
      (_s: Json, c: Json): unknown => (c['prerequisites'] = ['linkage-return']),
      '/checks/0/prerequisites/0 prerequisiteUnknown',
    ],
    [
      'an order that is not there',
      (_s: Json, c: Json): unknown => (c['advisedAfter'] = ['linkage-return']),
      '/checks/0/advisedAfter/0 orderUnknown',
    ],
    [
      'a check that waits for itself',
      (_s: Json, c: Json): unknown => (c['prerequisites'] = ['chain-stretch']),
      '/checks/0/prerequisites prerequisiteCircular',
    ],
    [
      'a hazard without its caution',
      (_s: Json, c: Json): unknown => (c['hazards'] = ['batteryGas']),
      '/checks/0/cautions cautionMissing',
    ],
    [
      'a hazard that follows from the state, forgotten',
      (_s: Json, c: Json): unknown => (c['cautions'] = []),
      '/checks/0/cautions cautionMissing',
    ],
    [
      'an unknown characteristic',
      (_s: Json, c: Json): unknown => (c['characteristicId'] = 'chain-colour'),
      '/checks/0/characteristicId characteristicUnknown',
    ],
    [
      'another kind of result',
      (_s: Json, c: Json): unknown => (c['resultKind'] = 'grade'),
      '/checks/0/resultKind resultKindDiffers',
    ],
    [
      'a question missing',
      (_s: Json, c: Json): unknown => (c['resultKind'] = 'yesNo'),
      '/checks/0/question questionMissing',
    ],
    ['minutes of zero', (_s: Json, c: Json): unknown => (c['minutes'] = 0), '/checks/0/minutes outOfRange'],
    ['no steps', (_s: Json, c: Json): unknown => (c['steps'] = []), '/checks/0/steps empty'],
    [
      'an unknown instrument',
      (_s: Json, c: Json): unknown => (c['instrumentKind'] = 'wand'),
      '/checks/0/instrumentKind notOneOf',
    ],
    [
      'a functional criterion without its companion',
      (_s: Json, c: Json): unknown =>
        (c['functional'] = {
          outranks: [],
          companionCheckId: 'gap',
          conclusiveFrom: { value: '0.05', unit: 'mm' },
          negativeRepeatedAfterCompanion: true,
        }),
      '/checks/0/functional/companionCheckId companionUnknown',
    ],
  ] as const)('refuses %s', (_title, change, finding) => {
    expect(withChain(change)).toContain(finding);
  });

  it.each([
    [
      'a unit of another kind',
      (l: Json): unknown =>
        (l['criterion'] = {
          kind: 'maximum',
          bound: { comparator: 'atMost', value: { value: '3', unit: 'mm' } },
        }),
      /^\/checks\/0\/limits\/0\/criterion.* wrongKindOfUnit$/,
    ],
    [
      'a limit of another characteristic',
      (l: Json): unknown => (l['characteristic'] = 'tread-depth'),
      /^\/checks\/0\/limits\/0\/characteristic limitOfOtherCharacteristic$/,
    ],
    [
      'a limit of another kind of result',
      (l: Json): unknown => (l['criterion'] = { kind: 'yesNo', accepted: 'yes' }),
      /^\/checks\/0\/limits\/0\//,
    ],
    [
      'a limit without a source',
      (l: Json): unknown => delete l['edition'],
      /^\/checks\/0\/limits\/0\/edition missing$/,
    ],
  ] as const)('refuses %s', (_title, change, finding) => {
    const findings = withChain((_sheet, check) => change((check['limits'] as Json[])[0]!));
    expect(findings.some((text) => finding.test(text))).toBe(true);
  });

  it('finds every check of a circle', () => {
    const sheet = copy(throttleHousingSheet);
    checksOf(sheet).find((check) => check['id'] === 'linkage-return')!['prerequisites'] = ['base-idle'];
    const circular = validateCheckSheet(sheet).filter((issue) => issue.code === 'prerequisiteCircular');
    expect(circular.map((issue) => issue.detail)).toEqual(
      expect.arrayContaining(['linkage-return', 'idle-switch-closing-point', 'base-idle']),
    );
  });

  it('refuses anything that is no sheet with a finding, never by throwing', () => {
    fc.assert(
      fc.property(fc.anything({ maxDepth: 4 }), (data) => {
        expect(validateCheckSheet(data).length).toBeGreaterThan(0);
        expect(validateComponentType(data).length).toBeGreaterThan(0);
      }),
      { seed: 31, numRuns: 200 },
    );
  });

  it('finds every single member that is spoilt', () => {
    const paths = Object.keys(checksOf(copy(tyreSheet))[0]!).filter(
      (name) => name !== 'question' && name !== 'diagnosticCheckId' && name !== 'functional',
    );
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.constantFrom<unknown>({}, 7.5, '', []), (name, rubbish) => {
        const sheet = copy(tyreSheet);
        const before = checksOf(sheet)[0]![name];
        const harmless =
          (Array.isArray(before) && Array.isArray(rubbish)) || (name === 'minutes' && rubbish === 7.5);
        checksOf(sheet)[0]![name] = rubbish;
        return (
          harmless || validateCheckSheet(sheet).some((issue) => issue.pointer.startsWith(`/checks/0/${name}`))
        );
      }),
      { seed: 32, numRuns: 150 },
    );
  });
});
