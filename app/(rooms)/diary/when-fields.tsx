import { Field } from '@/app/ui/form/field';
import css from './diary.module.css';

type WhenFieldsProps = Readonly<{
  leads: readonly { id: string; name: string }[];
  day?: string | undefined;
  from?: string | undefined;
  to?: string | undefined;
  leadId?: string | undefined;
}>;

/** The day, the two times and who leads: the same in booking and in moving. */
export function WhenFields({ leads, day, from, to, leadId }: WhenFieldsProps) {
  return (
    <>
      <Field name="day" label="Day" kind="day" width="short" defaultValue={day} required />
      <div className={css['times']}>
        <Field name="from" label="From" kind="time" width="short" defaultValue={from} required />
        <Field name="to" label="To" kind="time" width="short" defaultValue={to} required />
      </div>
      <Field
        name="leadId"
        label="Who leads it"
        kind="select"
        width="half"
        options={leads.map((lead) => ({ value: lead.id, label: lead.name }))}
        defaultValue={leadId}
        required
      />
    </>
  );
}
