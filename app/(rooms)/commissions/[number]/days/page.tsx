import { requireActor } from '@/lib/access/reads';
import { slotWishInput } from '@/lib/installation/input/offers/days';
import { listLeads } from '@/lib/installation/reads';
import { listDayOffers } from '@/lib/installation/reads/offers/days';
import { findFreeTimes } from '@/lib/installation/reads/offers/free';
import { now } from '@/lib/platform/clock';
import { WallNotKnown } from '@/app/ui/diary/wall-not-known';
import { ActPage } from '../act-page';
import { readSheet, type SheetParams } from '../read-sheet';
import { OfferForm } from './offer-form';
import { OffersMade } from './offers-made';
import { WhatWaits } from './what-waits';
import { WishForm } from './wish-form';

export const metadata = { title: 'Days to choose from' };

type OfferDaysPageProps = Readonly<{
  params: SheetParams;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}>;

/** Offering days, from which the collector chooses one: free times of all who go along. */
export default async function OfferDaysPage({ params, searchParams }: OfferDaysPageProps) {
  const actor = await requireActor('diary.book');
  const sheet = await readSheet(actor, params);
  const zone = sheet.gallery.timeZone;
  const at = now();
  const [leads, offers] = await Promise.all([
    listLeads(actor),
    listDayOffers(actor, sheet.id, { zone, now: at }),
  ]);
  const read = slotWishInput.parse(await searchParams);
  const lead =
    leads.find(({ id }) => id === read.leadId) ?? leads.find(({ id }) => id === actor.id);
  const wish = {
    ...read,
    leadId: lead?.id ?? '',
    crewIds: read.crewIds.filter((id) => leads.some((one) => one.id === id)),
    address: read.address || (sheet.request.siteAddress ?? sheet.collector.address ?? ''),
  };
  const found = await findFreeTimes(actor, sheet.id, { wish, zone, now: at });
  const isBarred = wish.kind === 'hanging' && !found.isWallKnown;
  return (
    <ActPage
      sheet={sheet}
      title="Days to choose from"
      lead="They choose one on their own page, and it is booked. Nothing is kept free in the diary before that."
    >
      <WishForm wish={{ ...wish, fromOn: found.fromOn, untilOn: found.untilOn }} leads={leads} />
      {isBarred ? (
        <WallNotKnown number={sheet.number} />
      ) : (
        <>
          <WhatWaits found={found} zone={zone} />
          <OfferForm sheet={sheet} wish={wish} slots={found.slots} />
        </>
      )}
      <OffersMade sheet={sheet} offers={offers} />
    </ActPage>
  );
}
