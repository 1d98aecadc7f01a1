import 'server-only';
import type { AppointmentKind, BookingFacts, Elsewhere, Span } from '@/lib/installation/rules';
import type { Tx } from '@/lib/platform/db/transaction';

type Wanted = {
  commissionId: string | null;
  leadId: string;
  span: Span;
  /** The appointment that is being moved: it is not in its own way. */
  exceptId: string | null;
};

/** What has to be known before an appointment is booked or moved. */
export async function loadBookingFacts(tx: Tx, wanted: Wanted): Promise<BookingFacts> {
  const lead = await tx.staff.findUnique({
    where: { id: wanted.leadId },
    select: { name: true, active: true },
  });
  return {
    commission: wanted.commissionId ? await loadCommission(tx, wanted.commissionId) : null,
    lead: lead && { name: lead.name, isActive: lead.active },
    elsewhere: await loadElsewhere(tx, wanted),
  };
}

async function loadCommission(tx: Tx, id: string): Promise<BookingFacts['commission']> {
  const row = await tx.commission.findUnique({
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

async function loadElsewhere(tx: Tx, wanted: Wanted): Promise<Elsewhere[]> {
  const { leadId, span, exceptId } = wanted;
  const rows = await tx.appointment.findMany({
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
  tx: Tx,
  id: string,
): Promise<
  (Span & { kind: AppointmentKind; leadId: string; sequence: number; isCalledOff: boolean }) | null
> {
  const row = await tx.appointment.findUnique({
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
