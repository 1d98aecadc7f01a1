import { addDays, dateFromDay, instantOf, weekdayOf, type Day } from '@/lib/dates/rules';
import { countEntry, differenceWords, notesAndCoins } from '@/lib/drawer/rules';
import { accounts } from '@/lib/ledger/rules';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok } from '@/lib/platform/result';
import { gallery } from '@/seed/scenario/gallery';
import { beginningOf, type SetUp } from '@/seed/set-up';

/** What stays in the drawer. */
const floatMost = 20_000n;

/** What the counts found beside the books, and why; most weeks agree. */
const differences: readonly { cents: bigint; reason: string }[] = [
  { cents: -200n, reason: 'change was given twice for one card, it seems' },
  { cents: 100n, reason: 'not known' },
  { cents: -45n, reason: 'coins under the drawer, not found' },
];

type Count = {
  on: Day;
  at: Date;
  expectedCents: bigint;
  countedCents: bigint;
  floatCents: bigint;
  reason: string;
};

/**
 * Counts the demo's drawer once a week and the evening before today, in three statements: the
 * drawer then holds its float and what has come since.
 */
export async function playDrawer({ today, setUp }: { today: Day; setUp: SetUp }): Promise<void> {
  const counts = countsOf(await cashMoved(), closings(today));
  const named = counts.map((count) => ({ ...count, id: newId(), entryId: newId() }));
  const { id: staffId } = setUp.seller;
  await inTransaction<null, never>(async (tx) => {
    await tx.journalEntry.createMany({
      data: named.filter(isBooked).map(({ id: paperId, entryId: id, on, at, ...count }) => ({
        ...{ id, on: dateFromDay(on), at, staffId, paper: 'DrawerCount', paperId },
        memo: `The drawer was counted. ${differenceWords(count.countedCents - count.expectedCents)}.`,
      })),
    });
    await tx.posting.createMany({
      data: named.flatMap((count) =>
        postingsOf(count).map(({ account, amountCents }) => ({
          ...{ entryId: count.entryId, accountCode: account, amountCents },
        })),
      ),
    });
    await tx.drawerCount.createMany({
      data: named.map((count) => ({
        ...count,
        on: dateFromDay(count.on),
        bankedCents: count.countedCents - count.floatCents,
        pieces: inPieces(count.countedCents),
        staffId,
        entryId: isBooked(count) ? count.entryId : null,
      })),
    });
    return ok(null);
  });
}

/** Monday evenings, and the evening before today: the gallery is closed on Tuesdays. */
function closings(today: Day): { on: Day; at: Date }[] {
  const days: Day[] = [];
  for (let day = beginningOf(today); day < today; day = addDays(day, 1)) {
    if (weekdayOf(day) === 1 || addDays(day, 1) === today) days.push(day);
  }
  return days.map((on) => ({ on, at: instantOf(on, '18:20', gallery.timeZone) }));
}

async function cashMoved(): Promise<{ at: Date; cents: bigint }[]> {
  const rows = await db().posting.findMany({
    where: { accountCode: accounts.cashDrawer },
    orderBy: { entry: { at: 'asc' } },
    select: { amountCents: true, entry: { select: { at: true } } },
  });
  return rows.map(({ amountCents: cents, entry }) => ({ at: entry.at, cents }));
}

function countsOf(
  moved: readonly { at: Date; cents: bigint }[],
  evenings: readonly { on: Day; at: Date }[],
): Count[] {
  const counts: Count[] = [];
  let [held, next] = [0n, 0];
  for (const [week, evening] of evenings.entries()) {
    for (let one = moved[next]; one && one.at <= evening.at; one = moved[(next += 1)]) {
      held += one.cents;
    }
    if (held < 0n) continue;
    const found = week % 7 === 3 ? differences[week % differences.length] : undefined;
    const countedCents = held + (found && held > 1_000n ? found.cents : 0n);
    const reason = found && held > 1_000n ? found.reason : '';
    const floatCents = countedCents < floatMost ? countedCents : floatMost;
    counts.push({ ...evening, expectedCents: held, countedCents, floatCents, reason });
    held = floatCents;
  }
  return counts;
}

function postingsOf({ expectedCents, countedCents, floatCents }: Count) {
  return countEntry(countedCents - expectedCents, countedCents - floatCents);
}

function isBooked(count: Count): boolean {
  return postingsOf(count).length > 0;
}

/** As few notes and coins as make the sum; no two-dollar notes, which nobody brings. */
function inPieces(countedCents: bigint): Record<string, number> {
  let left = countedCents;
  const pieces: Record<string, number> = {};
  for (const { cents } of notesAndCoins) {
    const many = cents === 200 ? 0n : left / BigInt(cents);
    left -= many * BigInt(cents);
    if (many > 0n) pieces[String(cents)] = Number(many);
  }
  return pieces;
}
