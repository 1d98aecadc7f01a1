import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { PlaceListed } from '@/lib/stock/reads/moves/places';
import { ownPlaceKinds, placeKindWords, placeKinds } from '@/lib/stock/rules/moves/place';
import { addOnePlace, closeThePlace, renameThePlace } from './actions';

const kinds = placeKinds
  .filter((each) => ownPlaceKinds.some((kind) => kind === each.kind))
  .map((each) => ({ value: each.kind, label: placeKindWords(each.kind) }));

/** Adds a place of our own. */
export function AddPlace() {
  return (
    <FormFrame action={addOnePlace} label="Add a place">
      <h2>Add a place</h2>
      <RequestKey />
      <Field name="name" label="How it is called" maxLength={60} required />
      <Choice name="kind" legend="Where it is" options={kinds} defaultValue="storeroom" />
      <SubmitButton>Add it</SubmitButton>
    </FormFrame>
  );
}

/** Renames a place, and closes it when nothing stands there. */
export function ChangePlace({ place }: Readonly<{ place: PlaceListed }>) {
  const isOurs = ownPlaceKinds.some((kind) => kind === place.kind);
  return (
    <>
      <details>
        <summary>Give it another name</summary>
        <FormFrame action={renameThePlace} label="Give it another name">
          <RequestKey />
          <input type="hidden" name="placeId" value={place.id} />
          <Field
            name="name"
            label="How it is called"
            defaultValue={place.name}
            maxLength={60}
            required
          />
          {isOurs ? (
            <Choice name="kind" legend="Where it is" options={kinds} defaultValue={place.kind} />
          ) : null}
          <SubmitButton>Write it down</SubmitButton>
        </FormFrame>
      </details>
      {isOurs && !place.isCounter ? (
        <details>
          <summary>Close this place</summary>
          <FormFrame action={closeThePlace} label="Close this place">
            <p>A place can be closed when nothing stands there. Its moves and counts stay.</p>
            <RequestKey />
            <input type="hidden" name="placeId" value={place.id} />
            <SubmitButton variant="danger">Close “{place.name}”</SubmitButton>
          </FormFrame>
        </details>
      ) : null}
    </>
  );
}
