import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { idOf, readAddress, type Query } from '@/app/(rooms)/stock/places/ready/address';
import { requireActor } from '@/lib/access/reads';
import { findGalleryTerms } from '@/lib/consignment/reads';
import { listPlaces } from '@/lib/stock/reads/moves/places';
import { send } from '../../actions';
import { ConsignForm } from '../../consign-form';
import { OwnPlace, ownPlaces } from '../../own-place';
import { ReadyDesk } from '../../ready-desk';

export const metadata: Metadata = { title: 'Send pieces' };

type PageProps = Readonly<{ params: Promise<{ id: string }>; searchParams: Promise<Query> }>;

/** Sends pieces to another gallery, with a consignment note at the prices of the day. */
export default async function SendPage({ params, searchParams }: PageProps) {
  const actor = await requireActor('outside.keep');
  const [{ id }, query] = await Promise.all([params, searchParams]);
  const gallery = await findGalleryTerms(actor, id);
  if (!gallery || gallery.endedOn !== null) notFound();
  const places = ownPlaces(await listPlaces(actor));
  const placeId = idOf(query, 'place') || (places[0]?.id ?? '');
  const { consigneeId, name } = gallery;
  const asked = readAddress(`/galleries/${consigneeId}/send`, query, { place: placeId });
  return (
    <>
      <PageHead
        title="Send pieces"
        back={{ href: `/galleries/${consigneeId}`, name }}
        lead="They stay ours until they are paid for. Seconds are not given away."
      />
      <InThisRoom room="stock" here="galleries" roles={actor.roles} />
      <ReadyDesk
        actor={actor}
        asked={asked}
        fromId={placeId}
        toId={gallery.placeId}
        above={<OwnPlace address={asked} places={places} label="From" placeId={placeId} />}
        act={(ready) => (
          <ConsignForm
            key={`${placeId} ${ready}`}
            action={send}
            consigneeId={consigneeId}
            placeId={placeId}
            ready={ready}
            button="Send them with a note"
          />
        )}
      />
    </>
  );
}
