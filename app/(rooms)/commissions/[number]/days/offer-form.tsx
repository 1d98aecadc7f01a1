import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Empty } from '@/app/ui/page/empty';
import { Section } from '@/app/ui/page/section';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { dayOf } from '@/lib/dates/rules';
import { clockTime } from '@/lib/dates/rules/time-of-day';
import type { SlotWishInput } from '@/lib/installation/input/offers/days';
import type { Span } from '@/lib/installation/rules';
import { dayWords, hoursWords } from '@/lib/installation/rules/diary/words';
import { daysMost } from '@/lib/installation/rules/offers/days';
import { tickedFirst } from '@/lib/installation/rules/offers/slots';
import { AskedFields } from '@/app/ui/diary/asked-fields';
import { AboutCommission } from '../act-page';
import { offerTheDays } from './actions';
import { hoursTyped } from './hours-typed';
import css from './days.module.css';

type OfferFormProps = Readonly<{ sheet: Sheet; wish: SlotWishInput; slots: readonly Span[] }>;

/** How many days can be written by hand. */
const byHand = [1, 2] as const;

/** The free times, some of them ticked, and days by hand; sent to the collector's page. */
export function OfferForm({ sheet, wish, slots }: OfferFormProps) {
  const zone = sheet.gallery.timeZone;
  const ticked = tickedFirst(slots, daysMost, zone).map((slot) => slotValue(slot, zone));
  return (
    <Section title="Free times">
      <FormFrame action={offerTheDays} label="Offer days">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <AsWished wish={wish} />
        {slots.length > 0 ? (
          <div className={css['slots']}>
            <Choice
              name="slot"
              legend={`Up to ${daysMost} to choose from`}
              hint="Everyone is free then, with the way there and back inside their hours."
              kind="tick"
              options={slots.map((slot) => ({
                value: slotValue(slot, zone),
                label: dayWords(dayOf(slot.startsAt, zone)),
                hint: hoursWords(slot, zone),
              }))}
              defaultValue={ticked.join(',')}
            />
          </div>
        ) : (
          <Empty title="No free time found">
            Nobody of those who go is free within these days. Look further ahead, let others go, or
            write a day by hand.
          </Empty>
        )}
        {byHand.map((at) => (
          <div key={at} className={css['row']}>
            <Field
              name={`day.${at}`}
              label={`By hand, day ${at}`}
              kind="day"
              width="short"
              optional
            />
            <Field name={`from.${at}`} label="Begins at" kind="time" width="short" optional />
          </div>
        ))}
        <Field
          name="note"
          label="What they should know"
          hint="They read it beside the days: what must be free, where the van stands."
          kind="textarea"
          rows={3}
          optional
        />
        <AskedFields />
        <SubmitButton>Offer these days</SubmitButton>
      </FormFrame>
    </Section>
  );
}

/** What was looked for goes along as it was. */
function AsWished({ wish }: Readonly<{ wish: SlotWishInput }>) {
  const { kind, leadId, crewIds, minutes, address, travelMinutes } = wish;
  const fields = {
    ...{ kind, leadId, hours: hoursTyped(minutes), address },
    travelMinutes: String(travelMinutes),
  };
  return (
    <>
      {Object.entries(fields).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      {crewIds.map((id) => (
        <input key={id} type="hidden" name="crewIds" value={id} />
      ))}
    </>
  );
}

function slotValue(slot: Span, zone: string): string {
  return `${dayOf(slot.startsAt, zone)} ${clockTime(slot.startsAt, zone)}`;
}
