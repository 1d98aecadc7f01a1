import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import type { LengthSystem } from '@/lib/units/rules';
import { planStockList, type PlannedRow } from '../rules/list-plan';
import { countPlan, planAsShown, type ListCounts } from '../rules/list-summary';
import { readKnownStock } from './known-stock';
import { readListFile } from './list-file';
import { hashPlan } from './plan-hash';

/** How many lines of a list are shown on one page. */
export const linesAPage = 100;

/** A stock list as it is looked at before the yes. */
export type ListShown = ListCounts & {
  id: string;
  fileName: string;
  place: string;
  system: LengthSystem;
  shownAt: Date;
  shownBy: string;
  confirmedAt: Date | null;
  /** Of the plan that was shown; the yes is to exactly that. */
  planSha256: string;
  /** False when the stock has changed since, so that a look at it once more is needed. */
  isStillTrue: boolean;
  passedOver: readonly string[];
  lines: PlannedRow[];
  page: number;
  pages: number;
};

/**
 * A stock list, line by line against the stock as it is now; what was refused comes first.
 *
 * @param page from 1; a page past the end is the last one
 * @returns null when there is no such list
 */
export async function findStockList(
  actor: Actor,
  id: string,
  page: number,
): Promise<ListShown | null> {
  assertAllowed(actor, 'stock.load');
  const list = await loadList(id);
  if (!list) return null;
  const { file, placeId, place, staffName, ...kept } = list;
  const { lengthUnit: system } = await getGallery();
  const named = { ...kept, place: place.name, shownBy: staffName, system };
  if (kept.confirmedAt) return { ...named, isStillTrue: true, ...noLines };

  const read = await readListFile(file.bytes, system);
  if (!read.ok) return { ...named, isStillTrue: false, ...noLines };
  const known = await readKnownStock(db(), read.value.rows, placeId);
  const plan = planStockList(read.value.rows, known);
  const { passedOver } = read.value;
  const isStillTrue = hashPlan(plan) === kept.planSha256;
  return { ...named, ...countPlan(plan), isStillTrue, passedOver, ...pageOf(plan, page) };
}

const noLines = { passedOver: [], lines: [], page: 1, pages: 1 };

function pageOf(plan: readonly PlannedRow[], wished: number) {
  const pages = Math.max(1, Math.ceil(plan.length / linesAPage));
  const page = Math.min(wished, pages);
  const lines = planAsShown(plan).slice((page - 1) * linesAPage, page * linesAPage);
  return { lines, page, pages };
}

async function loadList(id: string) {
  const list = await db().stockList.findUnique({
    where: { id },
    select: {
      ...{ id: true, fileName: true, placeId: true, planSha256: true, staffId: true },
      ...{ shownAt: true, confirmedAt: true },
      ...{ newRows: true, changedRows: true, sameRows: true, refusedRows: true },
      file: { select: { bytes: true } },
      place: { select: { name: true } },
    },
  });
  if (!list) return null;
  const { staffId, ...kept } = list;
  const staff = await db().staff.findUnique({ where: { id: staffId }, select: { name: true } });
  return { ...kept, staffName: staff?.name ?? 'someone' };
}

/** A list that was brought in or looked at, for the row of the latest ones. */
export type ListBefore = ListCounts & {
  id: string;
  fileName: string;
  shownAt: Date;
  confirmedAt: Date | null;
};

/** The latest stock lists, the newest first; ten at most. */
export async function listStockLists(actor: Actor): Promise<ListBefore[]> {
  assertAllowed(actor, 'stock.load');
  return db().stockList.findMany({
    select: {
      ...{ id: true, fileName: true, shownAt: true, confirmedAt: true },
      ...{ newRows: true, changedRows: true, sameRows: true, refusedRows: true },
    },
    orderBy: [{ shownAt: 'desc' }, { id: 'desc' }],
    take: 10,
  });
}
