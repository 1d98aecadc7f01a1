import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { AppointmentKind, BookingFacts, Elsewhere, Span } from '@/lib/installation/rules';

type Wanted = {
  commissionId: string | null;
  leadId: string;
  span: Span;
  /** The appointment that is being moved: it is not in its own way. */
  exceptId: string | null;
};

/** What has to be known before an appointment is booked or moved. */
export async function loadBookingFacts(
  from: Prisma.TransactionClient,
  wanted: Wanted,
): Promise<BookingFacts> {
  const lead = await from.staff.findUnique({
    where: { id: wanted.leadId },
    select: { name: true, active: true },
  });
  return {
    commission: wanted.commissionId ? await loadCommission(from, wanted.commissionId) : null,
    lead: lead && { name: lead.name, isActive: lead.active },
    elsewhere: await loadElsewhere(from, wanted),
  };
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
  };
}

async function loadElsewhere(from: Prisma.TransactionClient, wanted: Wanted): Promise<Elsewhere[]> {
  const { leadId, span, exceptId } = wanted;
  const rows = await from.appointment.findMany({
    where: {
      leadId,
      calledOffAt: null,
      startsAt: { lt: span.endsAt },
      endsAt: { gt: span.startsAt },
      ...(exceptId ? { id: { not: exceptId } } : {}),
    },
    select: {
      id: true,
      kind: true,
      startsAt: true,
      endsAt: true,
      address: true,
      commission: { select: { title: true } },
    },
    orderBy: [{ startsAt: 'asc' }, { id: 'asc' }],
    take: 5,
  });
  return rows.map(({ commission, address, ...row }) => ({
    ...row,
    forWhat: commission ? `of ${commission.title}` : `at ${address}`,
  }));
}

/** An appointment as it must be known before it is changed; null when there is none. */
export async function loadToChange(
  from: Prisma.TransactionClient,
  id: string,
): Promise<
  (Span & { kind: AppointmentKind; leadId: string; sequence: number; isCalledOff: boolean }) | null
> {
  const row = await from.appointment.findUnique({
    where: { id },
    select: {
      kind: true,
      leadId: true,
      startsAt: true,
      endsAt: true,
      sequence: true,
      calledOffAt: true,
    },
  });
  if (!row) return null;
  const { calledOffAt, ...appointment } = row;
  return { ...appointment, isCalledOff: calledOffAt !== null };
}
