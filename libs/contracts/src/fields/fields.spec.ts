import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormatsModule from 'ajv-formats';
import fc from 'fast-check';
import { RateField, type RateDto } from '../quantity/index.js';
import {
  DecimalField,
  documentSchemas,
  EnumField,
  FlagField,
  IdField,
  InstantField,
  IntegerField,
  JsonField,
  KindField,
  ListField,
  LocalDateField,
  MapField,
  membersOf,
  MoneyField,
  NestedField,
  NoMembers,
  NumberField,
  OmitType,
  PartialType,
  PickType,
  QuantityField,
  QueryFlagField,
  QueryIntegerField,
  QueryListField,
  TextField,
  TextMapField,
  textPatterns,
  UnionField,
  readAs,
  type FieldClass,
  type FieldFault,
  type QuantityDto,
} from './index.js';

const tones = ['low', 'middle', 'high'] as const;

class Bolt {
  @TextField({ description: 'name', max: 5 }) name!: string;
  @IntegerField({ description: 'count', optional: true, min: 1, max: 9 }) count?: number;
}
class Rigid {
  @KindField('rigid') kind!: 'rigid';
  @FlagField({ description: 'locked' }) locked!: boolean;
}
class Loose {
  @KindField('loose') kind!: 'loose';
  @QuantityField({ description: 'play', kind: 'length' }) play!: QuantityDto;
}
class Trial {
  @IdField({ description: 'id' }) id!: string;
  @TextField({ description: 'text', max: 8 }) text!: string;
  @TextField({ description: 'empty allowed', min: 0, max: 8, multiline: true, optional: true }) note?: string;
  @TextField({ description: 'pattern', max: 17, pattern: textPatterns.chassisNumber, nullable: true })
  chassis!: string | null;
  @DecimalField({ description: 'decimal', integerDigits: 3, scale: 2, signed: true }) exact!: string;
  @QuantityField({ description: 'quantity', kind: 'length' }) play!: QuantityDto;
  @MoneyField({ description: 'money', optional: true, nullable: true }) price?: {
    amount: string;
    currency: string;
  } | null;
  @InstantField({ description: 'instant' }) takenAt!: string;
  @LocalDateField({ description: 'day', optional: true }) dueOn?: string;
  @EnumField({ description: 'enum', values: tones, enumName: 'Tone' }) tone!: string;
  @EnumField({
    description: 'nullable enum',
    values: tones,
    enumName: 'Tone',
    nullable: true,
    optional: true,
  })
  other?: string | null;
  @FlagField({ description: 'flag' }) found!: boolean;
  @IntegerField({ description: 'integer', min: -5, max: 12 }) turns!: number;
  @NumberField({ description: 'number', min: 0, max: 1 }) share!: number;
  @ListField({ description: 'objects', type: () => Bolt, max: 2 }) bolts!: Bolt[];
  @ListField({ description: 'texts', text: { max: 3 }, max: 2, unique: true }) words!: string[];
  @ListField({ description: 'enums', choice: { values: tones, enumName: 'Tone' }, min: 1, max: 3 })
  scale!: string[];
  @ListField({ description: 'ids', ids: true, max: 2, optional: true }) others?: string[];
  @ListField({ description: 'integers', integers: { min: 0, max: 3 }, max: 2, optional: true })
  steps?: number[];
  @NestedField({ description: 'nested', type: () => Bolt, nullable: true }) bolt!: Bolt | null;
  @UnionField({ description: 'union', types: () => [Rigid, Loose] }) fit!: Rigid | Loose;
  @ListField({ description: 'unions', union: { types: () => [Rigid, Loose] }, max: 2, optional: true })
  fits?: (Rigid | Loose)[];
  @MapField({ description: 'map', max: 2, choice: { values: tones, enumName: 'Tone' } }) symptoms!: Record<
    string,
    string
  >;
  @TextMapField({ description: 'map of text', maxEntries: 2, max: 3, optional: true }) remarks?: Record<
    string,
    string
  >;
  @JsonField({ description: 'opaque', maxMembers: 2, optional: true }) inputs?: object;
  @RateField({ description: 'rate', optional: true }) rate?: RateDto;
  @QueryFlagField({ description: 'flag in a query', optional: true }) retired?: string;
  @QueryIntegerField({ description: 'number in a query', optional: true, digits: 3 }) days?: string;
  @QueryListField({ description: 'list in a query', optional: true, values: tones, max: 2 }) only?: string;
}

const id = '0193f2c0-7e1a-7c3d-9f00-00a1b2c3d4e5';
const valid = {
  id,
  text: 'idle',
  chassis: 'AB12',
  exact: '-12.5',
  play: { value: '0.12', unit: 'mm' },
  takenAt: '2031-05-04T09:30:00Z',
  tone: 'low',
  found: true,
  turns: 3,
  share: 0.5,
  bolts: [{ name: 'M6' }],
  words: ['a'],
  scale: ['low'],
  bolt: null,
  fit: { kind: 'loose', play: { value: '0.2', unit: 'mm' } },
  symptoms: { 'idle-rises': 'high' },
};

function faultsOf(type: FieldClass, body: object): readonly FieldFault[] {
  const read = readAs(type, body);
  return read.kind === 'valid' ? [] : read.faults;
}
const rulesOf = (type: FieldClass, body: object) =>
  faultsOf(type, body).map(({ pointer, rule }) => `${pointer} ${rule}`);

const ajv = new Ajv2020({ strict: false, allErrors: false });
(addFormatsModule as unknown as (it: Ajv2020) => void)(ajv);
ajv.addFormat('int32', true).addFormat('int64', true).addFormat('double', true);
ajv.addSchema({ $id: 'doc', components: { schemas: documentSchemas([Trial]) } });
const meetsDocument = ajv.compile({ $ref: 'doc#/components/schemas/Trial' });

const hostile: readonly unknown[] = [
  undefined,
  null,
  true,
  false,
  0,
  -0,
  1,
  3,
  12,
  13,
  -5,
  -6,
  0.5,
  1.5,
  1e21,
  2 ** 53,
  '',
  ' ',
  'a',
  'low',
  'LOW',
  'toString',
  'idle',
  'ninechars',
  '😀😀😀😀😀😀😀😀',
  '😀😀😀😀😀😀😀😀😀',
  'nul\u0000',
  'tab\t',
  'line\n',
  '\u2028',
  '\ud800',
  'ok\u0301',
  id,
  id.toUpperCase(),
  id.replace('-7', '-4'),
  `{${id}}`,
  `urn:uuid:${id}`,
  '0.12',
  '-0',
  '00',
  '+1',
  '1e2',
  '1.',
  '.5',
  '999.99',
  '1000',
  '1.234',
  '2031-05-04T09:30:00Z',
  '2031-02-30T09:30:00Z',
  '2031-05-04T24:00:00Z',
  '2031-05-04T09:30:60Z',
  '2031-05-04T09:30:00',
  '2031-05-04 09:30:00Z',
  '2031-05-04t09:30:00z',
  '2031-05-04T09:30:00.123456+05:30',
  '2031-05-04T09:30:00.1234567Z',
  '2032-02-29',
  '2031-02-29',
  '2031-13-01',
  '0000-01-01',
  'АВ12',
  'A\u200b1',
  'true',
  'True',
  '007',
  '7',
  '1000',
  'low,high',
  'low,',
  'low,high,low',
  [],
  [[]],
  [null],
  ['a'],
  ['a', 'a'],
  ['a', 'b'],
  ['a', 'b', 'c'],
  ['low'],
  ['low', 'x'],
  [id],
  [id.toUpperCase()],
  ['abcd'],
  [0],
  [3],
  [4],
  ['3'],
  [1.5],
  {},
  { 0: 'a' },
  { name: 'M6' },
  { name: 'M6', count: 1 },
  { name: 'M6', count: 0 },
  { name: 'M6', extra: 1 },
  { name: null },
  [{ name: 'M6' }],
  [{ name: 'M6', count: '1' }],
  [{ name: 'M6' }, {}],
  { value: '0.1', unit: 'mm' },
  { value: '0.1' },
  { value: 0.1, unit: 'mm' },
  { value: '0.1', unit: 'km' },
  { value: '0.1', unit: 'mm', scale: 1 },
  { amount: '129.90', currency: 'EUR' },
  { amount: '129.90', currency: 'eur' },
  { amount: '129.90' },
  { amount: '1.23456', currency: 'EUR' },
  { kind: 'rigid', locked: true },
  { kind: 'rigid', locked: 1 },
  { kind: 'rigid' },
  { kind: 'loose', locked: true },
  { kind: 'bent' },
  { kind: 1 },
  { locked: true },
  { kind: 'loose', play: { value: '1', unit: 'mm' } },
  { kind: 'loose', play: { value: '1', unit: 'm' } },
  [{ kind: 'rigid', locked: true }],
  [{ kind: 'bent' }],
  { 'idle-rises': 'low' },
  { 'idle-rises': 'often' },
  { Idle: 'low' },
  { a: 'low', b: 'low', c: 'low' },
  { a: 'low', b: 'high' },
  { a: [1], b: { c: null } },
  { ['x'.repeat(65)]: 'low' },
  {
    kind: 'estimated',
    value: 0.1,
    events: 1,
    atRisk: 10,
    interval: { low: 0, high: null, level: 0.9, method: 'wilson' },
  },
  { kind: 'insufficientData', events: 1, atRisk: 2, needed: 5 },
  { kind: 'insufficientData', events: 1, atRisk: 2 },
];
const anyValue = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...hostile) },
  { weight: 2, arbitrary: fc.string({ unit: 'binary', maxLength: 12 }) },
  { weight: 1, arbitrary: fc.double({ noNaN: true, noDefaultInfinity: true }) },
  { weight: 1, arbitrary: fc.integer({ min: -10, max: 20 }).map(String) },
  {
    weight: 1,
    arbitrary: fc
      .jsonValue({ maxDepth: 2 })
      .filter((value) => !/__proto__|constructor|prototype/.test(JSON.stringify(value))),
  },
);

describe('fields', () => {
  it('accept a body that breaks no rule', () => {
    expect(faultsOf(Trial, valid)).toEqual([]);
    expect(meetsDocument(valid)).toBe(true);
  });

  it('give the same verdict from the document and from the validator, whatever a member holds', () => {
    const members = [...membersOf(Trial).keys(), 'unheardOf'];
    let accepted = 0;
    let refused = 0;
    fc.assert(
      fc.property(fc.constantFrom(...members), anyValue, (member, value) => {
        const body: Record<string, unknown> = { ...valid, [member]: value };
        if (value === undefined) Reflect.deleteProperty(body, member);
        const validator = faultsOf(Trial, body).length === 0;
        expect({ member, value, accepted: meetsDocument(body) }).toEqual({
          member,
          value,
          accepted: validator,
        });
        if (validator) accepted += 1;
        else refused += 1;
      }),
      { seed: 41, numRuns: 1500 },
    );
    expect(accepted).toBeGreaterThan(60);
    expect(refused).toBeGreaterThan(700);
  });

  it('give the same verdict on every member and every hostile value', () => {
    const differing: unknown[] = [];
    for (const member of membersOf(Trial).keys()) {
      for (const value of hostile) {
        const body: Record<string, unknown> = { ...valid, [member]: value };
        if (value === undefined) Reflect.deleteProperty(body, member);
        if ((faultsOf(Trial, body).length === 0) !== meetsDocument(body)) differing.push({ member, value });
      }
    }
    expect(differing).toEqual([]);
  });

  it('tell absent from null', () => {
    expect(rulesOf(Trial, { ...valid, chassis: null })).toEqual([]);
    expect(rulesOf(Trial, { ...valid, chassis: undefined })).toEqual(['/chassis required']);
    expect(rulesOf(Trial, { ...valid, dueOn: null })).toEqual(['/dueOn notNull']);
  });

  it('hand ids on in lower case', () => {
    const read = readAs(Trial, { ...valid, id: id.toUpperCase(), others: [id.toUpperCase()] });
    expect(read).toMatchObject({ kind: 'valid', value: { id, others: [id] } });
  });

  it('name each member that is wrong, at its own place and by its first broken rule', () => {
    const body = {
      ...valid,
      tone: 'LOW',
      bolts: [{ name: 'M6' }, { name: 'far too long', 'a/b~': 1 }],
      play: { value: '0.1', unit: 'km' },
      words: ['a', 'long'],
    };
    expect(rulesOf(Trial, body)).toEqual([
      '/play/unit oneOf',
      '/tone oneOf',
      '/bolts/1/a~1b~0 unknownMember',
      '/bolts/1/name length',
      '/words length',
    ]);
  });

  it('never repeat the refused value', () => {
    const body = {
      ...valid,
      text: 'canary-1234',
      tone: 'canary',
      words: ['canary'],
      fit: { kind: 'canary' },
      symptoms: { a: 'canary' },
    };
    expect(JSON.stringify(faultsOf(Trial, body))).not.toContain('canary');
  });

  it('tell no more than a hundred faults', () => {
    const extra = Object.fromEntries(Array.from({ length: 300 }, (_each, index) => [`extra${index}`, 1]));
    expect(faultsOf(Trial, { ...valid, ...extra })).toHaveLength(100);
  });

  it('refuse a union case that nobody declared, alone or in a list', () => {
    expect(rulesOf(Trial, { ...valid, fit: { kind: 'bent' }, fits: [null] })).toEqual([
      '/fit kind',
      '/fits kind',
    ]);
  });
});

describe('derived classes', () => {
  class Base {
    @TextField({ description: 'name', max: 5 }) name!: string;
    @TextField({ description: 'note', max: 5, nullable: true }) note!: string | null;
    @IdField({ description: 'id' }) id!: string;
  }

  it('keep the rules of the first class', () => {
    class Short extends PickType(Base, ['name']) {}
    expect([...membersOf(Short).keys()]).toEqual(['name']);
    expect(faultsOf(Short, { name: 'ok' })).toEqual([]);
    expect(faultsOf(Short, { name: 'too long' })).toHaveLength(1);
    expect(faultsOf(Short, { name: 'ok', note: 'x' })).toHaveLength(1);
    expect([...membersOf(OmitType(Base, ['id'])).keys()]).toEqual(['name', 'note']);
  });

  it('of a merge patch admit an absent member, and null only where the member is nullable', () => {
    class Patch extends PartialType(OmitType(Base, ['id'])) {}
    expect(faultsOf(Patch, {})).toEqual([]);
    expect(faultsOf(Patch, { note: null })).toEqual([]);
    expect(faultsOf(Patch, { name: null })).toHaveLength(1);
    expect(documentSchemas([Patch])['Patch']).toEqual({
      type: 'object',
      properties: {
        name: expect.objectContaining({ type: 'string', maxLength: 5 }),
        note: expect.objectContaining({ type: ['string', 'null'] }),
      },
      additionalProperties: false,
    });
  });
});

describe('documentSchemas', () => {
  it('refuses two classes of one name', () => {
    const twins = ['a', 'b'].map(() => {
      class Twin {
        @TextField({ description: 'name', max: 5 }) name!: string;
      }
      return Twin;
    });
    expect(() => documentSchemas(twins)).toThrow('two classes are named Twin');
  });

  it('refuses a class without fields, which would let every body through', () => {
    class Bare {}
    expect(() => documentSchemas([Bare])).toThrow('Bare declares no field');
  });
});

describe('a class without members on purpose', () => {
  @NoMembers()
  class Nothing {}

  it('accepts an empty object and refuses any member', () => {
    expect(readAs(Nothing, {}).kind).toBe('valid');
    expect(rulesOf(Nothing, { a: 1 })).toEqual(['/a unknownMember']);
    expect(documentSchemas([Nothing])['Nothing']).toEqual({
      type: 'object',
      properties: {},
      additionalProperties: false,
    });
  });
});

describe('text that would not read as it is stored', () => {
  class Named {
    @TextField({ description: 'name', max: 40 }) name!: string;
    @TextField({ description: 'words', max: 40, multiline: true, optional: true }) words?: string;
  }

  it.each([
    ['\u200B', 'zero-width space'],
    ['\u200C', 'zero-width non-joiner'],
    ['\u200D', 'zero-width joiner'],
    ['\u200E', 'left-to-right mark'],
    ['\u2060', 'word joiner'],
    ['\uFEFF', 'zero-width no-break space'],
    ['\u00AD', 'soft hyphen'],
    ['\u202E', 'right-to-left override'],
    ['\u2066', 'left-to-right isolate'],
  ])('API row 28: %j in a name is refused with a reason: %s', (character) => {
    const read = readAs(Named, { name: `Wren${character} Halloway` });
    if (read.kind !== 'invalid') throw new Error('it was accepted');
    expect(read.faults).toEqual([
      { pointer: '/name', rule: 'pattern', detail: expect.stringContaining('cannot be seen') as string },
    ]);
  });

  it('words of several lines may hold joiners, and nothing that turns the direction of writing', () => {
    expect(readAs(Named, { name: 'a', words: 'a family \u{1F468}\u200D\u{1F469}' }).kind).toBe('valid');
    expect(readAs(Named, { name: 'a', words: 'a \u202Eb' }).kind).toBe('invalid');
  });

  it('names in other scripts, with accents, or with pictures are names', () => {
    for (const name of ['Zoë Łąk', 'Мирон', '阿部', 'شركة', 'van \u{1F690}'])
      expect([name, readAs(Named, { name }).kind]).toEqual([name, 'valid']);
  });
});
