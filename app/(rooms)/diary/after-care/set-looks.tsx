import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { setThem } from './actions';

/** Sets the looks after a piece that was handed over without a work order. */
export function SetLooks({ commissionId }: Readonly<{ commissionId: string }>) {
  return (
    <FormFrame action={setThem} label="Set the looks after it">
      <RequestKey />
      <input type="hidden" name="commissionId" value={commissionId} />
      <Choice
        name="hangs"
        legend="It was handed over without a work order"
        options={[
          { value: 'yes', label: 'It was hung' },
          { value: 'no', label: 'It was delivered or fetched' },
        ]}
        defaultValue="yes"
      />
      <SubmitButton variant="quiet">Set the looks after it</SubmitButton>
    </FormFrame>
  );
}
