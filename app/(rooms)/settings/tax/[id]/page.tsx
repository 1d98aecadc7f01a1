import Link from 'next/link';
import { notFound } from 'next/navigation';
import { cache } from 'react';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { findTaxPlace, listPlacesOn, listRates, listTreatments } from '@/lib/tax/reads';
import { AdviserSays } from '../adviser-says';
import { RenamePlaceForm } from '../place-forms';
import { RateForm, RateList } from './rates';
import { TreatmentForm, TreatmentList } from './treatments';

/** The title and the page ask for the same place; it is read once. */
const findOnce = cache(findTaxPlace);

type TaxPlacePageProps = Readonly<{ params: Promise<{ id: string }> }>;

export async function generateMetadata({ params }: TaxPlacePageProps) {
  await requireActor('tax.see');
  return { title: (await findOnce((await params).id))?.name ?? 'Sales tax' };
}

/** One place: its rates by authority and day, and what its state taxes. */
export default async function TaxPlacePage({ params }: TaxPlacePageProps) {
  const actor = await requireActor('tax.see');
  const place = await findOnce((await params).id);
  if (!place) notFound();
  const { timeZone } = await getGallery();
  const today = dayOf(now(), timeZone);
  const [rates, treatments, places] = await Promise.all([
    listRates(place.id),
    listTreatments(place.state),
    listPlacesOn(today),
  ]);
  const mayKeep = isAllowed(actor.roles, 'settings.keep');
  const isCharged = places.find((each) => each.id === place.id)?.isRegistered ?? true;
  const where = place.state === '' ? 'this state' : place.state;
  return (
    <>
      <PageHead
        title={place.name}
        lead={place.state}
        back={{ href: '/settings/tax', name: 'Sales tax' }}
      />
      <InThisRoom room="settings" here="tax" roles={actor.roles} />
      {isCharged ? null : <NothingCharged state={where} />}
      <Columns
        wide={
          <>
            <Section title="Rates" lead="What each authority takes of a sale here.">
              <RateList {...{ rates, today, mayKeep, isCharged }} />
            </Section>
            <Section
              title={`What ${where} taxes`}
              lead="It holds for every place in the state. What nothing is kept for is taxed until you say otherwise."
            >
              <TreatmentList treatments={treatments} today={today} />
            </Section>
            <AdviserSays />
          </>
        }
        beside={mayKeep ? <Keeping {...{ place, rates, today }} /> : null}
      />
    </>
  );
}

type KeepingProps = Readonly<{
  place: NonNullable<Awaited<ReturnType<typeof findTaxPlace>>>;
  rates: Awaited<ReturnType<typeof listRates>>;
  today: ReturnType<typeof dayOf>;
}>;

function Keeping({ place, rates, today }: KeepingProps) {
  return (
    <>
      <Section title="A rate from a day on">
        <RateForm rates={rates} today={today} placeId={place.id} />
      </Section>
      {place.state === '' ? null : (
        <Section title="What is taxed, from a day on">
          <TreatmentForm state={place.state} today={today} />
        </Section>
      )}
      <Section title="Another name">
        <RenamePlaceForm place={place} />
      </Section>
    </>
  );
}

function NothingCharged({ state }: Readonly<{ state: string }>) {
  return (
    <Notice kind="caution">
      The gallery is not registered in {state}, so nothing is charged on what is sent there; it is
      counted. <Link href="/settings/tax/states">See how far it has come</Link>.
    </Notice>
  );
}
