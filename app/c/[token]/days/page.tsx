import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Money } from '@/app/ui/figures/money';
import { Notice } from '@/app/ui/page/notice';
import { daysForCollector, type DaysForCollector } from '@/lib/installation/reads/offers/days';
import { formatDay } from '@/lib/dates/rules';
import type { AppointmentKind } from '@/lib/installation/rules';
import { hoursWords } from '@/lib/installation/rules/diary/words';
import { currencyNamed } from '@/lib/money/rules';
import { openPage, type OpenPage, type TokenParams } from '../../open-page';
import { ByThisAddress, TheirAct } from '../../parts/their-act';
import { chooseOneDay } from '../actions';
import css from '../../page.module.css';

export const metadata: Metadata = { title: 'Choose a day' };

/** The collector chooses the day of the hanging or the delivery. */
export default async function DaysPage({ params }: Readonly<{ params: TokenParams }>) {
  const page = await openPage(params);
  const { gallery, link, at } = page;
  const how = { zone: gallery.timeZone, now: at };
  const offers = await daysForCollector(link.commissionId, how);
  const open = offers.filter((offer) => offer.chosen === null);
  if (offers.length === 0) notFound();
  return (
    <TheirAct
      page={page}
      title="Choose a day"
      lead="Choose the day that suits you. It is booked as soon as you send it; after that, please call us to move it."
    >
      {open.length === 0 ? (
        <Notice kind="done">A day is chosen; nothing is left to choose.</Notice>
      ) : null}
      {open.map((offer) => (
        <OneOffer key={offer.offerId} offer={offer} page={page} />
      ))}
    </TheirAct>
  );
}

const whatComes: Readonly<Record<AppointmentKind, string>> = {
  hanging: 'We come and hang it',
  delivery: 'We bring it',
  site_visit: 'We come and look at the wall',
  fetching: 'You come for it',
  after_care: 'We come and look after it',
};

type OneOfferProps = Readonly<{ offer: DaysForCollector; page: OpenPage }>;

function OneOffer({ offer, page }: OneOfferProps) {
  const free = offer.slots.filter((slot) => slot.isFree);
  return (
    <section>
      <h2>
        {whatComes[offer.kind]}, {offer.address}
      </h2>
      {offer.note ? <p className={css['words']}>{offer.note}</p> : null}
      <StillOwed offer={offer} page={page} />
      {free.length === 0 ? (
        <Notice kind="caution">
          None of these days is free any more. Please call us, and we will find another.
        </Notice>
      ) : null}
      {free.length > 0 && !offer.isBarred ? <ChooseForm offer={offer} page={page} /> : null}
      {free.length > 0 && offer.isBarred ? (
        <ul className={css['lines']}>
          {free.map((slot) => (
            <li key={slot.position}>
              {formatDay(slot.on, 'long')}, {hoursWords(slot, page.gallery.timeZone)}
            </li>
          ))}
        </ul>
      ) : null}
    </section>
  );
}

/** What is still owed: what bars a choice, what is wanted before the day, what comes after. */
function StillOwed({ offer, page }: OneOfferProps) {
  const { owed, isBarred } = offer;
  const currency = currencyNamed(page.gallery.currency);
  const money = (
    <Link href={`/c/${page.token}#money`} prefetch={false}>
      What it comes to
    </Link>
  );
  if (owed.beforeCents > 0n) {
    return (
      <Notice kind="caution">
        The agreement asks for <Money cents={owed.beforeCents} currency={currency} /> before this
        day. {isBarred ? 'Once it is here you can choose.' : 'You can choose your day already.'}{' '}
        {money}
      </Notice>
    );
  }
  if (owed.laterCents === 0n) return null;
  return (
    <p>
      <Money cents={owed.laterCents} currency={currency} /> is open until it hangs. {money}
    </p>
  );
}

function ChooseForm({ offer, page }: OneOfferProps) {
  const zone = page.gallery.timeZone;
  return (
    <FormFrame action={chooseOneDay} label={whatComes[offer.kind]}>
      <RequestKey />
      <ByThisAddress page={page} />
      <input type="hidden" name="offerId" value={offer.offerId} />
      <Choice
        name="position"
        legend="Your day"
        hint={`Times as they are at the gallery (${zone.replaceAll('_', ' ')}).`}
        layout="down"
        options={offer.slots
          .filter((slot) => slot.isFree)
          .map((slot) => ({
            value: String(slot.position),
            label: formatDay(slot.on, 'long'),
            hint: hoursWords(slot, zone),
          }))}
      />
      <SubmitButton pendingText="Booking it…">Book this day</SubmitButton>
    </FormFrame>
  );
}
