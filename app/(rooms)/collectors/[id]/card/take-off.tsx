import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { takeOffCard } from './actions';

type TakeOffProps = Readonly<{
  collectorId: string;
  part: 'person' | 'address' | 'note' | 'owned';
  partId: string;
  /** What is taken off, for those who listen to the page. */
  what: string;
  label?: string;
}>;

/** Takes one thing off the card. */
export function TakeOff({ collectorId, part, partId, what, label = 'Take off' }: TakeOffProps) {
  return (
    <FormFrame action={takeOffCard} label={`${label}: ${what}`}>
      <RequestKey />
      <input type="hidden" name="collectorId" value={collectorId} />
      <input type="hidden" name="part" value={part} />
      <input type="hidden" name="partId" value={partId} />
      <SubmitButton variant="quiet">
        {label}
        <span className="heard-only">: {what}</span>
      </SubmitButton>
    </FormFrame>
  );
}
