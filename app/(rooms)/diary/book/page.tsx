import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayOf, type Day } from '@/lib/dates/rules';
import { listBookable, listLeads, type Bookable } from '@/lib/installation/reads';
import { appointmentKinds } from '@/lib/installation/rules';
import { kindTitles } from '@/lib/installation/rules/diary/words';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { listJobsOfCommission } from '@/lib/studio/reads';
import { readyWords } from '@/lib/studio/rules/words';
import { book } from '../actions';
import { cautionFor } from '../cautions';
import { WhenFields } from '../when-fields';
import css from '../diary.module.css';

export const metadata: Metadata = { title: 'Book a day' };

type BookPageProps = Readonly<{ searchParams: Promise<{ commission?: string | string[] }> }>;

/** Booking a hanging, a delivery or a visit; for a commission when one is named in the address. */
export default async function BookPage({ searchParams }: BookPageProps) {
  const actor = await requireActor('diary.book');
  const wanted = (await searchParams).commission;
  const [leads, bookable] = await Promise.all([listLeads(actor), listBookable(actor)]);
  const commission = bookable.find((one) => String(one.number) === wanted) ?? null;
  const { timeZone } = await getGallery();
  const lead = leads.find((one) => one.id === actor.id);
  return (
    <>
      <PageHead
        title="Book a day"
        back={
          commission
            ? { href: `/commissions/${commission.number}`, name: `Commission ${commission.number}` }
            : { href: '/diary', name: 'Diary' }
        }
        lead={
          commission ? (
            <>
              For <cite>{commission.title}</cite>, {commission.collector}.
            </>
          ) : null
        }
      />
      <div className={css['told']}>
        {typeof wanted === 'string' && !commission ? (
          <Notice kind="caution">
            Commission {wanted} takes no appointment: it has ended, was handed over, or is not in
            the book.
          </Notice>
        ) : null}
        {commission ? (
          <ReadyThen actor={actor} commission={commission} todayOn={dayOf(now(), timeZone)} />
        ) : null}
      </div>
      <FormFrame action={book} label="Book a day">
        <RequestKey />
        <Choice
          name="kind"
          legend="What it is"
          options={appointmentKinds.map((kind) => ({ value: kind, label: kindTitles[kind] }))}
          defaultValue="hanging"
        />
        <CommissionField bookable={bookable} chosen={commission} />
        <WhenFields leads={leads} leadId={lead?.id} from="09:00" to="12:00" />
        <Field
          name="address"
          label="Where"
          defaultValue={commission?.address}
          autoComplete="off"
          maxLength={200}
          required
        />
        <Field
          name="note"
          label="What to know"
          hint="Who lets you in, stairs, parking, what the wall is made of."
          kind="textarea"
          rows={3}
          maxLength={1000}
          optional
        />
        <Caution>{cautionFor.hanging}</Caution>
        <SubmitButton>Book it</SubmitButton>
      </FormFrame>
    </>
  );
}

type CommissionFieldProps = Readonly<{ bookable: readonly Bookable[]; chosen: Bookable | null }>;

function CommissionField({ bookable, chosen }: CommissionFieldProps) {
  if (chosen) return <input type="hidden" name="commissionId" value={chosen.id} />;
  return (
    <Field
      name="commissionId"
      label="For which commission"
      kind="select"
      options={[
        { value: '', label: 'For none' },
        ...bookable.map(({ id, number, title, collector }) => ({
          value: id,
          label: `${number}: ${title}, ${collector}`,
        })),
      ]}
      optional
    />
  );
}

type ReadyThenProps = Readonly<{ actor: Actor; commission: Bookable; todayOn: Day }>;

async function ReadyThen({ actor, commission, todayOn }: ReadyThenProps) {
  const jobs = await listJobsOfCommission(actor, commission.id, todayOn);
  const last = jobs
    .flatMap((job) => (job.ready ? [job.ready] : []))
    .toSorted((one, other) => other.likelyOn.localeCompare(one.likelyOn))[0];
  if (!last) return null;
  return (
    <Notice kind="caution">The studio should have it ready {readyWords(last, todayOn)}.</Notice>
  );
}
