import { Button } from '@/app/ui/button/button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { Section } from '@/app/ui/page/section';
import { CrewFields, WhereFields } from '@/app/ui/diary/when-fields';
import { offeredKinds, type SlotWishInput } from '@/lib/installation/input/offers/days';
import { kindTitles } from '@/lib/installation/rules/diary/words';
import { hoursTyped } from './hours-typed';
import css from './days.module.css';

type WishFormProps = Readonly<{
  wish: SlotWishInput;
  leads: readonly { id: string; name: string }[];
}>;

/** What free times are looked for: what it is, who goes, how long, where, and within which days. */
export function WishForm({ wish, leads }: WishFormProps) {
  const people = leads.map(({ id, name }) => ({ value: id, label: name }));
  return (
    <Section title="Who goes, and how long">
      <form method="get" className={css['wish']}>
        <Choice
          name="kind"
          legend="What it is"
          options={offeredKinds.map((kind) => ({ value: kind, label: kindTitles[kind] }))}
          defaultValue={wish.kind}
        />
        <div className={css['row']}>
          <Field
            name="leadId"
            label="Who leads it"
            kind="select"
            options={people}
            defaultValue={wish.leadId}
            width="half"
          />
          <Field
            name="hours"
            label="Hours it takes"
            kind="measure"
            defaultValue={hoursTyped(wish.minutes)}
            width="short"
          />
        </div>
        {people.length > 1 ? <CrewFields options={people} crewIds={wish.crewIds} /> : null}
        <WhereFields address={wish.address} travelMinutes={wish.travelMinutes} />
        <div className={css['row']}>
          <Field
            name="fromOn"
            label="From"
            kind="day"
            width="short"
            defaultValue={wish.fromOn ?? undefined}
          />
          <Field
            name="untilOn"
            label="Until"
            kind="day"
            width="short"
            defaultValue={wish.untilOn ?? undefined}
          />
        </div>
        <p>
          <Button type="submit" variant="quiet">
            Look for free times
          </Button>
        </p>
      </form>
    </Section>
  );
}
