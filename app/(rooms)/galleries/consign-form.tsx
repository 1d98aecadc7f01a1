import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { FormAction } from '@/app/ui/form-state';

type ConsignFormProps = Readonly<{
  action: FormAction;
  consigneeId: string;
  placeId: string;
  ready: string;
  button: string;
}>;

/** The last touch: what lies ready goes with a note, or nothing does. */
export function ConsignForm({ action, consigneeId, placeId, ready, button }: ConsignFormProps) {
  return (
    <FormFrame action={action} label={button}>
      <RequestKey />
      <input type="hidden" name="consigneeId" value={consigneeId} />
      <input type="hidden" name="placeId" value={placeId} />
      <input type="hidden" name="ready" value={ready} />
      <Field name="note" label="A word for the note" maxLength={500} optional />
      <SubmitButton size="counter" wide pendingText="Writing the note…">
        {button}
      </SubmitButton>
    </FormFrame>
  );
}
