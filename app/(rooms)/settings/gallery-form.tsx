import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { Gallery } from '@/lib/platform/settings';
import { keepSettings } from './actions';

const lengthUnits = [
  { value: 'in', label: 'Inches', hint: 'to the nearest 1/16' },
  { value: 'mm', label: 'Millimetres' },
];
const roundings = [
  { value: 'invoice', label: 'Once for the whole sale' },
  { value: 'item', label: 'Line by line' },
];

/** How the gallery works, as one form. */
export function GalleryForm({ gallery }: Readonly<{ gallery: Gallery }>) {
  return (
    <FormFrame action={keepSettings} label="The gallery">
      <RequestKey />
      <Field name="name" label="Name" defaultValue={gallery.name} required />
      <Field name="tagline" label="Line under the name" defaultValue={gallery.tagline} optional />
      <Field name="street" label="Street" defaultValue={gallery.street} optional />
      <Field name="city" label="Town" defaultValue={gallery.city} optional width="half" />
      <Field name="state" label="State" defaultValue={gallery.state} optional width="half" />
      <Field
        name="postcode"
        label="Postcode"
        defaultValue={gallery.postcode}
        optional
        width="short"
      />
      <Field
        name="phone"
        label="Telephone"
        kind="telephone"
        defaultValue={gallery.phone}
        optional
        width="half"
      />
      <Field
        name="email"
        label="Mail"
        kind="email"
        defaultValue={gallery.email}
        optional
        width="half"
      />
      <Choice
        name="lengthUnit"
        legend="Sizes are shown in"
        options={lengthUnits}
        defaultValue={gallery.lengthUnit}
      />
      <Choice
        name="roundTaxBy"
        legend="Tax is rounded to the cent"
        hint="Both are allowed in many states; keep to one of them."
        options={roundings}
        defaultValue={gallery.roundTaxBy}
      />
      <SubmitButton>Keep this</SubmitButton>
    </FormFrame>
  );
}
