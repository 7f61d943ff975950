import { Readable } from 'node:stream';
import { text } from 'node:stream/consumers';
import { Body, Controller, Delete, Get, Param, Patch, Post, Query, StreamableFile } from '@nestjs/common';
import {
  DecimalField,
  EnumField,
  FlagField,
  IdField,
  InstantField,
  IntegerField,
  ListField,
  MapField,
  MoneyDto,
  MoneyField,
  NoMembers,
  OmitType,
  PageQuery,
  pageOf,
  PartialType,
  QuantityField,
  QueryFlagField,
  RateField,
  TextField,
  TextMapField,
  textPatterns,
  JsonField,
  NumberField,
  LocalDateField,
  type QuantityDto,
  type RateDto,
} from '@endfloat/contracts';
import { DomainError, type Caller } from '@endfloat/workshop';
import {
  Allow,
  alreadyThere,
  AlsoCsv,
  Answer,
  AnswerNothing,
  AnswerStream,
  BodyLimit,
  BodyStream,
  bulkBodyLimit,
  Consumes,
  CurrentCaller,
  IfMatch,
  Pager,
  Produces,
  type ExpectedVersion,
} from '../../apps/api/src/http/index.js';

const kinds = ['gauge', 'lamp'] as const;

/** A made-up resource with one member of most kinds. */
export class CreateTrialThing {
  @IdField({ description: 'Id.', optional: true }) id?: string;
  @TextField({ description: 'Name.', max: 20, example: 'lamp' }) name!: string;
  @TextField({
    description: 'Number as read.',
    optional: true,
    nullable: true,
    max: 40,
    pattern: textPatterns.chassisNumber,
  })
  chassisNumber?: string | null;
  @EnumField({ description: 'Kind.', values: kinds, enumName: 'TrialKind', open: true, optional: true })
  kind?: string;
  @DecimalField({ description: 'Exact figure.', optional: true, signed: true, scale: 3 }) exact?: string;
  @QuantityField({ description: 'Distance.', optional: true, kind: 'distance' }) odometer?: QuantityDto;
  @MoneyField({ description: 'Price.', optional: true }) price?: MoneyDto;
  @InstantField({ description: 'When.', optional: true }) takenAt?: string;
  @LocalDateField({ description: 'Day.', optional: true }) dueOn?: string;
  @FlagField({ description: 'Lit.', optional: true }) lit?: boolean;
  @IntegerField({ description: 'Seats.', optional: true, max: 60 }) seats?: number;
  @ListField({ description: 'Words.', optional: true, text: { max: 9 }, max: 3 }) words?: string[];
  @MapField({
    description: 'Marks.',
    optional: true,
    max: 5,
    choice: { values: kinds, enumName: 'TrialKind', open: true },
  })
  marks?: Record<string, string>;
  @TextMapField({ description: 'Conditions.', optional: true, maxEntries: 5, max: 20 }) conditions?: Record<
    string,
    string
  >;
}

export class TrialThing extends OmitType(CreateTrialThing, ['id']) {
  @IdField({ description: 'Id.' }) id!: string;
  @IntegerField({ description: 'Version.', min: 1 }) version!: number;
  @RateField({ description: 'How often.', optional: true }) rate?: RateDto;
  @NumberField({ description: 'Share.', optional: true, nullable: true, min: 0, max: 1 }) share?:
    number | null;
  @JsonField({ description: 'Inputs as stored.', optional: true }) inputs?: object;
}
export class TrialThingPage extends pageOf(() => TrialThing) {}
export class PatchTrialThing extends PartialType(OmitType(CreateTrialThing, ['id'])) {}
export class TrialThingPath {
  @IdField({ description: 'Id.' }) thingId!: string;
}
export class TrialQuery extends PageQuery {
  @QueryFlagField({ description: 'Lit ones only.', optional: true }) lit?: string;
  @EnumField({ description: 'Kind.', values: kinds, enumName: 'TrialKind', open: true, optional: true })
  kind?: string;
}
@NoMembers()
export class NothingToSay {}
export class TrialBatch {
  @ListField({ description: 'Many things.', type: () => CreateTrialThing, max: 1000 })
  items!: CreateTrialThing[];
}
export class TrialCount {
  @IntegerField({ description: 'How many characters or things came.', max: 10_000_000 }) count!: number;
}

export const thingId = '0193f2c0-0000-7000-8000-0000000000b1';
/** The members of a request, without its class. */
const plain = <T extends object>(body: T): T => Object.fromEntries(Object.entries(body)) as T;

const reading = ['owner', 'desk', 'auditor'] as const;

/** What the last handler was given: proof of what arrived. */
export const arrived: { body?: unknown; caller?: Caller } = {};

@Controller({ path: 'trial-things', version: '1' })
export class TrialThingsController {
  constructor(private readonly pager: Pager) {}

  @Get()
  @Allow(...reading)
  @Answer(TrialThingPage, { summary: 'List trial things' })
  @AlsoCsv('trial-things', ({ items }: TrialThingPage) => items, [
    { name: 'id', value: ({ id }) => id },
    { name: 'name', value: ({ name }) => name },
  ])
  listTrialThings(@Query() query: TrialQuery): TrialThingPage {
    const { limit, after } = this.pager.read(query);
    const start = after === undefined ? 0 : Number(after.sortValue) + 1;
    const items = Array.from({ length: 120 }, (_each, index) => index).slice(start, start + limit);
    const last = items.at(-1);
    const next = last === undefined || last === 119 ? undefined : { sortValue: String(last), id: thingId };
    return this.pager.page({ items, next }, (index) => ({ id: thingId, name: `thing ${index}`, version: 1 }));
  }

  @Post()
  @Allow('owner', 'desk')
  @Answer(TrialThing, { summary: 'Record a trial thing', created: true })
  createTrialThing(@CurrentCaller() caller: Caller, @Body() body: CreateTrialThing): TrialThing {
    Object.assign(arrived, { body, caller });
    const thing = { ...plain(body), id: body.id ?? thingId, version: 1 };
    return body.name === 'again' ? alreadyThere(thing) : thing;
  }

  @Post('batches')
  @Allow('owner')
  @BodyLimit(bulkBodyLimit)
  @Answer(TrialCount, {
    summary: 'Record many trial things',
    accepted: true,
    location: () => '/v1/trial-things',
  })
  createTrialBatch(@Body() body: TrialBatch): TrialCount {
    return { count: body.items.length };
  }

  @Post('imports')
  @Allow('owner')
  @Consumes('text/csv')
  @Answer(TrialCount, { summary: 'Import trial things', accepted: true, location: () => '/v1/trial-things' })
  async importTrialThings(@BodyStream() body: Readable): Promise<TrialCount> {
    return { count: (await text(body)).length };
  }

  @Get('exports/all')
  @Allow(...reading)
  @Produces('text/csv')
  @AnswerStream({ summary: 'Export trial things' })
  exportTrialThings(): StreamableFile {
    return new StreamableFile(Buffer.from('name\r\nlamp\r\n'), { type: 'text/csv' });
  }

  @Get(':thingId')
  @Allow(...reading)
  @Answer(TrialThing, { summary: 'Show a trial thing' })
  showTrialThing(@Param() path: TrialThingPath): TrialThing {
    const rate = { kind: 'insufficientData' as const, events: 0, atRisk: 0, needed: 10 };
    return {
      id: path.thingId,
      name: 'lamp',
      version: 3,
      rate,
      share: null,
      inputs: { any: [1, { thing: true }] },
    };
  }

  @Patch(':thingId')
  @Allow('owner')
  @Answer(TrialThing, { summary: 'Change a trial thing' })
  updateTrialThing(
    @Param() path: TrialThingPath,
    @IfMatch() expected: ExpectedVersion,
    @Body() body: PatchTrialThing,
  ): TrialThing {
    arrived.body = body;
    if (expected.kind === 'oneOf' && !expected.versions.has(3))
      throw new DomainError('record.changedMeanwhile', 'changed');
    return { name: 'lamp', ...plain(body), id: path.thingId, version: 4 };
  }

  @Delete(':thingId')
  @Allow('owner')
  @AnswerNothing({ summary: 'Retire a trial thing' })
  removeTrialThing(@Param() path: TrialThingPath, @IfMatch() expected: ExpectedVersion): void {
    arrived.body = { path, expected };
  }

  @Post(':thingId/closures')
  @Allow('owner')
  @Answer(TrialThing, { summary: 'Close a trial thing', created: true })
  closeTrialThing(@Param() path: TrialThingPath, @Body() body: NothingToSay): TrialThing {
    arrived.body = body;
    return { id: path.thingId, name: 'closed', version: 5 };
  }
}

/** Handlers that go wrong on purpose, each in its own way. */
@Controller({ path: 'trial-faults', version: '1' })
export class TrialFaultsController {
  @Get('leak')
  @Allow('owner')
  @Answer(TrialThing, { summary: 'Answer with a member outside the contract' })
  leakMember(): TrialThing {
    const row = { id: thingId, name: 'lamp', version: 1, shopId: thingId };
    return row;
  }

  @Get('bug')
  @Allow('owner')
  @Answer(TrialThing, { summary: 'Throw what nobody expected' })
  throwBug(): TrialThing {
    throw new RangeError('select secret from /srv/host-7 failed in driver');
  }

  @Get('away')
  @Allow('owner')
  @Answer(TrialThing, { summary: 'Find the database away' })
  findDatabaseAway(): TrialThing {
    throw Object.assign(new Error('connect ECONNREFUSED 10.0.0.7:5432'), { code: 'ECONNREFUSED' });
  }

  @Get('slow')
  @Allow('owner')
  @Answer(TrialThing, { summary: 'Take a little while' })
  async takeAWhile(): Promise<TrialThing> {
    await new Promise((resolve) => setTimeout(resolve, 150));
    return { id: thingId, name: 'slow', version: 1 };
  }

  @Get('missing')
  @Allow('owner')
  @Answer(TrialThing, { summary: 'Find nothing' })
  findNothing(): TrialThing {
    throw new DomainError('record.notFound', 'There is no such thing.');
  }
}

export const trialControllers = [TrialThingsController, TrialFaultsController];
