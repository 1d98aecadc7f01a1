import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { Slab } from '@/app/ui/page/section';
import type { Route } from '@/lib/studio/reads/routes';
import type { Said } from './said';
import css from '../days.module.css';

type AskFormProps = Readonly<{
  said: Said;
  faults: Readonly<Record<string, string>>;
  routes: readonly Route[];
  commissionNumber: number | null;
}>;

/** What is asked about: sent as an address, so that it can be gone back to. */
export function AskForm({ said, faults, routes, commissionNumber }: AskFormProps) {
  const field = (name: keyof Said) => ({ name, defaultValue: said[name], fault: faults[name] });
  return (
    <Slab>
      <form method="get" aria-label="What the day is looked up for" className={css['answer']}>
        {commissionNumber === null ? null : (
          <input type="hidden" name="commission" value={commissionNumber} />
        )}
        <Field
          {...field('routeId')}
          label="How it is made"
          kind="select"
          options={routes.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <div className={css['fields']}>
          <Field {...field('pieces')} label="Pieces or parts" kind="count" width="short" />
          <Field {...field('widthUm')} label="Width of one" kind="measure" width="short" optional />
          <Field
            {...field('heightUm')}
            label="Height of one"
            kind="measure"
            width="short"
            optional
          />
          <Field
            {...field('depthUm')}
            label="At its thickest"
            kind="measure"
            width="short"
            optional
          />
        </div>
        <Choice
          name="answersFirst"
          legend="The collector has still to say yes to the sketch and the colours"
          options={[
            { value: 'yes', label: 'yes' },
            { value: 'no', label: 'no' },
          ]}
          defaultValue={said.answersFirst}
        />
        <p>
          <SubmitButton size="counter">Look the day up</SubmitButton>
        </p>
      </form>
    </Slab>
  );
}
