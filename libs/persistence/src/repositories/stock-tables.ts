import type * as records from '@endfloat/workshop/ports';
import type { RecordTable } from './record-table.js';

/** Where parts, the stock ledger, cores, claims and inspections on arrival lie. */
export const stockTables = {
  parts: {
    name: 'part',
    identity: {},
    columns: { componentType: 'text', partNumber: 'text' },
    sort: { by: 'partNumber', descending: false },
  } satisfies RecordTable<records.NoReferences, records.Part>,
  stockMoves: {
    name: 'stock_move',
    identity: {
      partId: 'uuid',
      jobId: 'uuid',
      workLineId: 'uuid',
      reversesId: 'uuid',
      condition: 'text',
      kind: 'text',
      position: 'int4',
      onHandChange: 'int4',
      reservedChange: 'int4',
      onHandAfter: 'int4',
      reservedAfter: 'int4',
    },
    columns: { happenedAt: 'timestamptz', serial: 'text', batch: 'text' },
    sort: { by: 'firstRecordedAt', descending: true },
  } satisfies RecordTable<records.StockMoveIdentity, records.StockMove>,
  cores: {
    name: 'core',
    identity: { partId: 'uuid', stockMoveId: 'uuid', jobId: 'uuid' },
    columns: { supplier: 'text', componentType: 'text', owedSince: 'date', returnBy: 'date', state: 'text' },
    sort: { by: 'owedSince', descending: true },
  } satisfies RecordTable<records.CoreIdentity, records.Core>,
  warrantyClaims: {
    name: 'warranty_claim',
    identity: { partId: 'uuid', fittedPartId: 'uuid', jobId: 'uuid' },
    columns: { supplier: 'text', claimedOn: 'date', state: 'text' },
    sort: { by: 'claimedOn', descending: true },
  } satisfies RecordTable<records.WarrantyClaimIdentity, records.WarrantyClaim>,
  arrivalInspections: {
    name: 'arrival_inspection',
    identity: { partId: 'uuid', checkSheetId: 'uuid', stockMoveId: 'uuid' },
    columns: { inspectedAt: 'timestamptz', serial: 'text' },
    sort: { by: 'inspectedAt', descending: true },
  } satisfies RecordTable<records.ArrivalInspectionIdentity, records.ArrivalInspection>,
};
