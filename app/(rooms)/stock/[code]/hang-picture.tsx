import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { bringPicture } from '../actions';

/** Brings in the picture of a piece, from a file or straight from a phone's camera. */
export function HangPicture({ skuId, has }: Readonly<{ skuId: string; has: boolean }>) {
  return (
    <details>
      <summary>{has ? 'Hang another picture' : 'Hang a picture of it'}</summary>
      <FormFrame action={bringPicture} label="Hang a picture">
        <RequestKey />
        <input type="hidden" name="skuId" value={skuId} />
        <Field
          name="picture"
          label="Picture"
          kind="file"
          accept="image/jpeg,image/png,image/webp"
          hint="JPEG, PNG or WebP, at most 25 MB. Where it was taken is removed from it."
          required
        />
        <SubmitButton variant="quiet">Hang it</SubmitButton>
      </FormFrame>
    </details>
  );
}
