import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { requireActor } from '@/lib/access/reads';
import { listDayOffers } from '@/lib/installation/reads/offers/days';
import { daysMost } from '@/lib/installation/rules/offers/days';
import { formatDay, type Day } from '@/lib/dates/rules';
import { listLeads } from '@/lib/installation/reads';
import { now } from '@/lib/platform/clock';
import { listJobsOfCommission } from '@/lib/studio/reads';
import { ActPage, AboutCommission } from '../act-page';
import { readSheet, type SheetParams } from '../read-sheet';
import css from '../their-page/their-page.module.css';
import { offerTheDays } from './actions';
import { OffersMade } from './offers-made';

export const metadata = { title: 'Days to choose from' };

/** Offering days for the hanging or the delivery, from which the collector chooses one. */
export default async function OfferDaysPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('diary.book');
  const sheet = await readSheet(actor, params);
  const zone = sheet.gallery.timeZone;
  const [leads, offers, jobs] = await Promise.all([
    listLeads(actor),
    listDayOffers(actor, sheet.id, { zone, now: now() }),
    listJobsOfCommission(actor, sheet.id, sheet.telling.today),
  ]);
  return (
    <ActPage
      sheet={sheet}
      title="Days to choose from"
      lead="They choose one on their own page, and it is booked. Nothing is kept free in the diary before that."
    >
      <ReadyThen days={jobs.flatMap(({ ready }) => (ready ? [ready.likelyOn] : []))} />
      <FormFrame action={offerTheDays} label="Offer days">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <Choice
          name="kind"
          legend="What it is"
          options={[
            { value: 'hanging', label: 'Hanging' },
            { value: 'delivery', label: 'Delivery' },
          ]}
          defaultValue="hanging"
        />
        <Field
          name="leadId"
          label="Who leads it"
          kind="select"
          options={leads.map(({ id, name }) => ({ value: id, label: name }))}
          defaultValue={leads.find((lead) => lead.id === actor.id)?.id}
          width="half"
        />
        <Field name="hours" label="Hours it takes" kind="measure" defaultValue="3" width="short" />
        <Field
          name="address"
          label="Where"
          defaultValue={sheet.request.siteAddress ?? sheet.collector.address ?? ''}
          maxLength={200}
        />
        <DayFields />
        <Field
          name="note"
          label="What they should know"
          hint="They read it beside the days: what must be free, where the van stands."
          kind="textarea"
          rows={3}
          optional
        />
        <SubmitButton>Offer these days</SubmitButton>
      </FormFrame>
      <OffersMade sheet={sheet} offers={offers} />
    </ActPage>
  );
}

function ReadyThen({ days }: Readonly<{ days: readonly Day[] }>) {
  const last = days.toSorted().at(-1);
  if (!last) return null;
  return (
    <Caution>
      The piece is likely to be ready on {formatDay(last, 'long')}. A day before that may have to be
      moved.
    </Caution>
  );
}

function DayFields() {
  return Array.from({ length: daysMost }, (_, at) => at + 1).map((at) => (
    <div key={at} className={css['day']}>
      <Field name={`day.${at}`} label={`Day ${at}`} kind="day" width="short" optional={at > 1} />
      <Field name={`from.${at}`} label="Begins at" kind="time" width="short" optional={at > 1} />
    </div>
  ));
}
