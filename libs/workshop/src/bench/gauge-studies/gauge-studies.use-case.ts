import type { Characteristic } from '@endfloat/catalogue';
import { quantityKindTable } from '@endfloat/metrology';
import { DomainError, invalidInput } from '../../errors/domain.errors.js';
import type { Clock } from '../../ports/clock.port.js';
import type { IdSource } from '../../ports/id-source.port.js';
import type { ListPosition } from '../../ports/record-store.port.js';
import type { GaugeStudy } from '../../ports/records/bench.records.js';
import type { NoReferences } from '../../ports/records/shop.records.js';
import type { Caller } from '../../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../../recording/add-record.js';
import { correctRecord, type ExpectedRevision } from '../../recording/correct-record.js';
import { requiredRecord } from '../../recording/required-record.js';
import { stampOf } from '../../recording/stamp.js';
import { settingsOf } from '../../shop/open-shop.use-case.js';
import { componentTypesOf } from '../component-types-of.js';
import { localDay } from '../local-day.js';
import { studiedFor, studiedRepeatabilitiesOf, type GaugeStudyRecord } from './studied-repeatability.js';
import { gaugeStudyResult, type GaugeStudyResult } from './study-result.js';

/** A study with what it says. */
export interface GaugeStudyView {
  readonly record: GaugeStudyRecord;
  readonly result: GaugeStudyResult;
  /** it is the one the doubt about new readings is taken from */
  readonly feedsBudgets: boolean;
}

/** Records a gauge study. Verdicts made from now on take their repeatability from it; those made before keep what they used. */
export class RecordGaugeStudyUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly study: GaugeStudy },
  ): Promise<{ readonly view: GaugeStudyView; readonly created: boolean }> {
    const stamp = stampOf(this.clock, caller);
    const { study } = command;
    return this.work.run(caller.shopId, async (tx) => {
      await refuseUnfit(tx, study, stamp.at);
      const record = { id: command.id ?? this.ids.next(), identity: {}, content: study };
      const added: AddedRecord<NoReferences, GaugeStudy> = await addRecord(
        tx.gaugeStudies,
        'gauge study',
        record,
        stamp,
      );
      if (added.created) {
        const { characteristic, instrumentKind } = study;
        await tx.announce({
          type: 'endfloat.gaugeStudy.recorded.v1',
          subjectId: added.record.id,
          at: stamp.at,
          payload: { characteristic, instrumentKind },
        });
      }
      return { view: await viewOf(tx, added.record), created: added.created };
    });
  }
}

/** Corrects a gauge study, or takes it out of use. */
export class CorrectGaugeStudyUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly study: GaugeStudy;
      readonly reason: string;
    },
  ): Promise<GaugeStudyView> {
    const stamp = stampOf(this.clock, caller, command.reason);
    const { id, expected, study } = command;
    return this.work.run(caller.shopId, async (tx) => {
      await requiredRecord(tx.gaugeStudies, 'gauge study', id);
      await refuseUnfit(tx, study, stamp.at);
      const change = { id, expected, content: study };
      return viewOf(tx, await correctRecord(tx.gaugeStudies, 'gauge study', change, stamp));
    });
  }
}

export interface GaugeStudiesQuery {
  readonly characteristic?: string | undefined;
  readonly instrumentKind?: string | undefined;
  readonly asOf?: string | undefined;
  readonly after?: ListPosition | undefined;
  readonly limit: number;
}

export class ShowGaugeStudyUseCase {
  constructor(private readonly work: UnitOfWork) {}

  /** One study, now or as it was known at a moment. */
  execute(
    caller: Caller,
    { id, asOf }: { readonly id: string; readonly asOf?: string | undefined },
  ): Promise<GaugeStudyView> {
    return this.work.read(caller.shopId, async (tx) =>
      viewOf(tx, await requiredRecord(tx.gaugeStudies, 'gauge study', id, asOf), asOf),
    );
  }

  /** Every revision, oldest first. */
  revisions(caller: Caller, id: string): Promise<readonly GaugeStudyRecord[]> {
    return this.work.read(caller.shopId, async (tx) => {
      await requiredRecord(tx.gaugeStudies, 'gauge study', id);
      return tx.gaugeStudies.history(id);
    });
  }

  /** Studies by the day they were done, latest first. */
  list(
    caller: Caller,
    { characteristic, instrumentKind, asOf, after, limit }: GaugeStudiesQuery,
  ): Promise<{ readonly items: readonly GaugeStudyView[]; readonly next?: ListPosition | undefined }> {
    return this.work.read(caller.shopId, async (tx) => {
      const where = { characteristic, instrumentKind };
      const page = await tx.gaugeStudies.list({ where, asOf, after, limit });
      return { items: await viewsOf(tx, page.items, asOf), next: page.next };
    });
  }
}

async function viewOf(tx: ShopTransaction, record: GaugeStudyRecord, asOf?: string): Promise<GaugeStudyView> {
  const [view] = await viewsOf(tx, [record], asOf);
  return view!;
}

async function viewsOf(
  tx: ShopTransaction,
  records: readonly GaugeStudyRecord[],
  asOf?: string,
): Promise<readonly GaugeStudyView[]> {
  const characteristics = [...new Set(records.map(({ content }) => content.characteristic))];
  const used = await studiedRepeatabilitiesOf(tx, characteristics, asOf);
  return records.map((record) => {
    const { characteristic, instrumentKind } = record.content;
    return {
      record,
      result: gaugeStudyResult(record.content),
      feedsBudgets: studiedFor(used, characteristic, instrumentKind)?.studyId === record.id,
    };
  });
}

/** A study is of a characteristic that is read as a number, in a unit of its kind, and was done already. */
async function refuseUnfit(tx: ShopTransaction, study: GaugeStudy, now: string): Promise<void> {
  const { timeZone } = await settingsOf(tx);
  if (study.studiedOn > localDay(now, timeZone))
    throw invalidInput('/studiedOn', 'notInFuture', 'A study is recorded once it was done.');
  if (study.poolingLevel !== null && study.design !== 'crossed')
    throw invalidInput(
      '/poolingLevel',
      'crossedOnly',
      'Only a crossed study has an interaction to pool; send null.',
    );
  const known: readonly Characteristic[] = (await componentTypesOf(tx))
    .flatMap(({ characteristics }) => characteristics)
    .filter(({ id, resultKind }) => id === study.characteristic && resultKind === 'number');
  const kinds = known.flatMap(({ quantityKind }) => quantityKind ?? []);
  if (kinds.length === 0) {
    throw invalidInput(
      '/characteristic',
      'reference',
      `No kind of part has a characteristic "${study.characteristic}" that is read as a number. GET /v1/component-types lists them.`,
    );
  }
  const units: readonly string[] = kinds.flatMap((kind) => quantityKindTable[kind].units);
  if (units.includes(study.unit)) return;
  throw new DomainError(
    'unit.mismatch',
    `${study.unit} is no unit of what is read for "${study.characteristic}".`,
    [{ pointer: '/unit', rule: 'unitOfKind', detail: `one of ${units.join(', ')}` }],
  );
}
