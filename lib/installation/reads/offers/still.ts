import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { loadWays } from '@/lib/installation/reads/diary/asks';
import { everyone, loadHangsOn } from '@/lib/installation/reads/diary/booking';
import { loadBusy } from '@/lib/installation/reads/diary/busy';
import type { AppointmentKind, Span } from '@/lib/installation/rules/diary/kinds';
import type { StillFacts } from '@/lib/installation/rules/offers/slots';

/** Offered days of which it is asked whether they can still be. */
export type OfferOfDays = {
  kind: AppointmentKind;
  commissionId: string;
  leadId: string;
  crewIds: readonly string[];
  address: string;
  travelMinutes: number;
  slots: readonly Span[];
};

/** What has to be known to say whether offered days can still be. */
export async function loadStillFacts(
  from: Prisma.TransactionClient,
  offer: OfferOfDays,
  zone: string,
): Promise<StillFacts> {
  const { kind, commissionId, address, travelMinutes, slots } = offer;
  const starts = slots.map(({ startsAt }) => startsAt.getTime());
  const ends = slots.map(({ endsAt }) => endsAt.getTime());
  const fromAt = new Date(Math.min(...starts));
  const untilAt = new Date(Math.max(...ends));
  const crew = await loadBusy(from, everyone(offer), { fromAt, untilAt, exceptId: null });
  const place = { address, travelMinutes };
  return {
    ...{ zone, place, crew },
    ways: await loadWays(from, place, crew),
    hangsOn: kind === 'hanging' ? await loadHangsOn(from, commissionId) : null,
  };
}
