import 'server-only';
import { dateFromDay } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { entryBalances, type EntryToPost } from './rules';

/**
 * Writes one entry into the journal; joins the caller's transaction.
 *
 * @returns the entry's id
 * @throws Error when its postings do not sum to zero, or are fewer than two
 */
export async function postEntry(tx: Tx, entry: EntryToPost): Promise<string> {
  const [entryId] = await postEntries(tx, [entry]);
  invariant(entryId, 'Every entry gets an id.');
  return entryId;
}

/**
 * Writes many entries with two statements, in the order given; joins the caller's transaction.
 *
 * @returns the ids, in the order given
 * @throws Error when one of them does not sum to zero: then none is written
 */
export async function postEntries(tx: Tx, entries: readonly EntryToPost[]): Promise<string[]> {
  for (const entry of entries) {
    invariant(entryBalances(entry.postings), `The postings of "${entry.memo}" sum to zero.`);
  }
  const numbered = entries.map((entry) => ({ ...entry, id: newId() }));
  await tx.journalEntry.createMany({
    data: numbered.map(({ postings: _postings, on, ...entry }) => ({
      ...entry,
      on: dateFromDay(on),
    })),
  });
  await tx.posting.createMany({
    data: numbered.flatMap((entry) =>
      entry.postings.map((posting) => ({
        entryId: entry.id,
        accountCode: posting.account,
        amountCents: posting.amountCents,
        authority: posting.authority ?? null,
        commissionId: posting.commissionId ?? null,
        orderId: posting.orderId ?? null,
        layawayId: posting.layawayId ?? null,
        creditId: posting.creditId ?? null,
        collectorId: posting.collectorId ?? null,
      })),
    ),
  });
  return numbered.map((entry) => entry.id);
}
