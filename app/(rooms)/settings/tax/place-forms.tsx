import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { TaxPlaceListed } from '@/lib/tax/reads';
import { keepPlace } from '../actions';

/** A place that is new here; its rates come on its own page. */
export function NewPlaceForm({ states }: Readonly<{ states: readonly string[] }>) {
  return (
    <FormFrame action={keepPlace} label="Another place">
      <RequestKey />
      <Field
        name="name"
        label="Place"
        hint="As the rates are published: a town, a county, a district."
        maxLength={80}
        required
      />
      <Field name="state" label="State" list="states" maxLength={60} width="half" required />
      <datalist id="states">
        {states.map((state) => (
          <option key={state} value={state} />
        ))}
      </datalist>
      <Field
        name="registeredFrom"
        label="Registered in that state since"
        kind="day"
        hint="Only for another state. Left empty, no tax is charged there, and what is sent there is counted."
        width="half"
        optional
      />
      <SubmitButton>Add this place</SubmitButton>
    </FormFrame>
  );
}

/** Another name for a place; it stays in its state. */
export function RenamePlaceForm({ place }: Readonly<{ place: TaxPlaceListed }>) {
  return (
    <FormFrame action={keepPlace} label="Another name for this place">
      <RequestKey />
      <input type="hidden" name="placeId" value={place.id} />
      <Field name="name" label="Name" defaultValue={place.name} maxLength={80} required />
      {place.state === '' ? (
        <Field
          name="state"
          label="State"
          hint="It is not kept yet. Once it is, what the state taxes can be kept too."
          maxLength={60}
          width="half"
          optional
        />
      ) : null}
      <SubmitButton variant="quiet">Keep this name</SubmitButton>
    </FormFrame>
  );
}
