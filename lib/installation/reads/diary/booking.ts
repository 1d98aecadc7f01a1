import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { BookingFacts, Goer, HangsOn } from '@/lib/installation/rules/diary/booking';
import type { AppointmentKind, Span } from '@/lib/installation/rules/diary/kinds';

/** Who goes: the lead, and the others beside. */
export type Going = { leadId: string; crewIds: readonly string[] };

/** What somebody wants to book. */
export type Wanted = Going & {
  kind: AppointmentKind;
  commissionId: string | null;
  span: Span;
  /** The appointment that is being moved: it is not in its own way. */
  exceptId: string | null;
};

/** Everyone who goes along, the lead first, each once. */
export function everyone({ leadId, crewIds }: Going): string[] {
  return [...new Set([leadId, ...crewIds])];
}

/** What has to be known before an appointment is booked or moved. */
export async function loadBookingFacts(
  from: Prisma.TransactionClient,
  wanted: Wanted,
): Promise<BookingFacts> {
  const [leadId, ...otherIds] = everyone(wanted);
  const people = await loadPeople(from, everyone(wanted));
  return {
    kind: wanted.kind,
    commission: wanted.commissionId ? await loadCommission(from, wanted.commissionId) : null,
    lead: people.get(leadId ?? '') ?? null,
    others: otherIds.map((id) => people.get(id) ?? null),
    elsewhere: await loadElsewhere(from, wanted),
  };
}

async function loadPeople(
  from: Prisma.TransactionClient,
  ids: readonly string[],
): Promise<ReadonlyMap<string, Goer>> {
  const rows = await from.staff.findMany({
    where: { id: { in: [...ids] } },
    select: { id: true, name: true, active: true },
  });
  return new Map(rows.map(({ id, name, active }) => [id, { id, name, isActive: active }]));
}

async function loadCommission(
  from: Prisma.TransactionClient,
  id: string,
): Promise<BookingFacts['commission']> {
  const row = await from.commission.findUnique({
    where: { id },
    select: {
      number: true,
      ending: { select: { commissionId: true } },
      handOver: { select: { commissionId: true } },
    },
  });
  if (!row) return 'not_found';
  return {
    number: row.number,
    hasEnded: row.ending !== null,
    isHandedOver: row.handOver !== null,
    ...(await loadHangsOn(from, id)),
  };
}

/** What a hanging of a commission stands on: the wall as it was looked at last, and the adhesive. */
export async function loadHangsOn(
  from: Prisma.TransactionClient,
  commissionId: string,
): Promise<HangsOn> {
  const survey = await from.wallSurvey.findFirst({
    where: { commissionId },
    select: { wall: true },
    orderBy: { version: 'desc' },
  });
  const assembly = await from.assembly.findFirst({
    where: { commissionId },
    select: { curesAt: true },
    orderBy: [{ finishedAt: 'desc' }, { at: 'desc' }],
  });
  return { isWallKnown: (survey?.wall ?? null) !== null, curesAt: assembly?.curesAt ?? null };
}

async function loadElsewhere(
  from: Prisma.TransactionClient,
  wanted: Wanted,
): Promise<BookingFacts['elsewhere']> {
  const { span, exceptId } = wanted;
  const rows = await from.appointmentCrew.findMany({
    where: {
      ...{ staffId: { in: everyone(wanted) }, isOff: false },
      startsAt: { lt: span.endsAt },
      endsAt: { gt: span.startsAt },
      ...(exceptId ? { appointmentId: { not: exceptId } } : {}),
    },
    select: {
      ...{ staffId: true, startsAt: true, endsAt: true },
      appointment: {
        select: {
          ...{ id: true, kind: true, address: true },
          commission: { select: { title: true } },
        },
      },
    },
    orderBy: [{ startsAt: 'asc' }, { appointmentId: 'asc' }, { staffId: 'asc' }],
    take: 20,
  });
  return rows.map(({ appointment: { commission, address, ...appointment }, ...row }) => ({
    ...row,
    ...appointment,
    forWhat: commission ? `of ${commission.title}` : `at ${address}`,
  }));
}

/** An appointment as it must be known before it is changed; null when there is none. */
export type ToChange = Span & {
  kind: AppointmentKind;
  commissionId: string | null;
  leadId: string;
  crewIds: string[];
  sequence: number;
  isCalledOff: boolean;
};

/** Finds an appointment that somebody wants to change; null when there is none. */
export async function loadToChange(
  from: Prisma.TransactionClient,
  id: string,
): Promise<ToChange | null> {
  const row = await from.appointment.findUnique({
    where: { id },
    select: {
      ...{ kind: true, commissionId: true, leadId: true, startsAt: true, endsAt: true },
      ...{ sequence: true, calledOffAt: true },
      crew: { select: { staffId: true }, orderBy: { staffId: 'asc' } },
    },
  });
  if (!row) return null;
  const { calledOffAt, crew, ...appointment } = row;
  return {
    ...appointment,
    crewIds: crew.map(({ staffId }) => staffId),
    isCalledOff: calledOffAt !== null,
  };
}
