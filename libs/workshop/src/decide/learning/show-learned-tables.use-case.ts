import { comebackCoefficients, judgementTables, type ComebackTable } from '@endfloat/decision';
import { learnedInterval, type LearnedInterval, type LearnedNumber } from '@endfloat/diagnosis';
import type { Fingerprint } from '../../ports/fingerprint.port.js';
import type { Caller } from '../../ports/roles.js';
import type { UnitOfWork } from '../../ports/unit-of-work.port.js';
import type { DecisionDocument, DiagnosisDocument } from './learned-documents.js';
import { decisionTablesInUse, diagnosisTablesInUse, type TablesInUse } from './learned-tables.use-case.js';

/** One number of the tables with its doubt. */
export interface LearnedCell extends LearnedNumber {
  readonly causeId: string;
  readonly interval: LearnedInterval;
}

export interface LearnedRow {
  readonly id: string;
  readonly cells: readonly LearnedCell[];
}

export interface DiagnosisTablesView extends TablesInUse<DiagnosisDocument> {
  readonly causes: readonly LearnedCell[];
  readonly symptoms: readonly LearnedRow[];
  readonly checks: readonly LearnedRow[];
}

/** One coefficient of the comeback model, before anything was counted and now. */
export interface LearnedCoefficient {
  readonly name: string;
  readonly startingMean: number;
  readonly startingDeviation: number;
  readonly mean: number;
  readonly deviation: number;
}

export interface DecisionTablesView extends TablesInUse<DecisionDocument> {
  readonly coefficients: readonly LearnedCoefficient[];
}

/** Tables in use, or earlier ones by their hash, with what every number was taught by. */
export class ShowLearnedTablesUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly fingerprint: Fingerprint,
  ) {}

  async diagnosis(caller: Caller, hash?: string): Promise<DiagnosisTablesView> {
    const found = await this.work.read(caller.shopId, (tx) =>
      diagnosisTablesInUse(tx, this.fingerprint, hash),
    );
    const { tables } = found.document;
    const { startingTables } = tables;
    const causeIds = startingTables.causes.map(({ id }) => id);
    const cellsOf = (numbers: Readonly<Record<string, LearnedNumber>>): readonly LearnedCell[] =>
      causeIds.flatMap((causeId) => {
        const number = numbers[causeId];
        return number === undefined ? [] : [{ ...number, causeId, interval: learnedInterval(number) }];
      });
    const rowsOf = (
      rows: readonly { readonly id: string }[],
      numbers: Readonly<Record<string, Readonly<Record<string, LearnedNumber>>>>,
    ): readonly LearnedRow[] => rows.map(({ id }) => ({ id, cells: cellsOf(numbers[id] ?? {}) }));
    return {
      ...found,
      causes: cellsOf(tables.causes),
      symptoms: rowsOf(startingTables.symptoms, tables.symptoms),
      checks: rowsOf(startingTables.checks, tables.checks),
    };
  }

  async decision(caller: Caller, hash?: string): Promise<DecisionTablesView> {
    const found = await this.work.read(caller.shopId, (tx) =>
      decisionTablesInUse(tx, this.fingerprint, hash),
    );
    const at = ({ mean, covariance }: ComebackTable, k: number) => ({
      mean: mean[k]!,
      deviation: Math.sqrt(covariance[k]![k]!),
    });
    const coefficients = comebackCoefficients.map((name, k): LearnedCoefficient => {
      const start = at(judgementTables.comeback, k);
      return {
        name,
        startingMean: start.mean,
        startingDeviation: start.deviation,
        ...at(found.document.tables.comeback, k),
      };
    });
    return { ...found, coefficients };
  }
}
