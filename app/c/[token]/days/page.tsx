import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import { daysForCollector, type DaysShown } from '@/lib/installation/reads/offers/days';
import { formatDay } from '@/lib/dates/rules';
import { hoursWords } from '@/lib/installation/rules/diary/words';
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

const whatComes = {
  hanging: 'We come and hang it',
  delivery: 'We bring it',
} as const;

function OneOffer({ offer, page }: Readonly<{ offer: DaysShown; page: OpenPage }>) {
  const free = offer.slots.filter((slot) => slot.isFree);
  const zone = page.gallery.timeZone;
  return (
    <section>
      <h2>
        {whatComes[offer.kind]}, {offer.address}
      </h2>
      {offer.note ? <p className={css['words']}>{offer.note}</p> : null}
      {free.length === 0 ? (
        <Notice kind="caution">
          None of these days is free any more. Please call us, and we will find another.
        </Notice>
      ) : (
        <FormFrame action={chooseOneDay} label={whatComes[offer.kind]}>
          <RequestKey />
          <ByThisAddress page={page} />
          <input type="hidden" name="offerId" value={offer.offerId} />
          <Choice
            name="position"
            legend="Your day"
            hint={`Times as they are at the gallery (${zone.replaceAll('_', ' ')}).`}
            layout="down"
            options={free.map((slot) => ({
              value: String(slot.position),
              label: formatDay(slot.on, 'long'),
              hint: hoursWords(slot, zone),
            }))}
          />
          <SubmitButton pendingText="Booking it…">Book this day</SubmitButton>
        </FormFrame>
      )}
    </section>
  );
}
