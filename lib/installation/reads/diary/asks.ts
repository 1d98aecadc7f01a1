import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { readTotal } from '@/lib/commissions/reads/agreement/total';
import { factsOf } from '@/lib/commissions/reads/facts';
import { factsSelect } from '@/lib/commissions/reads/facts-select';
import { owedBeforeHandOverCents, planDue } from '@/lib/commissions/rules/money/plan';
import { dayFromDate, dayOf } from '@/lib/dates/rules';
import type { AbsentSpan } from '@/lib/installation/rules/crew/hours';
import { inOrder, wayKey, type PlaceToGo, type Ways } from '@/lib/installation/rules/crew/ways';
import { bringsThePiece, type Span } from '@/lib/installation/rules/diary/kinds';
import type { AskFacts, Goes, ReadyBy } from '@/lib/installation/rules/diary/questions';
import type { Cents } from '@/lib/money/rules';
import type { Gallery } from '@/lib/platform/settings';
import { everyone, type Wanted } from './booking';

/** What is asked about: what is wanted, where, in which gallery, when it is ready. */
export type Asking = {
  wanted: Wanted;
  place: PlaceToGo;
  gallery: Gallery;
  now: Date;
  /** As {@link readReadyBy} tells it; null where no piece goes along. */
  ready: ReadyBy | null;
};

/** How far around an appointment another may stand that a way leads to: two days. */
const aroundMs = 2 * 86_400_000;

/** What has to be known before it is asked whether a day should be booked all the same. */
export async function loadAskFacts(
  from: Prisma.TransactionClient,
  asking: Asking,
): Promise<AskFacts> {
  const { wanted, place, gallery, ready } = asking;
  const crew = await loadGoes(from, wanted);
  return {
    ...{ zone: gallery.timeZone, place, ready, crew },
    owedCents: await readOwedBefore(from, asking),
    ways: await loadWays(from, place, crew),
    closed: await readClosed(from),
  };
}

/** What the agreement wants before the hand-over and is not in; nothing where no piece goes along. */
export async function readOwedBefore(
  from: Prisma.TransactionClient,
  {
    wanted,
    gallery,
    now,
  }: Pick<Asking, 'gallery' | 'now'> & {
    wanted: Pick<Wanted, 'kind' | 'commissionId'>;
  },
): Promise<Cents> {
  const { kind, commissionId } = wanted;
  if (!commissionId || !bringsThePiece(kind)) return 0n;
  const on = dayOf(now, gallery.timeZone);
  const total = await readTotal(from, commissionId, { on, roundBy: gallery.roundTaxBy });
  const row = await from.commission.findUnique({
    where: { id: commissionId },
    select: factsSelect,
  });
  if (!total || !row) return 0n;
  return owedBeforeHandOverCents(planDue(factsOf(row, gallery.timeZone), total.totalCents));
}

async function loadGoes(from: Prisma.TransactionClient, wanted: Wanted): Promise<Goes[]> {
  const ids = everyone(wanted);
  const { span, exceptId } = wanted;
  const around = {
    fromAt: new Date(span.startsAt.getTime() - aroundMs),
    untilAt: new Date(span.endsAt.getTime() + aroundMs),
  };
  const rows = await from.staff.findMany({
    where: { id: { in: ids } },
    select: {
      ...{ id: true, name: true },
      workDays: { select: { weekday: true, fromMinute: true, toMinute: true } },
      absences: {
        where: { withdrawnAt: null },
        select: { fromOn: true, toOn: true, why: true },
        orderBy: { fromOn: 'asc' },
      },
      crews: {
        where: {
          ...{ isOff: false, startsAt: { lt: around.untilAt }, endsAt: { gt: around.fromAt } },
          ...(exceptId ? { appointmentId: { not: exceptId } } : {}),
        },
        select: {
          ...{ startsAt: true, endsAt: true },
          appointment: { select: { kind: true, address: true, travelMinutes: true } },
        },
        orderBy: { startsAt: 'asc' },
      },
    },
  });
  return ids.flatMap((id) => rows.filter((row) => row.id === id).map((row) => goesOf(row, span)));
}

type GoesRow = {
  id: string;
  name: string;
  workDays: Goes['workDays'];
  absences: { fromOn: Date; toOn: Date; why: string }[];
  crews: (Span & { appointment: Omit<Goes['neighbours'][number], keyof Span> })[];
};

/** Of what stands around it only the last before and the first after are neighbours. */
function goesOf({ id, name, workDays, absences, crews }: GoesRow, span: Span): Goes {
  const before = crews.findLast((one) => one.endsAt <= span.startsAt);
  const after = crews.find((one) => one.startsAt >= span.endsAt);
  return {
    ...{ staffId: id, name, workDays },
    absences: absences.map(readSpan),
    neighbours: [before, after].flatMap((one) =>
      one ? [{ startsAt: one.startsAt, endsAt: one.endsAt, ...one.appointment }] : [],
    ),
  };
}

async function loadWays(
  from: Prisma.TransactionClient,
  place: PlaceToGo,
  crew: readonly Goes[],
): Promise<Ways> {
  const addresses = crew.flatMap((goes) => goes.neighbours.map((one) => one.address));
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

function readSpan(row: { fromOn: Date; toOn: Date; why: string }): AbsentSpan {
  return { fromOn: dayFromDate(row.fromOn), toOn: dayFromDate(row.toOn), why: row.why };
}
