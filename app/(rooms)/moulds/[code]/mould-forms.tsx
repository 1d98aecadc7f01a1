import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { MouldShown } from '@/lib/catalogue/reads/mould-rows';
import { mouldFaces, mouldFaceWords } from '@/lib/catalogue/rules/moulds';
import type { Day } from '@/lib/dates/rules';
import { change, look } from '../actions';
import { KindFields } from '../kind-fields';

const faces = mouldFaces.map((face) => ({
  value: face,
  label: face,
  hint: mouldFaceWords[face],
}));

/** A look at the face of a mould, with a finger and a lamp from the side. */
export function LookForm({ mouldId, today }: Readonly<{ mouldId: string; today: Day }>) {
  return (
    <Section
      title="Look at its face"
      lead="With a lamp from the side, at the finest line. What is worn or broken is promised to nobody any more."
    >
      <FormFrame action={look} label="Look at its face">
        <RequestKey />
        <input type="hidden" name="mouldId" value={mouldId} />
        <Choice name="face" legend="How it looks" options={faces} defaultValue="" size="counter" />
        <Field
          name="lookedOn"
          label="Looked at on"
          kind="day"
          width="short"
          size="counter"
          defaultValue={today}
        />
        <Field name="note" label="Where it shows" maxLength={500} optional />
        <SubmitButton size="counter">Write it down</SubmitButton>
      </FormFrame>
    </Section>
  );
}

type ChangeFormProps = Readonly<{ mould: MouldShown; moulds: readonly MouldShown[] }>;

/** What is known of a mould beside its casts. */
export function ChangeForm({ mould, moulds }: ChangeFormProps) {
  const sources = moulds.filter(({ id, kind }) => id !== mould.id && kind !== 'working');
  return (
    <details>
      <summary>Change what is known of it</summary>
      <FormFrame action={change} label="Change what is known of it">
        <RequestKey />
        <input type="hidden" name="mouldId" value={mould.id} />
        <KindFields
          kind={mould.kind}
          fromId={mould.fromId}
          slipMl={mould.slipMl}
          sources={sources}
        />
        <Field
          name="lifeCasts"
          label="Casts it is trusted for"
          kind="count"
          width="short"
          defaultValue={`${mould.lifeCasts}`}
          required
        />
        <Field name="note" label="A note" maxLength={500} defaultValue={mould.note} optional />
        <SubmitButton>Keep it</SubmitButton>
      </FormFrame>
    </details>
  );
}
