import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { readTotal } from '@/lib/commissions/reads/agreement/total';
import { factsOf } from '@/lib/commissions/reads/facts';
import { factsSelect } from '@/lib/commissions/reads/facts-select';
import { owedBeforeHandOverCents, planDue } from '@/lib/commissions/rules/money/plan';
import { dayOf } from '@/lib/dates/rules';
import type { AbsentSpan } from '@/lib/installation/rules/crew/hours';
import { inOrder, wayKey, type PlaceToGo, type Ways } from '@/lib/installation/rules/crew/ways';
import { goesAround, type Busy } from '@/lib/installation/rules/crew/busy';
import { bringsThePiece } from '@/lib/installation/rules/diary/kinds';
import type { AskFacts, ReadyBy } from '@/lib/installation/rules/diary/questions';
import { sumCents, type Cents } from '@/lib/money/rules';
import type { Gallery } from '@/lib/platform/settings';
import { everyone, type Wanted } from './booking';
import { loadBusy, readSpan } from './busy';

/** What is asked about: what is wanted, where, in which gallery, when it is ready. */
export type Asking = {
  wanted: Wanted;
  place: PlaceToGo;
  gallery: Gallery;
  now: Date;
  /** As {@link readReadyBy} tells it; null where no piece goes along. */
  ready: ReadyBy | null;
};

/** What has to be known before it is asked whether a day should be booked all the same. */
export async function loadAskFacts(
  from: Prisma.TransactionClient,
  asking: Asking,
): Promise<AskFacts> {
  const { wanted, place, gallery, ready } = asking;
  const { span, exceptId } = wanted;
  const around = { fromAt: span.startsAt, untilAt: span.endsAt, exceptId };
  const people = await loadBusy(from, everyone(wanted), around);
  const crew = people.map((one) => goesAround(one, span));
  return {
    ...{ zone: gallery.timeZone, place, ready, crew },
    owedCents: (await readOwed(from, asking)).beforeCents,
    ways: await loadWays(from, place, people),
    closed: await readClosed(from),
  };
}

/** Money that is still owed: what the agreement wants before the hand-over, and the rest. */
export type Owed = { beforeCents: Cents; laterCents: Cents };

/** What is owed of a commission; nothing where no piece goes along. */
export async function readOwed(
  from: Prisma.TransactionClient,
  {
    wanted,
    gallery,
    now,
  }: Pick<Asking, 'gallery' | 'now'> & {
    wanted: Pick<Wanted, 'kind' | 'commissionId'>;
  },
): Promise<Owed> {
  const { kind, commissionId } = wanted;
  const nothing = { beforeCents: 0n, laterCents: 0n };
  if (!commissionId || !bringsThePiece(kind)) return nothing;
  const on = dayOf(now, gallery.timeZone);
  const total = await readTotal(from, commissionId, { on, roundBy: gallery.roundTaxBy });
  const row = await from.commission.findUnique({
    where: { id: commissionId },
    select: factsSelect,
  });
  if (!total || !row) return nothing;
  const plan = planDue(factsOf(row, gallery.timeZone), total.totalCents);
  const beforeCents = owedBeforeHandOverCents(plan);
  const allCents = sumCents(plan.map(({ leftCents }) => leftCents));
  return { beforeCents, laterCents: allCents - beforeCents };
}

/** The ways that are kept between a place and all that the people have in their diaries. */
export async function loadWays(
  from: Prisma.TransactionClient,
  place: PlaceToGo,
  people: readonly Busy[],
): Promise<Ways> {
  const addresses = people.flatMap(({ busy }) => busy.map((one) => one.address));
  const pairs = [...new Set(addresses)].map((address) => inOrder(place.address, address));
  if (pairs.length === 0) return new Map();
  const rows = await from.travelTime.findMany({
    where: { OR: pairs.map(([fromPlace, toPlace]) => ({ fromPlace, toPlace })) },
    select: { fromPlace: true, toPlace: true, minutes: true },
  });
  return new Map(rows.map((row) => [wayKey(row.fromPlace, row.toPlace), row.minutes]));
}

/** The days on which the whole studio stands still. */
export async function readClosed(from: Prisma.TransactionClient): Promise<AbsentSpan[]> {
  const rows = await from.studioClosed.findMany({
    where: { kilnId: null, benchId: null },
    select: { fromOn: true, toOn: true, why: true },
    orderBy: { fromOn: 'asc' },
  });
  return rows.map(readSpan);
}
