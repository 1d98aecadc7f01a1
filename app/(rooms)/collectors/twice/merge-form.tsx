import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { merge } from './actions';

/** What is shown of one of the two where it is chosen which entry is kept. */
export type Side = Readonly<{ id: string; name: string; hint: string }>;

/** Says that two are one, and whose entry is kept. */
export function MergeForm({ one, other }: Readonly<{ one: Side; other: Side }>) {
  return (
    <FormFrame action={merge} label={`${one.name} and ${other.name} are one`}>
      <RequestKey />
      <input type="hidden" name="oneId" value={one.id} />
      <input type="hidden" name="otherId" value={other.id} />
      <Choice
        name="keep"
        legend="Whose entry is kept"
        layout="down"
        defaultValue={one.id}
        options={[one, other].map(({ id, name, hint }) => ({ value: id, label: name, hint }))}
      />
      <SubmitButton variant="quiet">
        They are one<span className="heard-only">: {`${one.name} and ${other.name}`}</span>
      </SubmitButton>
    </FormFrame>
  );
}
