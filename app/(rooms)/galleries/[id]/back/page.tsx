import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { idOf, readAddress, type Query } from '@/app/(rooms)/stock/places/ready/address';
import { requireActor } from '@/lib/access/reads';
import { findGalleryTerms } from '@/lib/consignment/reads';
import { listPlaces } from '@/lib/stock/reads/moves/places';
import { takeBack } from '../../actions';
import { ConsignForm } from '../../consign-form';
import { OwnPlace, ownPlaces } from '../../own-place';
import { ReadyDesk } from '../../ready-desk';

export const metadata: Metadata = { title: 'Take pieces back' };

type PageProps = Readonly<{ params: Promise<{ id: string }>; searchParams: Promise<Query> }>;

/** Takes pieces back from another gallery, with a note. */
export default async function BackPage({ params, searchParams }: PageProps) {
  const actor = await requireActor('outside.keep');
  const [{ id }, query] = await Promise.all([params, searchParams]);
  const gallery = await findGalleryTerms(actor, id);
  if (!gallery || gallery.endedOn !== null) notFound();
  const places = ownPlaces(await listPlaces(actor));
  const placeId = idOf(query, 'place') || (places[0]?.id ?? '');
  const { consigneeId, name } = gallery;
  const asked = readAddress(`/galleries/${consigneeId}/back`, query, { place: placeId });
  return (
    <>
      <PageHead
        title="Take pieces back"
        back={{ href: `/galleries/${consigneeId}`, name }}
        lead="What has found nobody comes home, or goes on to somebody else."
      />
      <InThisRoom room="stock" here="galleries" roles={actor.roles} />
      <ReadyDesk
        actor={actor}
        asked={asked}
        fromId={gallery.placeId}
        toId={placeId}
        above={
          <OwnPlace
            address={asked}
            places={places}
            label="To which of our places"
            placeId={placeId}
          />
        }
        act={(ready) => (
          <ConsignForm
            key={`${placeId} ${ready}`}
            action={takeBack}
            consigneeId={consigneeId}
            placeId={placeId}
            ready={ready}
            button="Take them back with a note"
          />
        )}
      />
    </>
  );
}
