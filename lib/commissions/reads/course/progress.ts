import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import {
  fileColumns,
  shownPicture,
  type CommissionPictureShown,
} from '@/lib/commissions/reads/picture';
import {
  keptTitle,
  progressWords,
  type ProgressKind,
} from '@/lib/commissions/rules/course/progress';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';

/** Something that was remembered of the making; weights in grams. */
export type ProgressTold = {
  id: string;
  kind: ProgressKind;
  words: string;
  on: Day;
  picture: CommissionPictureShown | null;
  fileId: string | null;
  weightG: number | null;
  firing: string;
  batch: { number: string; glaze: string } | null;
  shared: boolean;
};

const columns = {
  ...{ id: true, kind: true, words: true, on: true, weightG: true, firing: true, shared: true },
  file: { select: fileColumns },
  batch: { select: { number: true, glaze: true } },
} as const satisfies Prisma.ProgressSelect;

/** Everything remembered of a commission, by the day it was; at most a thousand. */
export async function listProgress(actor: Actor, commissionId: string): Promise<ProgressTold[]> {
  assertAllowed(actor, 'commissions.see');
  return readProgress(db(), { commissionId });
}

/** What the studio chose to show of it, for the collector's own page; asked by its link. */
export async function progressForCollector(commissionId: string): Promise<ProgressTold[]> {
  return readProgress(db(), { commissionId, shared: true });
}

/** See {@link listProgress}; for papers that are read in one transaction. */
export async function readProgress(
  from: Prisma.TransactionClient,
  where: { commissionId: string; shared?: true },
): Promise<ProgressTold[]> {
  const rows = await from.progress.findMany({
    where,
    select: columns,
    orderBy: [{ on: 'asc' }, { at: 'asc' }, { id: 'asc' }],
    take: 1_000,
  });
  return rows.map(({ file, on, ...row }) => ({
    ...row,
    words: keptTitle(row),
    on: dayFromDate(on),
    fileId: file?.id ?? null,
    picture: file && shownPicture(file, row.words || progressWords[row.kind]),
  }));
}
