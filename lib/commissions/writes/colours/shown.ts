import 'server-only';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';

/** A sketch or a colour tile as an answer finds it. */
export type ShownToAnswer = {
  label: string;
  contentSha256: string;
  fileSha256: string;
  shownOn: Day;
  /** Whether the twin of a tile is in the collector's hands; true for a sketch. */
  isGiven: boolean;
  yes: { approvedBy: string; approvedOn: Day } | null;
};

/** What was shown of a commission, to be answered; null for nothing of that id. */
export async function findShown(
  tx: Tx,
  asked: { commissionId: string; what: 'sketch' | 'colour_tile'; shownId: string },
): Promise<ShownToAnswer | null> {
  const where = { id: asked.shownId, commissionId: asked.commissionId };
  const select = {
    fileSha256: true,
    contentSha256: true,
    shownOn: true,
    approvals: { select: { approvedBy: true, approvedOn: true }, take: 1 },
  };
  const given = { given: { select: { tileId: true } } };
  const row =
    asked.what === 'sketch'
      ? await tx.sketch.findFirst({ where, select: { ...select, letter: true } })
      : await tx.colourTile.findFirst({ where, select: { ...select, ...given, number: true } });
  if (!row) return null;
  const [yes] = row.approvals;
  return {
    label: 'letter' in row ? row.letter : String(row.number),
    fileSha256: row.fileSha256,
    contentSha256: row.contentSha256,
    shownOn: dayFromDate(row.shownOn),
    isGiven: 'letter' in row || row.given !== null,
    yes: yes ? { ...yes, approvedOn: dayFromDate(yes.approvedOn) } : null,
  };
}
