import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { DaysOffered } from '@/lib/installation/reads/offers/days';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { formatDay } from '@/lib/dates/rules';
import { hoursWords, kindTitles, namesWords } from '@/lib/installation/rules/diary/words';
import { AboutCommission } from '../act-page';
import css from '../their-page/their-page.module.css';
import { takeDaysBack } from './actions';

type OffersMadeProps = Readonly<{ sheet: Sheet; offers: readonly DaysOffered[] }>;

/** What was offered before, and what became of it. */
export function OffersMade({ sheet, offers }: OffersMadeProps) {
  if (offers.length === 0) return null;
  return (
    <Section title="Offered before" id="offered">
      <ul className={css['lines']}>
        {offers.map((offer) => (
          <OneOffer key={offer.offerId} {...{ sheet, offer }} />
        ))}
      </ul>
    </Section>
  );
}

function OneOffer({ sheet, offer }: Readonly<{ sheet: Sheet; offer: DaysOffered }>) {
  const zone = sheet.gallery.timeZone;
  return (
    <li>
      <span>
        <strong>{kindTitles[offer.kind]}</strong> by{' '}
        {namesWords([offer.leadName, ...offer.otherNames])}, {offer.address}: {outcomeWords(offer)}
      </span>
      <ul>
        {offer.slots.map((slot) => (
          <li key={slot.position}>
            {formatDay(slot.on, 'long')}, {hoursWords(slot, zone)}
            {!offer.chosen && !slot.isFree ? ' (no longer free)' : null}
          </li>
        ))}
      </ul>
      {offer.chosen || offer.isWithdrawn ? null : (
        <FormFrame action={takeDaysBack} label="Take the days back">
          <RequestKey />
          <AboutCommission sheet={sheet} />
          <input type="hidden" name="offerId" value={offer.offerId} />
          <SubmitButton variant="danger">Take these days back</SubmitButton>
        </FormFrame>
      )}
    </li>
  );
}

/** What became of an offer, in words. */
function outcomeWords({ chosen, isWithdrawn }: DaysOffered): string {
  if (chosen) {
    const word = `${chosen.chosenBy} chose ${formatDay(chosen.on, 'long')}`;
    return chosen.isCalledOff ? `${word}, which was called off` : word;
  }
  return isWithdrawn ? 'taken back' : 'waits for the collector';
}
