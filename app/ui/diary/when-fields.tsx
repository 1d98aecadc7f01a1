import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import css from './diary.module.css';

type WhenFieldsProps = Readonly<{
  people: readonly { id: string; name: string }[];
  day?: string | undefined;
  from?: string | undefined;
  to?: string | undefined;
  leadId?: string | undefined;
  crewIds?: readonly string[] | undefined;
}>;

/** The day, the two times and who goes: the same in booking and in moving. */
export function WhenFields({ people, day, from, to, leadId, crewIds }: WhenFieldsProps) {
  const options = people.map(({ id, name }) => ({ value: id, label: name }));
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
        options={options}
        defaultValue={leadId}
        required
      />
      {options.length > 1 ? <CrewFields options={options} crewIds={crewIds} /> : null}
    </>
  );
}

type CrewFieldsProps = Readonly<{
  options: readonly { value: string; label: string }[];
  crewIds?: readonly string[] | undefined;
}>;

/** Everyone who goes along; the empty field says that somebody was asked, and chose nobody. */
export function CrewFields({ options, crewIds }: CrewFieldsProps) {
  return (
    <>
      <input type="hidden" name="crewIds" value="" />
      <Choice
        name="crewIds"
        legend="Who goes along"
        hint="Whoever leads it goes anyway."
        kind="tick"
        options={options}
        defaultValue={crewIds?.join(',')}
      />
    </>
  );
}

type WhereFieldsProps = Readonly<{
  address?: string | undefined;
  travelMinutes?: number | undefined;
}>;

/** Where it is, and how long the way there takes. */
export function WhereFields({ address, travelMinutes }: WhereFieldsProps) {
  return (
    <>
      <Field
        name="address"
        label="Where"
        defaultValue={address}
        autoComplete="off"
        maxLength={200}
        required
      />
      <Field
        name="travelMinutes"
        label="The way there"
        hint="One way from the gallery; 0 at the gallery itself."
        kind="count"
        unit="min"
        width="short"
        defaultValue={travelMinutes === undefined ? undefined : String(travelMinutes)}
        optional
      />
    </>
  );
}

type ToldFieldsProps = Readonly<{
  note?: string | undefined;
  meets?: string | undefined;
  prepares?: string | undefined;
  fallBack?: string | undefined;
}>;

/** What is told of the day in words: who lets us in, what is made ready, and if it storms. */
export function ToldFields({ note, meets, prepares, fallBack }: ToldFieldsProps) {
  return (
    <>
      <Field
        name="meets"
        label="Who meets us"
        hint="Who lets us in and who signs, with their telephone."
        defaultValue={meets}
        maxLength={200}
        optional
      />
      <Field
        name="prepares"
        label="What they have ready"
        hint="Wall painted and dry, furniture moved, power off where we drill, a way that is clear."
        kind="textarea"
        rows={2}
        defaultValue={prepares}
        maxLength={500}
        optional
      />
      <Field
        name="fallBack"
        label="If weather or road forbid it"
        hint="Another day that was agreed, and who calls whom by when."
        defaultValue={fallBack}
        maxLength={300}
        optional
      />
      <Field
        name="note"
        label="What to know"
        hint="Stairs, parking, a lift to book, a dog."
        kind="textarea"
        rows={3}
        defaultValue={note}
        maxLength={1000}
        optional
      />
    </>
  );
}
