import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { Actor } from '@/lib/access/rules';
import { listMenders } from '@/lib/installation/reads/work/snags';
import { writeItDown } from './actions';
import css from './after-care.module.css';

type WriteSnagProps = Readonly<{ commissionId: string; actor: Actor }>;

/** The form that writes down what is to be put right, who does it and by when. */
export async function WriteSnag({ commissionId, actor }: WriteSnagProps) {
  const menders = await listMenders(actor);
  return (
    <details className={css['more']}>
      <summary>Write down a snag</summary>
      <FormFrame action={writeItDown} label="Something to be put right">
        <RequestKey />
        <input type="hidden" name="commissionId" value={commissionId} />
        <Field name="words" label="What is not right" kind="textarea" rows={2} maxLength={600} />
        <Field
          name="mendById"
          label="Who puts it right"
          kind="select"
          width="half"
          options={menders.map(({ id, name }) => ({ value: id, label: name }))}
          defaultValue={actor.id}
        />
        <Field name="mendByOn" label="By when" kind="day" width="short" />
        <SubmitButton variant="quiet">Write it down</SubmitButton>
      </FormFrame>
    </details>
  );
}
