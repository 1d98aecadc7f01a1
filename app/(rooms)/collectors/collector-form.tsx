import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { collectorKinds, collectorKindWords, type CollectorKind } from '@/lib/collectors/rules';
import type { Reach } from '@/lib/collectors/rules';
import { keep } from './actions';
import css from './collectors.module.css';

type Known = Reach & {
  id: string;
  kind: CollectorKind;
  name: string;
  firm: string | null;
  note: string;
};
type CollectorFormProps = Readonly<{ known: Known | null; name?: string | undefined }>;

const kinds = collectorKinds.map((value) => ({ value, label: collectorKindWords[value] }));

const nobody: Omit<Known, 'id'> = {
  kind: 'person',
  name: '',
  firm: null,
  note: '',
  email: null,
  phone: null,
  street: null,
  city: null,
  state: null,
  postcode: null,
};

function text(value: string | null | undefined): string {
  return value ?? '';
}

/** Who a collector is and how to reach them; all but the name may wait. */
export function CollectorForm({ known, name }: CollectorFormProps) {
  const was = known ?? { ...nobody, name: text(name) };
  return (
    <FormFrame action={keep} label={known ? 'Change what is known' : 'Add a collector'}>
      <RequestKey />
      {known ? <input type="hidden" name="collectorId" value={known.id} /> : null}
      <Field
        name="name"
        label="Name"
        hint="As they say it and spell it."
        defaultValue={was.name}
        autoComplete="off"
        width="half"
        required
      />
      <Choice name="kind" legend="This is" options={kinds} defaultValue={was.kind} />
      <Field
        name="firm"
        label="Firm"
        hint="For a designer or a business."
        optional
        width="half"
        defaultValue={text(was.firm)}
      />
      <div className={css['pair']}>
        <Field
          name="phone"
          label="Telephone"
          kind="telephone"
          optional
          defaultValue={text(was.phone)}
        />
        <Field name="email" label="Mail" kind="email" optional defaultValue={text(was.email)} />
      </div>
      <Field name="street" label="Street" optional defaultValue={text(was.street)} />
      <div className={css['pair']}>
        <Field name="city" label="Town" optional defaultValue={text(was.city)} />
        <Field name="state" label="State" width="short" optional defaultValue={text(was.state)} />
        <Field
          name="postcode"
          label="Postcode"
          width="short"
          optional
          defaultValue={text(was.postcode)}
        />
      </div>
      <Field
        name="note"
        label="To remember"
        kind="textarea"
        hint="Written so that they could read it one day: rooms and walls, colours, what they do not want."
        optional
        defaultValue={text(was.note)}
      />
      <SubmitButton>{known ? 'Keep the changes' : 'Add to the address book'}</SubmitButton>
    </FormFrame>
  );
}
