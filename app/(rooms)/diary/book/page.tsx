import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { parseDay, type Day } from '@/lib/dates/rules';
import { findBookable, listBookable, listLeads, type Bookable } from '@/lib/installation/reads';
import { appointmentKinds, comesAfterHandOver } from '@/lib/installation/rules';
import { kindTitles } from '@/lib/installation/rules/diary/words';
import { book } from '../actions';
import { AskedFields } from '@/app/ui/diary/asked-fields';
import { ToldFields, WhenFields, WhereFields } from '@/app/ui/diary/when-fields';
import { BeforeBooking } from './before-booking';
import css from '../diary.module.css';

export const metadata: Metadata = { title: 'Book a day' };

type BookPageProps = Readonly<{
  searchParams: Promise<{
    commission?: string | string[];
    kind?: string | string[];
    day?: string | string[];
  }>;
}>;

/** Booking a day in the diary; for a commission when one is named in the address. */
export default async function BookPage({ searchParams }: BookPageProps) {
  const actor = await requireActor('diary.book');
  const asked = await searchParams;
  const commission = await commissionNamed(actor, asked.commission);
  const [leads, bookable] = await Promise.all([listLeads(actor), listBookable(actor)]);
  const lead = leads.find((one) => one.id === actor.id);
  const kinds = commission?.isHandedOver
    ? appointmentKinds.filter(comesAfterHandOver)
    : appointmentKinds;
  return (
    <>
      <PageHead
        title="Book a day"
        back={
          commission
            ? { href: `/commissions/${commission.number}`, name: `Commission ${commission.number}` }
            : { href: '/diary', name: 'Diary' }
        }
        lead={commission ? <ForWhat commission={commission} /> : null}
      />
      <div className={css['told']}>
        {typeof asked.commission === 'string' && !commission ? (
          <Notice kind="caution">
            Commission {asked.commission} takes no appointment: it has ended, or is not in the book.
          </Notice>
        ) : null}
        {commission ? <BeforeBooking commission={commission} actor={actor} /> : null}
      </div>
      <FormFrame action={book} label="Book a day">
        <RequestKey />
        <Choice
          name="kind"
          legend="What it is"
          options={kinds.map((kind) => ({ value: kind, label: kindTitles[kind] }))}
          defaultValue={kinds.find((kind) => kind === asked.kind) ?? kinds[0]}
        />
        <CommissionField bookable={bookable} chosen={commission} />
        <WhenFields
          people={leads}
          leadId={lead?.id}
          day={dayNamed(asked.day)}
          from="09:00"
          to="12:00"
        />
        <WhereFields address={commission?.address} />
        <ToldFields />
        <AskedFields />
        <SubmitButton>Book it</SubmitButton>
      </FormFrame>
    </>
  );
}

function ForWhat({ commission }: Readonly<{ commission: Bookable }>) {
  return (
    <>
      For <cite>{commission.title}</cite>, {commission.collector}.
    </>
  );
}

async function commissionNamed(
  actor: Parameters<typeof findBookable>[0],
  named: string | string[] | undefined,
): Promise<Bookable | null> {
  return typeof named === 'string' && /^\d{1,9}$/.test(named)
    ? findBookable(actor, Number(named))
    : null;
}

function dayNamed(named: string | string[] | undefined): Day | undefined {
  const day = typeof named === 'string' ? parseDay(named) : null;
  return day?.ok ? day.value : undefined;
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
