import type { Metadata } from 'next';
import Link from 'next/link';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { listPlacesOn, type TaxPlaceOn } from '@/lib/tax/reads';
import { combinedRatePercent } from '@/lib/tax/rules';
import { AdviserSays } from './adviser-says';
import css from '../settings.module.css';
import { NewPlaceForm } from './place-forms';

export const metadata: Metadata = { title: 'Sales tax' };

/** Every place that pieces are handed over at or sent to, with what is charged there today. */
export default async function TaxPlaces() {
  const actor = await requireActor('tax.see');
  const { timeZone } = await getGallery();
  const places = await listPlacesOn(dayOf(now(), timeZone));
  const mayKeep = isAllowed(actor.roles, 'settings.keep');
  const list = (
    <Section
      title="Places"
      lead="A sale is taxed where the buyer gets the piece: here, at a fair, or where it is sent or hung."
    >
      <PlaceList places={places} />
      <p>
        <Link href="/settings/tax/commissions">How commissions are taxed</Link>: a piece that is
        hung, a fixture, pieces set into a wall.
      </p>
    </Section>
  );
  return (
    <>
      <PageHead title="Sales tax" lead="What is charged where, from which day on." />
      <InThisRoom room="settings" here="tax" roles={actor.roles} />
      {mayKeep ? (
        <Columns
          wide={list}
          beside={
            <Section title="Another place">
              <NewPlaceForm states={[...new Set(places.map((place) => place.state))]} />
            </Section>
          }
        />
      ) : (
        list
      )}
      <AdviserSays />
    </>
  );
}

function PlaceList({ places }: Readonly<{ places: readonly TaxPlaceOn[] }>) {
  if (places.length === 0) {
    return (
      <Empty title="No place is kept yet">
        The first one came with the gallery. The owner adds others: a town that pieces are sent to,
        the ground of a fair.
      </Empty>
    );
  }
  return (
    <ul>
      {places.map((place) => (
        <li key={place.id}>
          <Link href={`/settings/tax/${place.id}`} className={css['place']}>
            <span>
              <span className={css['name']}>{place.name}</span>{' '}
              <span className={css['quiet']}>
                {[place.state, place.isHome ? 'where the gallery is' : '']
                  .filter((part) => part !== '')
                  .join(', ')}
              </span>
            </span>
            <span className={css['figure']}>{chargedWords(place)}</span>
          </Link>
        </li>
      ))}
    </ul>
  );
}

function chargedWords({ isRegistered, parts }: TaxPlaceOn): string {
  if (!isRegistered) return 'nothing charged';
  return parts.length === 0 ? 'no rate yet' : `${combinedRatePercent(parts)} %`;
}
