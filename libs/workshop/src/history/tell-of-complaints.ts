import type { ComplaintRecord } from '../jobs/take-complaint.use-case.js';
import type { PersonalRecord } from '../ports/records/shop.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import type { HistoryShelf } from './history-shelf.js';
import type { HistoryQuestion } from './tell-of-vehicle.js';

/** Complaints, and the earlier jobs they may be comebacks of. Answers which complaints each job deals with. */
export async function tellOfComplaints(
  tx: ShopTransaction,
  shelf: HistoryShelf,
  { caller, vehicleId }: HistoryQuestion,
): Promise<readonly ComplaintRecord[]> {
  const complaints = await shelf.latest('complaint', tx.complaints, { vehicleId });
  const personal = new Map<string, PersonalRecord>();
  await shelf.tell(tx.complaints, complaints, {
    kind: 'complaint',
    happenedAt: ({ content }) => content.receivedAt,
    jobId: ({ content }) => content.jobId,
    lookUp: async (all) => {
      const ids = [...new Set(all.flatMap(({ content }) => content.personalRecordId ?? []))];
      for (const each of await tx.personal.findMany(ids)) personal.set(each.id, each);
    },
    view: (record) => ({
      record,
      words: readableWords(caller, personal.get(record.content.personalRecordId ?? '')),
    }),
  });
  const comebacks = await shelf.latestOf(
    'comeback',
    tx.comebacks,
    { complaintId: complaints.map(({ id }) => id) },
    ({ firstRecordedAt }) => firstRecordedAt,
  );
  await shelf.tell(tx.comebacks, comebacks, {
    kind: 'comeback',
    happenedAt: ({ firstRecordedAt }) => firstRecordedAt,
    jobId: ({ identity }) => identity.jobId,
    view: (record) => record,
  });
  return complaints;
}

/** A customer's user reads the words of their own customer only, not those of an earlier owner of the vehicle. */
function readableWords(caller: Caller, personal: PersonalRecord | undefined): string | null {
  if (caller.customerId !== undefined && personal?.customerId !== caller.customerId) return null;
  return personal?.content?.['words'] ?? null;
}
